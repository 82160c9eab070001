import { describe, expect, it } from 'vitest';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { fillingList } from '../../../../shared-core/requirement/fill/fill.ts';
import { quiltedRise } from '../../../../shared-core/requirement/fill/rise.ts';
import { item, measured } from '../../../fixtures/small-workshop.ts';
import { back, filled, front, nothingChosen, quiltedCoat, stuffedCoat } from '../small-coat.ts';

const rise = (coat: CoatPlan, items = nothingChosen, at = 0) => quiltedRise(coat, coat.pieces[at]!, items);

describe('how high quilted cloth stands', () => {
  const fleece = filled({ batting: item('batting', 'fleece', { loftMm: 14 }) });
  it('three eighths of the loft on each face, as a rule of thumb', () => {
    const found = rise(quiltedCoat(), fleece);
    expect([found.riseMm, found.basis.kind]).toEqual([5.25, 'rule of thumb']);
  });
  it('the maker’s own measure wins', () => {
    const found = rise(quiltedCoat({ quilting: { ...quiltedCoat().quilting!, ...measured(6, 1) } }));
    expect([found.riseMm, found.basis.kind]).toEqual([6, 'measured']);
  });
  it('a channel of clusters rises an eighth of its width, one of down as down usually does', () => {
    const { measures: _, ...lines } = stuffedCoat().quilting!;
    const coat = stuffedCoat({ quilting: { ...lines, spacingMm: 72 } });
    expect(rise(coat, filled({ fill: item('fill', 'clusters') })).riseMm).toBe(9);
    // No higher than a channel 1.5 times as wide as its loft lets it.
    expect(rise(coat, filled({ fill: item('fill', 'goose down') })).riseMm).toBe(24);
  });
});

describe('a body of two layers and a sleeve of one', () => {
  const layers = (plyCount: number) => [
    { slotId: 'shell', plyCount: 1 },
    { slotId: 'batting', plyCount },
  ];
  const coat = (measures: object) =>
    quiltedCoat({
      pieces: [
        back({ quilted: 'across', cutFrom: layers(2) }),
        front({ quilted: 'across', cutFrom: layers(1) }),
      ],
      quilting: { ...quiltedCoat().quilting!, ...measures },
    });
  it('each stand as high as a swatch of as many layers', () => {
    const both = coat({ measures: [...measured(9, 2).measures, ...measured(5, 1).measures] });
    expect([rise(both).riseMm, rise(both, nothingChosen, 1).riseMm]).toEqual([9, 5]);
  });
  it('where only the body was measured, the sleeve stands half as high and says that it is a guess', () => {
    const sleeve = rise(coat(measured(9, 2)), nothingChosen, 1);
    expect([sleeve.riseMm, sleeve.basis.kind]).toEqual([4.5, 'rule of thumb']);
    expect(sleeve.basis.how).toContain('in proportion');
  });
});

describe('a stuffed collar without lines in a quilted coat', () => {
  const [stuffed] = stuffedCoat().pieces;
  const collar = stuffedCoat({ pieces: [{ ...stuffed!, quilted: null }] });
  it('rises as a stuffed piece does, and not by an eighth of lines that it does not have', () => {
    const apart = rise({ ...collar, quilting: { ...collar.quilting!, spacingMm: 200, measures: [] } });
    expect(apart.riseMm).toBe(12.5);
    expect(apart.basis.how).toContain('without lines');
    expect(apart.basis.how).not.toContain('1/8');
  });
  it('nor by what was measured between lines', () => {
    const own = { ...collar, quilting: { ...collar.quilting!, ...measured(30, 0) } };
    expect(rise(own).riseMm).toBe(12.5);
    expect(fillingList(own, own.slots[1]!, nothingChosen).filledG).toBeCloseTo(
      fillingList(collar, collar.slots[1]!, nothingChosen).filledG,
      9,
    );
  });
});
