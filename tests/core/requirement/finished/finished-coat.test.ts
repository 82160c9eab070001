import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  finished,
  finishedCoat,
  packedVolume,
} from '../../../../shared-core/requirement/finished/finished-coat.ts';
import { cloWords } from '../../../../shared-core/requirement/finished/finished-words.ts';
import { coatMass, threadMassG } from '../../../../shared-core/requirement/finished/mass.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import {
  cloOfThickness,
  cloPerCm,
  conductivityWPerMK,
  warmth,
  wornThicknessMm,
} from '../../../../shared-core/requirement/finished/warmth.ts';
import { quiltedRise } from '../../../../shared-core/requirement/fill/rise.ts';
import { averageLoftMm } from '../../../../shared-core/quilting/chambers.ts';
import { setMeasured } from '../../../../shared-core/plan/edits/measured.ts';
import { item, measured, slot } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from '../small-coat.ts';

const shell = item('cloth', 'taffeta', { arealMassGPerM2: 60, fibre: '100 % nylon' });
const batting = item('batting', 'fleece', { arealMassGPerM2: 133, loftMm: 10, fibre: '100 % polyester' });
const thread = item('thread', 'spun', { sizeTex: 40 });

const lineMassG = (coat: ReturnType<typeof smallCoat>, items: ReturnType<typeof filled>, slotId: string) =>
  coatMass(coat, items, requirement(coat, items)).lines.find((line) => line.slotId === slotId)?.massG;

describe('what the coat weighs', () => {
  it('cloth by the area of one coat, however many are made', () => {
    const areaM2 = 0.7 * (0.52 + 2 * 0.24);
    expect(lineMassG(smallCoat(), filled({ shell }), 'shell')).toBeCloseTo(areaM2 * 60, 6);
    expect(lineMassG(smallCoat({ coatCount: 5 }), filled({ shell }), 'shell')).toBeCloseTo(areaM2 * 60, 6);
  });
  it('thread without what was wasted', () => {
    const dry = lineMassG(smallCoat({ coatCount: 3 }), filled({ thread }), 'thread');
    const wasteful = lineMassG(
      smallCoat({ coatCount: 3, threadWastageRatio: 0.4 }),
      filled({ thread }),
      'thread',
    );
    expect(dry).toBeCloseTo((1.4 * 2.5 * 40) / 1000, 9);
    expect(wasteful).toBeCloseTo(dry!, 9);
  });
  it('a zip cut down to the front edge weighs its share', () => {
    const zip = slot('zip', 'fastening', { alongEdges: [{ pieceId: 'front', edge: 'front edge' }] });
    const coat = smallCoat({ coatCount: 2, slots: [...smallCoat().slots, zip] });
    const sold = item('fastening', 'zip', { massG: 50, lengthMm: 875 });
    expect(lineMassG(coat, filled({ zip: sold }), 'zip')).toBeCloseTo(50 * (700 / 875), 6);
    const snaps = slot('snaps', 'fastening', { amountPerCoat: 9 });
    const snapped = smallCoat({ coatCount: 2, slots: [snaps], seams: [] });
    expect(
      lineMassG(snapped, filled({ snaps: item('fastening', 'snap', { massG: 1.4 }) }), 'snaps'),
    ).toBeCloseTo(12.6, 9);
  });
  it('a needle stays out, and what has no weight is said, not taken as nothing', () => {
    const coat = smallCoat({ slots: [...smallCoat().slots, slot('needles', 'needle')] });
    const items = filled({ shell: item('cloth', 'taffeta'), thread });
    const mass = coatMass(coat, items, requirement(coat, items));
    expect(mass.lines.map(({ slotId, massG }) => [slotId, massG === null])).toEqual([
      ['shell', true],
      ['thread', false],
    ]);
    expect([mass.isComplete, mass.lines[0]?.missing]).toEqual([false, 'weight of taffeta']);
    expect(mass.knownG).toBeCloseTo(0.14, 9);
  });
  it('a slot that nothing is chosen for is missing too', () => {
    const mass = coatMass(smallCoat(), nothingChosen, requirement(smallCoat(), nothingChosen));
    expect(mass.lines.map(({ missing }) => missing)).toEqual([
      'a material for shell',
      'a material for thread',
    ]);
  });
  it('fill goes in whole', () => {
    const coat = stuffedCoat({
      coatCount: 2,
      slots: stuffedCoat().slots.map((one) => (one.id === 'fill' ? { ...one, amountPerCoat: 90 } : one)),
    });
    expect(lineMassG(coat, filled({ fill: item('fill', 'down') }), 'fill')).toBe(90);
  });
  it('1,000 m of tex 27 weigh 27 g', () => {
    expect(threadMassG(1000, 27)).toBe(27);
  });
});

describe('how warm it is', () => {
  it('is a range that grows with thickness, and nothing for nothing', () => {
    expect(cloOfThickness(0)).toEqual({ minClo: 0, maxClo: 0 });
    const mm = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(mm, mm, (a, b) => {
        const thin = cloOfThickness(Math.min(a, b));
        const thick = cloOfThickness(Math.max(a, b));
        expect(thick.minClo).toBeGreaterThanOrEqual(thin.minClo);
        expect(thick.maxClo).toBeGreaterThanOrEqual(thick.minClo);
      }),
    );
  });
  it('goes by the loft that is left as worn, over the padded pieces', () => {
    const found = warmth(quiltedCoat(), filled({ shell, batting }))!;
    // Half of 10 mm on the mean of the arc, but for what an arc is fuller than two thirds of its box.
    expect([found.thicknessMm, found.paddedRatio]).toEqual([expect.closeTo(5, 1), 1]);
    expect(found.maxClo).toBeCloseTo((found.thicknessMm / 10) * cloPerCm.max, 9);
    expect(found.basis.every(({ kind }) => kind === 'rule of thumb')).toBe(true);
    expect(found.doubts).toContain('No temperature follows from this figure.');
  });
  it('a measured rise decides where there is one', () => {
    const risen = quiltedCoat({ quilting: { ...quiltedCoat().quilting!, ...measured(8, 1) } });
    expect(wornThicknessMm(risen, risen.pieces[0]!, filled({ batting }))).toBeCloseTo(
      averageLoftMm(100, 8),
      9,
    );
  });
  it('a rise typed as it was estimated changes nothing', () => {
    const items = filled({ shell, batting });
    const estimated = quiltedRise(quiltedCoat(), quiltedCoat().pieces[0]!, items).riseMm;
    const typed = quiltedCoat({ quilting: { ...quiltedCoat().quilting!, ...measured(estimated, 1) } });
    expect(warmth(typed, items)).toMatchObject({
      thicknessMm: expect.closeTo(warmth(quiltedCoat(), items)!.thicknessMm, 9),
      maxClo: expect.closeTo(warmth(quiltedCoat(), items)!.maxClo, 9),
    });
  });
  it('batting without lines is worn as thick as between them', () => {
    const [back] = quiltedCoat().pieces;
    const worn = (coat: ReturnType<typeof quiltedCoat>) =>
      wornThicknessMm(coat, coat.pieces[0]!, filled({ batting }))!;
    const plain = quiltedCoat({ pieces: [{ ...back!, quilted: null }] });
    expect(worn(plain)).toBe(5);
    expect(worn(quiltedCoat())).toBeCloseTo(worn(plain), 1);
  });
  it('two layers of 120 g/m² of 9 mm are warmer than a sweater', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 2 },
    ];
    const pieces = quiltedCoat().pieces.map((each) => ({ ...each, cutFrom }));
    const coat = quiltedCoat({ pieces, quilting: { ...quiltedCoat().quilting!, spacingMm: 70 } });
    const found = warmth(coat, filled({ shell, batting: item('batting', 'fleece', { loftMm: 9 }) }))!;
    expect(found.minClo).toBeGreaterThan(0.5);
    expect(found.maxClo).toBeLessThan(3);
  });
  it('stuffed channels go by their section, worn down by a quarter where it was not measured', () => {
    const { measures: _, ...lines } = stuffedCoat().quilting!;
    const guessed = stuffedCoat({ quilting: lines });
    const clusters = filled({ fill: item('fill', 'clusters') });
    expect(wornThicknessMm(guessed, guessed.pieces[0]!, clusters)).toBeCloseTo(
      0.75 * averageLoftMm(100, 12.5),
      9,
    );
    const coat = stuffedCoat();
    expect(wornThicknessMm(coat, coat.pieces[0]!, nothingChosen)).toBeCloseTo(averageLoftMm(100, 12.5), 9);
  });
  it('a batting without a loft has no warmth to show, and neither has a coat without padding', () => {
    expect(warmth(quiltedCoat(), filled({ shell, batting: item('batting', 'fleece') }))).toBeNull();
    expect(warmth(smallCoat(), filled({ shell }))).toBeNull();
  });
  it('half of the coat padded is said as such', () => {
    const [back, front] = quiltedCoat().pieces;
    const coat = quiltedCoat({ pieces: [back!, { ...front!, cutFrom: [{ slotId: 'shell', plyCount: 1 }] }] });
    expect(warmth(coat, filled({ shell, batting }))?.paddedRatio).toBeCloseTo(520 / 1000, 9);
  });
  it('down is doubted when damp', () => {
    const wet = (name: string) =>
      warmth(stuffedCoat(), filled({ fill: item('fill', name) }))!.doubts.join(' ');
    expect(wet('goose down')).toContain('damp');
    expect(wet('clusters')).not.toContain('damp');
  });
  it('says that it is the padding alone, and what whole coats measure on the body', () => {
    const coat = finishedCoat(quiltedCoat(), filled({ shell, batting }));
    expect(cloWords(coat)).toBe('0.5 to 1.0 clo, padding alone');
    expect(coat.warmth!.doubts[0]).toContain(
      'A whole coat on the body, over all of it, measures 0.55 to 0.70',
    );
  });
  it('a warmer cm conducts less', () => {
    expect(conductivityWPerMK(2)).toBeLessThan(conductivityWPerMK(1));
  });
});

describe('the finished coat', () => {
  const items = filled({ shell, batting, thread });
  it('has its mass, its label, its warmth and its packed size', () => {
    const coat = finishedCoat(quiltedCoat(), items);
    expect(coat.mass.isComplete).toBe(true);
    expect(coat.label.lines.map(({ us }) => us)).toEqual(['Shell: 100% nylon', 'Filling: 100% polyester']);
    expect(coat.warmth).not.toBeNull();
    expect(coat.packed!.minCm3).toBeLessThan(coat.packed!.maxCm3);
  });
  it('packs to twice the room for twice the mass', () => {
    expect(packedVolume(1600).minCm3).toBeCloseTo(10_000, 9);
    expect(packedVolume(800).maxCm3).toBeCloseTo(10_000, 9);
  });
  it('has no packed size while a weight is missing', () => {
    const open = filled({ shell, batting });
    expect(finishedCoat(quiltedCoat(), open).packed).toBeNull();
  });
});

describe('a coat in several sizes', () => {
  const items = filled({ shell, batting, thread });
  const wide = quiltedCoat().pieces.map((each) => ({ ...each, cutCount: each.cutCount * 2 }));
  const sizes = [{ size: '46', coatCount: 3, pieces: wide }];
  const both = quiltedCoat({ size: '40', coatCount: 2, sizes });

  it('is weighed size by size, each as if it were made alone', () => {
    const alone = finishedCoat(quiltedCoat({ size: '40', coatCount: 1 }), items);
    const large = finishedCoat(quiltedCoat({ size: '46', pieces: wide }), items);
    const { coats } = finished(both, items);
    expect(coats.map(({ size, coatCount }) => [size, coatCount])).toEqual([
      ['40', 2],
      ['46', 3],
    ]);
    expect(coats[0]!.massG).toBeCloseTo(alone.massG, 9);
    expect(finishedCoat(both, items).massG).toBeCloseTo(alone.massG, 9);
    expect(coats[1]!.massG).toBeCloseTo(large.massG, 9);
    expect(large.massG).toBeGreaterThan(alone.massG * 1.5);
  });
  it('takes what the maker typed for one coat once for each coat', () => {
    const slots = both.slots.map((one) => (one.id === 'thread' ? { ...one, amountPerCoat: 410 } : one));
    const typed = { ...both, slots };
    const need = requirement(typed, items).find(({ slotId }) => slotId === 'thread');
    expect(need?.kind === 'amount' && need.amount).toBeCloseTo(5 * 410, 9);
    expect(need?.kind === 'amount' && need.parts.map(({ what }) => what)).toEqual([
      'as typed for one coat, x 2',
      'as typed for one coat, x 3, 46',
    ]);
    const threadG = finished(typed, items).coats.map(
      ({ mass }) => mass.lines.find(({ slotId }) => slotId === 'thread')?.massG,
    );
    expect(threadG).toEqual([expect.closeTo(16.4, 9), expect.closeTo(16.4, 9)]);
  });
  it('weighed in one size is not weighed in the other', () => {
    const weighed = setMeasured(both, 'massG', 987);
    const { coats } = finished(weighed.ok ? weighed.value.plan : both, items);
    expect(coats.map(({ massG, isMassMeasured }) => [massG === 987, isMassMeasured])).toEqual([
      [true, true],
      [false, false],
    ]);
  });
});

describe('what the maker measured', () => {
  const items = filled({ shell, batting, thread });
  const measured = (...measures: readonly (readonly ['massG' | 'packedCm3' | 'clo', number | null])[]) =>
    measures.reduce((coat, [what, value]) => {
      const edited = setMeasured(coat, what, value);
      return edited.ok ? edited.value.plan : coat;
    }, quiltedCoat());

  it('stands in place of the estimate, which stays beside it', () => {
    const coat = finishedCoat(measured(['massG', 1234], ['clo', 1.3], ['packedCm3', 7600]), items);
    expect([coat.massG, coat.isMassMeasured, coat.measuredClo, coat.measuredPackedCm3]).toEqual([
      1234,
      true,
      1.3,
      7600,
    ]);
    expect(coat.mass.knownG).toBeLessThan(300);
    expect(coat.packed!.minCm3).toBeCloseTo(1234 / 0.16, 9);
    expect(coat.warmth).not.toBeNull();
  });
  it('makes a packed size where a material has no weight', () => {
    const open = filled({ batting, thread });
    expect(finishedCoat(measured(['massG', 640]), open).packed?.maxCm3).toBeCloseTo(8000, 9);
  });
  it('goes again without a trace in the plan', () => {
    expect(measured(['massG', 1234], ['massG', null])).toEqual(quiltedCoat());
    expect(measured(['massG', 1234], ['clo', 2], ['massG', null]).measured).toEqual({
      massG: null,
      packedCm3: null,
      clo: 2,
    });
  });
  it.each([0, -4, 100_001, Number.NaN])('is refused where it weighs %s g', (massG) => {
    const edited = setMeasured(quiltedCoat(), 'massG', massG);
    expect(edited.ok ? '' : edited.problems[0]!.where).toBe('Weight of the coat');
  });
});
