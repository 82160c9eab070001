import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { cost } from '../../../shared-core/cost/cost.ts';
import { costTable } from '../../../shared-core/cost/cost-table.ts';
import { cuttingProposal } from '../../../shared-core/cover/cutting-proposal.ts';
import { estimate, type Estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { estimateJson } from '../../../shared-core/flow/output/estimate-json.ts';
import { estimateText } from '../../../shared-core/flow/output/estimate-text.ts';
import { totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';
import type { QuiltingOrder } from '../../../shared-core/plan/model/coat-plan.ts';
import { cutCost } from '../../../shared-core/stash/cut-cost.ts';
import {
  clothLot,
  item,
  layHere,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1400, arealMassGPerM2: 50 });

/** One panel of 700 x 1050 mm on 3.5 m for 70.00. Nothing pads it, so nothing is taken up. */
const sources = (order: QuiltingOrder): FlowSources & { today: string } => ({
  plan: plan({
    slots: [slot('shell', 'cloth', { isQuilted: true }), slot('thread', 'thread')],
    pieces: [
      piece('panel', rectangle(700, 1050), {
        quilted: 'across',
        cutFrom: [{ slotId: 'shell', plyCount: 1 }],
      }),
    ],
    quilting: { spacingMm: 100, stitch: '301', stitchLengthMm: 3, threadSlotId: 'thread', order },
  }),
  shelf: [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [3500], 7000))],
  offers: [],
  suppliers: [],
  today: '2026-11-25',
});
const rough = sources({ kind: 'rough', marginMm: 30 });
const outline = sources({ kind: 'outline' });
const laid = (of: FlowSources): Promise<Estimate> => estimate(of, layHere, solveHere);
const euros = { system: 'metric', currency: 'EUR' } as const;
const trimmedMm2 = 760 * 1110 - 700 * 1050;

describe('a panel that is rough-cut, quilted and recut', () => {
  it('takes 60 mm more cloth than one that is cut to the outline', async () => {
    const used = ({ lays }: Estimate) => totalUsedMm(lays[0]!.result);
    expect(used(await laid(outline))).toBeCloseTo(700, 1);
    expect(used(await laid(rough))).toBeCloseTo(760, 1);
  });
  it('costs its trimmings too, weighed, and apart from what falls beside it', async () => {
    const [line] = (await laid(rough)).cost.lines;
    // 760 of 3500 mm for 70.00 is 15.20; of 760 x 1400 mm the trimmings are 0.1086 m2.
    expect(line).toMatchObject({
      costMinor: 1520,
      wasteMinor: Math.round(1520 * (1 - (760 * 1110) / (760 * 1400))),
    });
    expect(line?.trimmings?.areaMm2).toBeCloseTo(trimmedMm2, 3);
    expect(line?.trimmings?.massG).toBeCloseTo((trimmedMm2 / 1e6) * 50, 6);
    expect(line?.trimmings?.costMinor).toBe(Math.round((1520 * trimmedMm2) / (760 * 1400)));
    expect((await laid(outline)).cost.lines[0]?.trimmings).toBeNull();
  });
  it('says so on the cost sheet, and nothing where nothing is trimmed', async () => {
    const sheet = async (of: FlowSources) => {
      const { cost: sums } = await laid(of);
      return tableText(costTable(of, sums, null, euros));
    };
    expect(await sheet(rough)).toMatch(
      /Of it trimmed off after quilting[\s\S]+Shell +0\.11 m², 5\.4 g +1\.55 EUR[\s\S]+All trimmings/,
    );
    expect(await sheet(outline)).not.toContain('trimm');
  });
  it('says so to scripts, in words and as JSON', async () => {
    const found = await laid(rough);
    const text = estimateText(rough, found, euros);
    expect(text).toContain(
      'Quilted pieces are cut with 30 mm to spare all round, quilted, and recut to the outline.',
    );
    expect(text).toMatch(/of the pieces 0\.11 m², 5\.4 g is trimmed off after quilting/);
    expect(text).toContain('1.55 EUR in trimmings');
    const json = estimateJson(rough, found, euros);
    expect(json.requirement[0]).toMatchObject({ trimmings: { areaMm2: expect.closeTo(trimmedMm2, 3) } });
    expect(json.pattern[0]?.quilting).toMatchObject({ order: { kind: 'rough', marginMm: 30 } });
  });
});

describe('cutting it', () => {
  it('proposes the trimmings with the pieces, and they are a waste of their own', async () => {
    const found = await laid(rough);
    const [proposed] = cuttingProposal(rough.plan, found.requirement, found.cover);
    const [line] = proposed!.lines;
    expect([line?.pieceAreaMm2, line?.trimmedMm2]).toEqual([
      expect.closeTo(760 * 1110, 3),
      expect.closeTo(trimmedMm2, 3),
    ]);
    const cut = {
      item: taffeta,
      lot: { priceMinor: 7000, receivedMilli: 3_500_000 },
      widthMm: 1400,
      worthRatio: 1,
      amount: 800,
      pieceMm2: 760 * 1110,
      trimmedMm2,
      kept: [],
    };
    const { costMinor, area } = cutCost(cut);
    expect(area).toMatchObject({
      pieceMm2: 700 * 1050,
      wasteMm2: 800 * 1400 - 760 * 1110,
      trimmedMm2,
      trimmedG: (trimmedMm2 / 1e6) * 50,
      trimmedMinor: Math.round((costMinor * trimmedMm2) / (800 * 1400)),
    });
    expect(cutCost({ ...cut, trimmedMm2: 0 }).area).not.toHaveProperty('trimmedMm2');
    expect(cutCost({ ...cut, trimmedMm2: 2e6 }).area?.pieceMm2).toBe(0);
  });
  it('adds the trimmings of what is cut to those of what is still to be cut', async () => {
    const found = await laid(rough);
    const area = {
      pieceMm2: 1,
      keptMm2: 0,
      wasteMm2: 1,
      wasteG: 0,
      wasteMinor: 0,
      trimmedMm2: 9000,
      trimmedG: 0.45,
      trimmedMinor: 37,
    };
    const line = {
      itemId: 'shell item',
      itemName: 'taffeta',
      lotId: 'autumn',
      lengthId: 'roll',
      dyeLot: '',
      amount: 5,
      kept: [],
      usedMilli: 5000,
      costMinor: 99,
      area,
    };
    const cutting = {
      id: 'one',
      planId: 'plan',
      revision: 1,
      at: '',
      coats: [],
      note: '',
      undoes: null,
      undoneBy: null,
      movements: [],
      slots: [
        {
          slotId: 'shell',
          slotName: 'shell',
          kind: 'cloth',
          met: { kind: 'shapes', shapes: [] },
          lines: [line],
        },
      ],
    } as const;
    const [costed] = cost(rough.plan, found.cover, found.toBuy, rough.shelf, [cutting]).lines;
    const rest = found.cost.lines[0]!.trimmings!;
    expect(costed?.trimmings).toEqual({
      areaMm2: rest.areaMm2 + 9000,
      massG: rest.massG! + 0.45,
      costMinor: rest.costMinor + 37,
    });
  });
});
