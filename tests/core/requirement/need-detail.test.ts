import { describe, expect, it } from 'vitest';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import {
  setAmountPerCoat,
  setSewingMinutes,
  setThreadWastage,
} from '../../../shared-core/plan/edits/measured.ts';
import { fillingList } from '../../../shared-core/requirement/fill/fill.ts';
import { fillingTable } from '../../../shared-core/requirement/fill/filling-table.ts';
import { needDetail } from '../../../shared-core/requirement/need-detail.ts';
import { estimatedPerCoat, requirement } from '../../../shared-core/requirement/requirement.ts';
import { item, measured, offer, slot } from '../../fixtures/small-workshop.ts';
import { edited, refusal } from '../plan/edit-outcomes.ts';
import { back, filled, front, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from './small-coat.ts';

const done = (outcome: Parameters<typeof edited>[0]) => edited(outcome).plan;

describe('batting by piece', () => {
  const fleece = filled({ batting: item('batting', 'fleece', { loftMm: 11 }) });
  const layers = (coat: ReturnType<typeof quiltedCoat>, items = fleece) => {
    const detail = needDetail(coat, 'batting', items, [], 'metric');
    return detail.kind === 'batting' ? detail.pieces : [];
  };
  const cutFrom = (plyCount: number) => [
    { slotId: 'shell', plyCount: 1 },
    { slotId: 'batting', plyCount },
  ];

  it('has its layers, their loft, and what quilting leaves of it', () => {
    const coat = quiltedCoat({
      pieces: [back({ quilted: 'across', cutFrom: cutFrom(2) }), front({ cutFrom: cutFrom(1) })],
    });
    expect(layers(coat)).toMatchObject([
      { pieceName: 'back', plyCount: 2, loftMm: 22, finishedMm: 16.5, basis: { kind: 'rule of thumb' } },
      { pieceName: 'front', plyCount: 1, loftMm: 11, finishedMm: 5.5 },
    ]);
  });
  it('goes by a rise that was measured, even where no loft is known', () => {
    const coat = quiltedCoat({ quilting: { ...quiltedCoat().quilting!, ...measured(7, 1) } });
    expect(layers(coat, nothingChosen)).toMatchObject([
      { loftMm: null, finishedMm: 14, basis: { kind: 'measured' } },
      { finishedMm: 14 },
    ]);
    expect(layers(quiltedCoat(), nothingChosen)[0]).toMatchObject({ loftMm: null, finishedMm: null });
  });
});

describe('what a zip is bought and shortened to', () => {
  const zip = slot('zip', 'fastening', {
    alongEdges: [{ pieceId: 'front', edge: 'front edge' }],
    shorterByMm: 35,
  });
  const coat = smallCoat({ slots: [...smallCoat().slots, zip] });
  const sold = item('fastening', 'zip item', { form: 'zip', lengthMm: 914.4 });
  const lengths = (
    of: ReturnType<typeof smallCoat>,
    items = filled({ zip: sold }),
    offers = [
      offer('zip item', 'short', { kind: 'each', lengthMm: 711.2 }, 810),
      offer('zip item', 'too short', { kind: 'each', lengthMm: 610 }, 640),
      offer('another', 'other', { kind: 'each', lengthMm: 665 }, 90),
    ],
  ) => {
    const detail = needDetail(of, 'zip', items, offers, 'imperial');
    if (detail.kind !== 'fastening') throw new Error('a zip is a fastening');
    return detail.lengths;
  };

  it('is the shortest on offer that is long enough', () => {
    expect(lengths(coat)).toEqual({
      isZip: true,
      isUsual: false,
      soldMm: [610, 711.2, 914.4],
      bySize: [{ size: coat.size, pieceCount: 1, lengthMm: 665, soldMm: 711.2, shortenToMm: 665 }],
    });
  });
  it('is said for each size, as their fronts differ', () => {
    const longer = [
      back(),
      front({ outline: { ...front().outline, edges: front().outline.edges.map((edge) => edge) } }),
    ];
    const both = { ...coat, size: '40', sizes: [{ size: '46', coatCount: 3, pieces: longer }] };
    expect(lengths(both).bySize.map(({ size, pieceCount }) => [size, pieceCount])).toEqual([
      ['40', 1],
      ['46', 3],
    ]);
  });
  it('goes by the usual steps where nothing is chosen, and says that', () => {
    const usual = lengths(coat, nothingChosen, []);
    expect([usual.isUsual, usual.bySize[0]?.soldMm]).toEqual([true, expect.closeTo(28 * 25.4, 9)]);
  });
  it('says so where every zip on offer is too short', () => {
    const found = lengths(coat, filled({ zip: item('fastening', 'zip item', { form: 'zip' }) }), [
      offer('zip item', 'too short', { kind: 'each', lengthMm: 610 }, 640),
    ]);
    expect(found.bySize[0]).toMatchObject({ soldMm: null, shortenToMm: null });
  });
});

describe('the maker’s own amount for one coat', () => {
  it('stands in place of the estimate, which is still known', () => {
    const own = done(setAmountPerCoat(smallCoat({ coatCount: 3 }), 'thread', 77));
    const need = requirement(own, nothingChosen).find(({ slotId }) => slotId === 'thread');
    expect(need?.kind === 'amount' && need.amount).toBe(231);
    expect(estimatedPerCoat(own, 'thread', nothingChosen)).toBeCloseTo(1.4 * 2.5, 9);
    expect(done(setAmountPerCoat(own, 'thread', null))).toEqual(smallCoat({ coatCount: 3 }));
  });
  it('is refused for what is cut, and below nothing', () => {
    expect(refusal(setAmountPerCoat(smallCoat(), 'shell', 3))).toContain('its lay says');
    expect(refusal(setAmountPerCoat(smallCoat(), 'thread', -1))).toContain('Type 0 or more');
    expect(refusal(setAmountPerCoat(smallCoat(), 'cord', 1))).toContain('is not in the plan');
    expect(() => estimatedPerCoat(smallCoat(), 'shell', nothingChosen)).toThrow(RangeError);
  });
  it('wastage and sewing time are the workshop’s own', () => {
    const coat = done(setSewingMinutes(done(setThreadWastage(smallCoat(), 0.22)), 505));
    expect([coat.threadWastageRatio, coat.sewingMinutesPerCoat]).toEqual([0.22, 505]);
    expect(refusal(setThreadWastage(coat, 2.4))).toContain('Wastage of thread');
    expect(refusal(setSewingMinutes(coat, Number.NaN))).toContain('no time');
  });
});

describe('needles of a batch in sizes', () => {
  it('wear out by the hours of all coats together', () => {
    const coat = smallCoat({
      size: '40',
      sewingMinutesPerCoat: 240,
      slots: [...smallCoat().slots, slot('needles', 'needle')],
      sizes: [
        { size: '44', coatCount: 1, pieces: smallCoat().pieces },
        { size: '46', coatCount: 1, pieces: smallCoat().pieces },
      ],
    });
    const need = requirement(coat, nothingChosen).find(({ slotId }) => slotId === 'needles');
    expect(need?.kind === 'amount' && need.amount).toBe(2);
  });
});

describe('the filling list on paper', () => {
  const coat = stuffedCoat({ coatCount: 3 });
  const list = fillingList(
    coat,
    slotById(coat, 'fill'),
    filled({ fill: item('fill', 'down', { fillPowerCm3PerG: 390 }) }),
  );
  const table = fillingTable(list, { system: 'metric', title: 'Lapwing: down', cautions: ['Wear a mask.'] });

  it('has a row with a box for each chamber, and its rows add up to the total', () => {
    expect(table.sections.map(({ title, rows }) => [title, rows.length])).toEqual([
      ['back', 7],
      ['front', 7],
    ]);
    expect(table.columns[0]).toMatchObject({ kind: 'tick', only: 'paper' });
    const each = table.sections.flatMap(({ rows }) =>
      rows.map((row) => Number((row[7] as { fileText: string }).fileText)),
    );
    expect(Math.abs(each.reduce((sum, grams) => sum + grams, 0) - list.filledG)).toBeLessThan(14 * 0.05);
    expect(table.notes).toEqual(['Wear a mask.']);
  });
  it('names what must be at hand with its spare', () => {
    expect(table.lead).toContain(`have ${Math.round(list.filledG * 1.05)} g at hand`);
  });
});
