import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CoatPlan, type FillAim, slotById } from '../../../../shared-core/plan/model/coat-plan.ts';
import { averageLoftMm, lensAreaMm2 } from '../../../../shared-core/quilting/chambers.ts';
import { coatMass } from '../../../../shared-core/requirement/finished/mass.ts';
import { fillAdvice } from '../../../../shared-core/requirement/fill/fill-advice.ts';
import { fillPowerOf } from '../../../../shared-core/requirement/fill/fill-power.ts';
import { weightWords } from '../../../../shared-core/requirement/fill/filling-table.ts';
import { quiltedRise } from '../../../../shared-core/requirement/fill/rise.ts';
import { adviceText } from '../../../../shared-core/requirement/sewing-advice.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { fillingList, fillNeed } from '../../../../shared-core/requirement/fill/fill.ts';
import { item, measured, piece, rectangle, slot } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from '../small-coat.ts';

const down = (fillPowerCm3PerG: number) => filled({ fill: item('fill', 'down', { fillPowerCm3PerG }) });
const list = (coat: ReturnType<typeof stuffedCoat>, items = down(400), overfill = 1.2) =>
  fillingList({ ...coat, overfillFactor: overfill }, slotById(coat, 'fill'), items);

describe('loose fill', () => {
  it('every channel of back and front is a chamber with its own grams', () => {
    const { chambers } = list(stuffedCoat());
    expect(chambers.map((chamber) => [chamber.pieceName, chamber.number, chamber.count])).toEqual([
      ...[1, 2, 3, 4, 5, 6, 7].map((number) => ['back', number, 1]),
      ...[1, 2, 3, 4, 5, 6, 7].map((number) => ['front', number, 2]),
    ]);
    const lensMm2 = lensAreaMm2(100, 12.5);
    expect(chambers[0]?.massG).toBeCloseTo((((lensMm2 * 520) / 1000) * 1.2) / 400, 6);
    expect(chambers[7]?.massG).toBeCloseTo((((lensMm2 * 240) / 1000) * 1.2) / 400, 6);
  });
  it('the need is the sum of the list for all coats', () => {
    const coat = stuffedCoat({ coatCount: 3 });
    const need = fillNeed(coat, slotById(coat, 'fill'), down(400));
    const one = list(stuffedCoat());
    expect(need.amount).toBeCloseTo(3 * (one.filledG + one.spareG), 9);
    expect(one.spareG / one.filledG).toBeCloseTo(0.05, 9);
    expect(need.parts.map(({ what }) => what)).toEqual(['back: 21 chambers', 'front: 42 chambers', 'spare']);
    expect(need.parts.reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(need.amount, 9);
  });
  it('more rise never takes less fill, more fill power never more', () => {
    const rise = fc.double({ min: 1, max: 50, noNaN: true });
    const power = fc.double({ min: 100, max: 550, noNaN: true });
    const totalG = (riseMm: number, powerCm3PerG: number) =>
      list(
        stuffedCoat({ quilting: { ...stuffedCoat().quilting!, ...measured(riseMm, 0) } }),
        down(powerCm3PerG),
      ).filledG;
    fc.assert(
      fc.property(rise, rise, power, power, (a, b, p, q) => {
        expect(totalG(Math.max(a, b), p)).toBeGreaterThanOrEqual(totalG(Math.min(a, b), p) - 1e-9);
        expect(totalG(a, Math.max(p, q))).toBeLessThanOrEqual(totalG(a, Math.min(p, q)) + 1e-9);
      }),
      { numRuns: 40, seed: 1889 },
    );
    expect(totalG(20, 400)).toBeGreaterThan(totalG(10, 400) * 1.5);
  });
  it('30 % over is a tenth and a bit more than 20 % over, not the same', () => {
    expect(list(stuffedCoat(), down(400), 1.3).filledG / list(stuffedCoat()).filledG).toBeCloseTo(
      1.3 / 1.2,
      9,
    );
  });
  it('without a fill power it says what it took instead', () => {
    const need = fillNeed(stuffedCoat(), slotById(stuffedCoat(), 'fill'), nothingChosen);
    expect(need.amount).toBeCloseTo(list(stuffedCoat(), down(346.8)).filledG * 1.05, 9);
    expect(need.basis.some(({ how }) => how.startsWith('no fill power'))).toBe(true);
  });
  it('of a fill of which nothing is usual, a face rises an eighth of the spacing, and it says so', () => {
    const clusters = filled({ fill: item('fill', 'clusters', { fillPowerCm3PerG: 400 }) });
    const guessed = stuffedCoat({ quilting: { ...stuffedCoat().quilting!, measures: [] } });
    expect(list(guessed, clusters).filledG).toBeCloseTo(list(stuffedCoat()).filledG, 9);
    expect(list(guessed, clusters).basis[0]).toMatchObject({
      kind: 'rule of thumb',
      how: expect.stringContaining('1/8 of the spacing'),
    });
    expect(list(stuffedCoat()).basis[0]?.kind).toBe('measured');
  });
  it('a stuffed collar without lines is one chamber', () => {
    const cutFrom = [{ slotId: 'fill', plyCount: 1 }];
    const collar = piece('collar', rectangle(420, 90), { cutFrom });
    const coat = smallCoat({ slots: [slot('fill', 'fill')], pieces: [collar], seams: [], quilting: null });
    const { chambers } = list(coat);
    expect(chambers).toHaveLength(1);
    expect([chambers[0]?.widthMm, chambers[0]?.lengthMm]).toEqual([
      expect.closeTo(90, 6),
      expect.closeTo(420, 6),
    ]);
    expect(chambers[0]?.massG).toBeCloseTo(((lensAreaMm2(90, 12.5) * 420) / 1000 / 400) * 1.2, 6);
  });
  it('a typed amount for one coat wins', () => {
    const typed = slot('fill', 'fill', { amountPerCoat: 210 });
    expect(fillNeed(stuffedCoat({ coatCount: 4 }), typed, down(400)).amount).toBe(840);
  });
  it('a quilted coat that nothing stuffs needs none', () => {
    const coat = quiltedCoat({
      slots: [...quiltedCoat().slots, slot('fill', 'fill')],
      quilting: { ...quiltedCoat().quilting!, ...measured(9, 0) },
    });
    expect(fillNeed(coat, slotById(coat, 'fill'), down(400)).amount).toBe(0);
  });
  it('spare fill is bought and not sewn in', () => {
    const coat = stuffedCoat({ spareFillRatio: 0.25 });
    const need = fillNeed(coat, slotById(coat, 'fill'), down(400));
    const { filledG } = list(stuffedCoat());
    expect(need.amount).toBeCloseTo(filledG * 1.25, 9);
    const line = coatMass(coat, down(400), [need]).lines.find(({ slotId }) => slotId === 'fill');
    expect(line?.massG).toBeCloseTo(filledG, 9);
  });
  it('the maker’s own grams for a coat are spread over the chambers by their volume', () => {
    const slots = stuffedCoat().slots.map((one) => (one.id === 'fill' ? { ...one, amountPerCoat: 88 } : one));
    const own = list(stuffedCoat({ slots, coatCount: 3 }));
    const byVolume = list(stuffedCoat());
    expect([own.filledG, own.spareG]).toEqual([expect.closeTo(3 * 88, 9), 0]);
    expect(own.chambers[2]!.massG / own.chambers[9]!.massG).toBeCloseTo(
      byVolume.chambers[2]!.massG / byVolume.chambers[9]!.massG,
      9,
    );
    expect(own.basis.map(({ kind }) => kind)).toEqual(['measured']);
  });
  it('a coat in two sizes has the chambers of both', () => {
    const [back, front] = stuffedCoat().pieces;
    const both = stuffedCoat({ size: '40', sizes: [{ size: '46', coatCount: 2, pieces: [front!] }] });
    const names = [...new Set(list(both).chambers.map(({ pieceName }) => pieceName))];
    expect(names).toEqual([back!.name, front!.name, `${front!.name}, 46`]);
    expect(list(both).filledG).toBeCloseTo(
      list(stuffedCoat()).filledG + 2 * list(stuffedCoat({ pieces: [front!] })).filledG,
      9,
    );
  });
  it('a stuffed piece of one cloth is said to need a backing', () => {
    const cutFrom = [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'fill', plyCount: 1 },
    ];
    const [back, front] = stuffedCoat().pieces;
    expect(list(stuffedCoat()).problems).toEqual([]);
    expect(list(stuffedCoat({ pieces: [back!, { ...front!, cutFrom }] })).problems).toMatchObject([
      { where: 'front', what: 'is stuffed, but has no backing that holds the fill' },
    ]);
  });
});

describe('how full, as the maker asks for it', () => {
  const { measures: _, ...lines } = stuffedCoat().quilting!;
  const asked = (fillAim: FillAim | undefined, spacingMm = 76) =>
    stuffedCoat({ quilting: { ...lines, spacingMm }, ...(fillAim && { fillAim }) });
  it('a loft is that of a channel midway between two lines', () => {
    const coat = asked({ kind: 'loft', loftMm: 30 });
    const full = list(coat).chambers[1]!;
    expect(full.massG).toBeCloseTo((((lensAreaMm2(76, 15) * 520) / 1000) * 1.2) / 400, 6);
    expect(quiltedRise(coat, coat.pieces[0]!, down(400)).riseMm).toBe(15);
  });
  it('a weight goes over the area of the pieces, however full of power the fill is', () => {
    const coat = asked({ kind: 'weight', gPerM2: 120 });
    const areaM2 = 0.7 * (0.52 + 2 * 0.24);
    for (const power of [200, 500]) {
      expect(list(coat, down(power)).filledG).toBeCloseTo(areaM2 * 120, 6);
      expect(list(coat, down(power)).gPerM2).toBeCloseTo(120, 9);
    }
    expect(list(coat).toleranceRatio).toBe(0);
  });
  it('a weight lofts by its fill power, less the overfill, and no higher than the half circle', () => {
    const coat = { ...asked({ kind: 'weight', gPerM2: 60 }), overfillFactor: 1.2 };
    const { riseMm } = quiltedRise(coat, coat.pieces[0]!, down(400));
    expect(averageLoftMm(76, riseMm)).toBeCloseTo((60 * 400) / 1.2 / 1000, 6);
    const over = { ...asked({ kind: 'weight', gPerM2: 400 }), overfillFactor: 1.2 };
    expect(quiltedRise(over, over.pieces[0]!, down(400)).riseMm).toBe(38);
  });
  it('asked by the loft that a weight has, the same mass comes out', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 100, noNaN: true }), (gPerM2) => {
        const byWeight = asked({ kind: 'weight', gPerM2 }, 100);
        const { riseMm } = quiltedRise({ ...byWeight, overfillFactor: 1.2 }, byWeight.pieces[0]!, down(400));
        const byLoft = asked({ kind: 'loft', loftMm: 2 * riseMm }, 100);
        expect(list(byLoft).filledG).toBeCloseTo(list(byWeight).filledG, 4);
      }),
      { numRuns: 30, seed: 1889 },
    );
  });
  it('a laboratory’s figure is good to 5 % either way, and so is what follows from it', () => {
    const words = weightWords({ ...list(asked(undefined)), gPerM2: 112, filledG: 200 }, 'metric');
    expect(words).toBe('112 g/m² over the stuffed pieces, good to 5 % either way: 190 to 210 g');
    expect(list(asked(undefined)).basis.some(({ source }) => source.startsWith('IDFL'))).toBe(true);
  });
  it.each([
    [{ fibre: '100 % polyester' }, 'sack', 260],
    [{}, 'Puffball cluster', 260],
    [{ fibre: '90 % duck down, 10 % duck feather' }, 'duck', 346.8],
    [{ fibre: '100 % feather' }, 'feathers', 173.4],
    [{}, 'tin', 346.8],
    [{ fibre: '100 % polyester', fillPowerCm3PerG: 231 }, 'sack', 231],
  ])('a fill of %o called %s takes %s cm3/g', (facts, name, cm3PerG) => {
    expect(fillPowerOf({ ...item('fill', name, facts), name } as Item).cm3PerG).toBe(cm3PerG);
  });
});

describe('down of which nobody said how much', () => {
  const { measures: _, ...lines } = stuffedCoat().quilting!;
  const unasked = (spacingMm: number) => stuffedCoat({ quilting: { ...lines, spacingMm } });
  const in3PerOz = 16.387064 / 28.349523125;

  it('is the middle of what coats take, 140 g/m² of down of 650, where the channels are wide enough', () => {
    const { gPerM2, basis } = list(unasked(140), down(650 * in3PerOz));
    expect(gPerM2).toBeCloseTo(140, 1);
    expect(basis[0]).toMatchObject({ kind: 'rule of thumb', source: 'common practice, no source' });
    expect(basis[0]?.how).toContain('the middle of what coats sewn through take');
  });
  it('of another fill power is as much as lofts alike', () => {
    expect(list(unasked(140), down(800 * in3PerOz)).gPerM2).toBeCloseTo((140 * 650) / 800, 1);
    const rise = (power: number) => quiltedRise(unasked(140), stuffedCoat().pieces[0]!, down(power)).riseMm;
    expect(rise(300)).toBeCloseTo(rise(460), 6);
  });
  it('is less in channels that would not let it loft, and never so much that its own advice is against it', () => {
    const narrow = list(unasked(50), down(650 * in3PerOz));
    expect(narrow.gPerM2).toBeLessThan(100);
    expect(quiltedRise(unasked(50), stuffedCoat().pieces[0]!, down(650 * in3PerOz)).riseMm).toBeCloseTo(
      50 / 3,
      9,
    );
    expect(narrow.basis[0]?.how).toContain('less where a channel is not 1.5 times as wide as that lofts');
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 230 }), (spacingMm) => {
        const said = fillAdvice(unasked(spacingMm), down(375.7)).map(({ says }) => says);
        expect(said).toHaveLength(1);
        expect(said[0]).toMatch(/^No loft and no weight/);
      }),
      { numRuns: 40, seed: 5 },
    );
  });
  it('shifts in channels as wide as a hand is long, and it is said', () => {
    expect(fillAdvice(unasked(400), down(375.7)).map(({ says }) => says)[1]).toContain('shifts in so wide');
  });
});

describe('advice on loose fill', () => {
  const { measures: _, ...lines } = stuffedCoat().quilting!;
  const said = (more: Partial<CoatPlan>) =>
    fillAdvice(stuffedCoat({ quilting: { ...lines, spacingMm: 76.2 }, ...more }), down(375.7)).map((each) =>
      adviceText(each, 'metric'),
    );
  it('asks how full it is to be, and says what is taken meanwhile', () => {
    const [first] = said({});
    expect(first).toMatch(
      /^No loft and no weight .* the middle of what coats sewn through usually take, 100 g\/m² to 180 g\/m² of down of 600 to 700 in³\/oz, .* down comes to 1[12]\d g\/m²/,
    );
    expect(first).toContain('Give the loft midway between two lines');
    expect(said({ fillAim: { kind: 'loft', loftMm: 26 } })).toEqual([]);
    expect(said({ quilting: stuffedCoat().quilting! })).toEqual([]);
  });
  it('of a fill of which nothing is usual says how little the width of the channels makes of it', () => {
    const coat = stuffedCoat({ quilting: { ...lines, spacingMm: 76.2 } });
    const clusters = filled({ fill: item('fill', 'clusters', { fillPowerCm3PerG: 375.7 }) });
    const [first] = fillAdvice(coat, clusters).map((each) => adviceText(each, 'metric'));
    expect(first).toMatch(
      /^No loft and no weight .* By the width of the channels alone clusters comes to 4\d g\/m²/,
    );
  });
  it('little fill wants nearer lines', () => {
    expect(said({ fillAim: { kind: 'loft', loftMm: 15 } })).toEqual([
      'The lines of back and front are up to 76 mm apart: fill that lofts to 15 mm shifts in so wide a channel and leaves cold places. Bring them to 60 mm or nearer, or stuff it fuller.',
    ]);
  });
  it('much fill wants lines farther apart', () => {
    expect(said({ fillAim: { kind: 'loft', loftMm: 60 } })).toEqual([
      'The lines of back and front are too near for so much fill: it cannot loft to 60 mm between lines 76 mm apart, and the cloth is cut 37 % larger for it. Set them 90 mm apart or farther, or stuff less.',
    ]);
  });
  it('is none where nothing is stuffed', () => {
    expect(fillAdvice(quiltedCoat(), nothingChosen)).toEqual([]);
  });
});
