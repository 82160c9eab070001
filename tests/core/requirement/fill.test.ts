import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slotById } from '../../../shared-core/plan/coat-plan.ts';
import { lensAreaMm2 } from '../../../shared-core/quilting/chambers.ts';
import { coatMass } from '../../../shared-core/requirement/mass.ts';
import { fillingList, fillNeed } from '../../../shared-core/requirement/fill.ts';
import { item, measured, piece, rectangle, slot } from '../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from './small-coat.ts';

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
  it('without a measured rise it takes an eighth of the spacing and says so', () => {
    const guessed = stuffedCoat({ quilting: { ...stuffedCoat().quilting!, measures: [] } });
    expect(list(guessed).filledG).toBeCloseTo(list(stuffedCoat()).filledG, 9);
    expect(list(guessed).basis[0]?.kind).toBe('rule of thumb');
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
