import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { proposedCutting, wholeBatch } from '../../../shared-core/flow/next-cutting.ts';
import { ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import { laySvg } from '../../../shared-core/lay/lay-svg.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import type { CoatPlan, Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { setWashing } from '../../../shared-core/plan/edits/washing.ts';
import type { FactsOf } from '../../../shared-core/stash/kinds.ts';
import type { LengthOnShelf, LotOnShelf } from '../../../shared-core/stash/stash.ts';
import {
  clothLot,
  item,
  layHere,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const mm = (value: number) => expect.closeTo(value, 1) as unknown as number;
const byTenth = offer(
  'shell item',
  'by tenth',
  { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 },
  200,
);
const fivePercent = { shrinkageAlongRatio: 0.05, shrinkageAcrossRatio: 0.05 };
const flannel = (facts: Partial<FactsOf<'cloth'>> = fivePercent) =>
  item('cloth', 'shell item', { widthMm: 1400, arealMassGPerM2: 150, ...facts });

/** Rectangles, along the cloth by across it. */
function coat(
  sizes: readonly (readonly [along: number, across: number])[],
  more: Partial<Slot> = {},
): CoatPlan {
  return plan({
    slots: [slot('shell', 'cloth', more)],
    pieces: sizes.map(([along, across], index) => piece(`panel ${index + 1}`, rectangle(along, across))),
  });
}

async function road(sewn: CoatPlan, cloth: ReturnType<typeof flannel>, ...lots: LotOnShelf[]) {
  const sources = { plan: sewn, shelf: [onShelf(cloth, ...lots)], offers: [byTenth], suppliers: [] };
  const result = await estimate(sources, layHere, solveHere);
  const need = result.requirement[0]!;
  if (need.kind !== 'shapes') throw new Error('the shell is cut');
  return { ...result, sources, need, shell: result.cover[0]!, lay: result.lays[0]! };
}

function withLength(lot: LotOnShelf, more: Partial<LengthOnShelf>): LotOnShelf {
  return { ...lot, lengths: lot.lengths.map((length) => ({ ...length, ...more })) };
}

describe('cloth that is washed before it is cut', () => {
  it('is narrower when it is laid: two panels that lie side by side on 140 cm need two rows on 140 cm less 5 %', async () => {
    const panels = coat([
      [570, 690],
      [570, 690],
    ]);
    const dry = await road(panels, flannel({}));
    expect(dry.lay.result.usedLengthMm).toEqual([mm(570)]);
    const { lay, toBuy } = await road(panels, flannel());
    expect(lay.job.lengths[0]?.widthMm).toBe(1330);
    expect(lay.result.usedLengthMm).toEqual([mm(1140)]);
    // 1140 / 0.95 off the roll, sold by tenths.
    expect(toBuy.lines).toMatchObject([{ unitCount: 12, usedAmount: mm(1200) }]);
  });

  it('has its pieces in their true size, since it shrinks no more', async () => {
    const { need, lay } = await road(coat([[950, 1300]]), flannel());
    const box = ringBox(need.shapes[0]!.ring);
    expect([box.maxX, box.maxY]).toEqual([950, 1300]);
    expect(layWords(lay.result, 'metric', lay.washed)).toContain(
      '0.95 m of washed cloth, 1.00 m unwashed, 97 % of the cloth used',
    );
    expect(laySvg(coat([[950, 1300]]), lay)).toContain('shell: 0.950 m of 1.330 m, washed cloth');
  });

  it('is taken from the shelf, set aside, paid for and weighed as unwashed cloth', async () => {
    const roll = clothLot('shell item', 'autumn', 1400, [4000], 8_000);
    const { shell, cost, finished, need } = await road(coat([[950, 1300]]), flannel(), roll);
    expect(shell).toMatchObject({ state: 'covered', uses: [{ amount: mm(1000), free: 4000 }] });
    expect(usesToSetAside([shell])).toMatchObject([{ amount: mm(1000) }]);
    expect(cost.batchMinor).toBe(2_000);
    // 0.95 x 1.3 m of washed cloth was 1 x 1.3684 m of 150 g/m2 on the roll.
    expect(need.areaMm2).toBe(950 * 1300);
    expect(finished.coats[0]?.mass.knownG).toBeCloseTo(1 * (1.3 / 0.95) * 150, 6);
  });

  it('asks for the same purchase where the shelf has too little of it', async () => {
    const scrap = clothLot('shell item', 'scrap', 1400, [300], 300);
    const { shell, toBuy } = await road(coat([[950, 1300]]), flannel(), scrap);
    expect(shell).toMatchObject({ state: 'short', shortage: { amount: mm(1000), widthMm: 1400 } });
    expect(toBuy.lines).toMatchObject([{ unitCount: 10, boughtAmount: 1000 }]);
  });

  it('has its flaws where the wash puts them', async () => {
    const flaw = { x: 1000, y: 200, widthX: 100, widthY: 40 };
    const roll = withLength(clothLot('shell item', 'autumn', 1400, [4000], 8_000), { flaws: [flaw] });
    const { shell } = await road(coat([[950, 1300]]), flannel(), roll);
    expect(shell.lay?.job.lengths[0]).toMatchObject({ lengthMm: 3800, widthMm: 1330 });
    expect(shell.lay?.job.lengths[0]?.flaws).toEqual([
      { x: 950, y: mm(190), widthX: mm(95), widthY: mm(38) },
    ]);
  });

  it('has its selvages and its pattern shrink with it', async () => {
    const checked = flannel({ ...fivePercent, selvageMm: 10, repeatAlongMm: 100, repeatAcrossMm: 60 });
    const { lay } = await road(coat([[500, 500]]), checked);
    expect(lay.job.lengths[0]?.widthMm).toBeCloseTo(1380 * 0.95, 9);
    expect(lay.job.repeat).toEqual({ alongMm: 95, acrossMm: 57 });
  });

  it('of which one shrinkage alone is written down is taken to shrink as much the other way, and it is said', async () => {
    const { lay, need } = await road(coat([[500, 500]]), flannel({ shrinkageAlongRatio: 0.05 }));
    expect(lay.job.lengths[0]?.widthMm).toBe(1330);
    expect(need.basis.map(({ kind, how }) => `${kind}: ${how}`).join()).toMatch(
      /rule of thumb: washed before cutting.*how much it shrinks across is not written down and taken as along/,
    );
  });

  it('comes back to the shelf as washed cloth, measured as it is then, and nothing is lost between', async () => {
    const roll = clothLot('shell item', 'autumn', 1400, [4000], 8_000);
    const { sources } = await road(coat([[950, 900]]), flannel(), roll);
    const [proposed] = await proposedCutting(sources, wholeBatch(sources.plan), layHere);
    const line = proposed!.lines[0]!;
    expect(line).toMatchObject({ amount: 1000, washed: { alongRatio: 0.05, acrossRatio: 0.05 } });
    expect(proposed!.met).toMatchObject({ shapes: [{ isWashed: true }] });
    const [rest] = line.rests;
    expect(rest).toMatchObject({ y: expect.any(Number), widthX: mm(950), widthY: mm(430) });
    expect(rest!.x + rest!.widthX).toBeLessThanOrEqual(950);
    expect(rest!.y + rest!.widthY).toBeLessThanOrEqual(1330);
    const placedMm2 = line.placed.reduce((sum, ring) => sum + ringAreaMm2(ring), 0);
    expect(placedMm2 + rest!.widthX * rest!.widthY).toBeCloseTo(950 * 1330, -1);
  });

  it('shrinks no second time', async () => {
    const remnant = withLength(clothLot('shell item', 'rest', 1310, [990], 500, { form: 'remnant' }), {
      isWashed: true,
    });
    const { shell } = await road(coat([[950, 1300]]), flannel(), remnant);
    expect(shell).toMatchObject({ state: 'covered', uses: [{ amount: mm(950) }] });
    expect(shell.lay?.washed).toEqual([{ alongRatio: 0, acrossRatio: 0 }]);
    const unwashed = withLength(remnant, {});
    const same = { ...unwashed, lengths: unwashed.lengths.map(({ isWashed: _, ...length }) => length) };
    expect((await road(coat([[950, 1300]]), flannel(), same)).shell.state).toBe('short');
  });
});

describe('cloth that is cut unwashed', () => {
  const unwashed = { isCutUnwashed: true } as const;

  it('has larger pieces on its full width, and takes as much of the roll', async () => {
    const { lay, need } = await road(coat([[950, 1300]], unwashed), flannel());
    const box = ringBox(need.shapes[0]!.ring);
    expect(box.maxX).toBeCloseTo(1000, 9);
    expect(box.maxY).toBeCloseTo(1300 / 0.95, 9);
    expect(lay).toMatchObject({ job: { lengths: [{ widthMm: 1400 }] } });
    expect(lay.washed).toBeUndefined();
    expect(lay.result.usedLengthMm).toEqual([mm(1000)]);
  });

  it('is not cut from a remnant that was washed, whose pieces would stay too large', async () => {
    const remnant = withLength(clothLot('shell item', 'rest', 1400, [1100], 500, { form: 'remnant' }), {
      isWashed: true,
    });
    expect((await road(coat([[950, 1300]], unwashed), flannel(), remnant)).shell.state).toBe('short');
    expect((await road(coat([[950, 1300]], unwashed), flannel({}), remnant)).shell.state).toBe('covered');
  });

  it('is chosen for a slot in the plan and taken back there', () => {
    const before = coat([[950, 1300]]);
    const chosen = setWashing(before, 'shell', false);
    expect(chosen).toMatchObject({
      ok: true,
      value: { said: 'The shell is cut unwashed, its pieces larger.' },
    });
    if (!chosen.ok) throw new Error('refused');
    expect(chosen.value.plan.slots[0]).toMatchObject(unwashed);
    expect(setWashing(chosen.value.plan, 'shell', true)).toMatchObject({ ok: true, value: { plan: before } });
    const sewn = plan({ slots: [slot('thread', 'thread')], pieces: [] });
    expect(setWashing(sewn, 'thread', false)).toMatchObject({ ok: false });
  });

  it('shares a purchase with a slot that is washed first', async () => {
    const sewn = plan({
      slots: [slot('shell', 'cloth'), slot('yoke', 'cloth', { ...unwashed, itemId: 'shell item' })],
      pieces: [
        piece('back', rectangle(950, 665)),
        piece('yoke', rectangle(950, 665), { cutFrom: [{ slotId: 'yoke', plyCount: 1 }] }),
      ],
    });
    const { toBuy } = await road(sewn, flannel());
    // 665 / 0.95 = 700 of 1400 each: side by side on one metre.
    expect(toBuy.lines).toMatchObject([{ unitCount: 10, usedAmount: mm(1000), slotIds: ['shell', 'yoke'] }]);
  });
});

describe('for any pieces', () => {
  const sides = fc.array(fc.tuple(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 100, max: 900 })), {
    minLength: 1,
    maxLength: 4,
  });
  const ratio = fc.integer({ min: 0, max: 12 }).map((percent) => percent / 100);

  it('cloth that does not shrink gives what cloth gives of which no wash is spoken', async () => {
    const roll = clothLot('shell item', 'autumn', 1400, [5000], 10_000);
    const told = ({ requirement, lays, cover, toBuy, cost }: Awaited<ReturnType<typeof road>>) =>
      JSON.stringify([requirement, lays, cover, toBuy, cost], (key, value) =>
        key === 'seconds' ? 0 : value,
      );
    await fc.assert(
      fc.asyncProperty(sides, fc.boolean(), async (sizes, isCutUnwashed) => {
        const choice = isCutUnwashed ? ({ isCutUnwashed } as const) : {};
        const zero = flannel({ shrinkageAlongRatio: 0, shrinkageAcrossRatio: 0 });
        expect(told(await road(coat(sizes, choice), zero, roll))).toBe(
          told(await road(coat(sizes), flannel({}), roll)),
        );
      }),
      { numRuns: 12, seed: 4 },
    );
  });

  it('the area that leaves the roll is the area that is laid and what the wash took of it', async () => {
    const roll = clothLot('shell item', 'autumn', 1400, [9000], 18_000);
    await fc.assert(
      fc.asyncProperty(sides, ratio, ratio, async (sizes, along, across) => {
        const cloth = flannel({ shrinkageAlongRatio: along, shrinkageAcrossRatio: across });
        const { shell, need, finished } = await road(coat(sizes), cloth, roll);
        const { job, result } = shell.lay!;
        const laidMm2 = result.usedLengthMm[0]! * job.lengths[0]!.widthMm;
        expect(shell.uses[0]!.amount * 1400 * (1 - along) * (1 - across)).toBeCloseTo(laidMm2, 3);
        expect(result.utilisation * laidMm2).toBeCloseTo(need.areaMm2, 0);
        // Its weight is that of the pieces as they were on the roll, whenever it is washed.
        const sewn = await road(coat(sizes, { isCutUnwashed: true }), cloth, roll);
        expect(finished.coats[0]!.mass.knownG).toBeCloseTo(sewn.finished.coats[0]!.mass.knownG, 6);
      }),
      { numRuns: 12, seed: 7 },
    );
  });
});
