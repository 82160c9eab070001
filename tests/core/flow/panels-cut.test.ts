import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { cuttingProposal } from '../../../shared-core/cover/cutting-proposal.ts';
import { estimate, flowNeeds, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { estimateJson } from '../../../shared-core/flow/output/estimate-json.ts';
import { tableCells } from '../../../shared-core/flow/requirements-table/requirements-table.ts';
import { estimateText } from '../../../shared-core/flow/output/estimate-text.ts';
import type { QuiltingOrder } from '../../../shared-core/plan/model/coat-plan.ts';
import { toOutline } from '../../../shared-core/plan/model/quilting-order.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { trimmedMm2 } from '../../../shared-core/requirement/cut/trimmings.ts';
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import { layHere, piece, rectangle } from '../../fixtures/small-workshop.ts';
import { allOf, coat, fleece, panel, plies, shapesOf, sources, taffeta } from './panel-coat.ts';

describe('what is trimmed off a panel', () => {
  it('is what is laid less what its pieces would take cut to their outline, whatever their size', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 120, max: 700 }),
        fc.integer({ min: 100, max: 900 }),
        fc.integer({ min: 0, max: 60 }),
        fc.constantFrom('each' as const, 'all' as const),
        fc.constantFrom('across' as const, 'along' as const),
        async (lengthMm, widthMm, marginMm, coats, quilted) => {
          const pieces = [piece('back', rectangle(lengthMm, widthMm), { quilted, cutFrom: plies(2) })];
          const of = sources(coat({ ...panel, marginMm, coats }, pieces));
          for (const slotId of ['shell', 'batting']) {
            const laid = await shapesOf(of, slotId);
            const kept = requirement(
              coat(toOutline, pieces),
              new Map([
                ['shell', taffeta],
                ['batting', fleece],
              ]),
            ).find((need) => need.slotId === slotId);
            const keptMm2 = kept?.kind === 'shapes' ? kept.areaMm2 : Number.NaN;
            expect(trimmedMm2(laid.shapes)).toBeCloseTo(laid.areaMm2 - keptMm2, 3);
            expect(trimmedMm2(laid.shapes)).toBeGreaterThanOrEqual(-1e-3);
          }
        },
      ),
      { seed: 411, numRuns: 8 },
    );
  });
  it('is costed and told, and the finished coat does not weigh it', async () => {
    const of = sources(coat(panel));
    const found = await estimate(of, layHere, solveHere);
    const outlined = await estimate(sources(coat(toOutline)), layHere, solveHere);
    const [line] = found.cost.lines;
    expect(line?.trimmings?.areaMm2).toBeCloseTo(3 * (479 * 1100 - 2 * 429 * 504), 0);
    // Laid from side to side nothing falls beside it: all waste is trimmings.
    expect(line?.wasteMinor).toBe(0);
    expect(found.finished.coats[0]?.mass.lines.slice(0, 2)).toEqual(
      outlined.finished.coats[0]?.mass.lines
        .slice(0, 2)
        .map((each) => ({ ...each, massG: expect.closeTo(each.massG!, 6) })),
    );
    const text = estimateText(of, found, { system: 'metric', currency: 'EUR' });
    expect(text).toContain('Quilted pieces are cut from a panel that is quilted for each coat.');
    expect(text).toContain(
      'Panel of front, 3 times: 0.48 × 1.10 m of shell and 2 plies of batting; quilted 0.44 × 1.05 m.',
    );
    const json = estimateJson(of, found, { system: 'metric', currency: 'EUR' });
    expect(json.panels[0]).toMatchObject({
      id: 'panel of front',
      count: 3,
      lay: { placements: [{ piece: 'front' }, {}] },
    });
    expect(json.lays[0]?.placements[0]).toMatchObject({ piece: 'Panel of front' });
    expect(json.requirement[0]).toMatchObject({
      shapes: [{ carries: [{ pieceId: 'front', count: 1, mirroredCount: 1 }] }],
    });
  });
});

describe('cutting the panels', () => {
  const cuttingOf = async (
    of: FlowSources,
    coatCount: number,
    slotIds: readonly string[],
  ): Promise<Cutting> => {
    const some = { ...of, plan: { ...of.plan, coatCount } };
    const found = await estimate(some, layHere, solveHere);
    const slots = cuttingProposal(some.plan, found.requirement, found.cover).filter(({ slotId }) =>
      slotIds.includes(slotId),
    );
    return {
      id: 'one',
      planId: 'plan',
      revision: 1,
      at: '',
      coats: [],
      note: '',
      undoes: null,
      undoneBy: null,
      movements: [],
      slots: slots.map(({ slotId, met }) => ({ slotId, slotName: slotId, kind: 'cloth', met, lines: [] })),
    };
  };
  it('meets the need of the pieces that they give, coat by coat and layer by layer', async () => {
    const of = sources(coat(panel));
    const one = await cuttingOf(of, 1, ['shell', 'batting']);
    expect(one.slots[1]?.met).toMatchObject({
      kind: 'shapes',
      shapes: [{ pieceId: 'front', count: 2, mirroredCount: 2 }],
    });
    const left = { ...of, cuttings: [one] };
    expect([
      (await shapesOf(left, 'shell')).shapes[0]?.count,
      (await shapesOf(left, 'batting')).shapes[0]?.count,
    ]).toEqual([2, 4]);
    const shellOnly = { ...of, cuttings: [await cuttingOf(of, 3, ['shell'])] };
    expect((await shapesOf(shellOnly, 'shell')).shapes).toEqual([]);
    expect((await shapesOf(shellOnly, 'batting')).shapes[0]?.count).toBe(6);
    // Thread is for the whole batch, whatever is cut.
    const sewn = async (each: FlowSources) => {
      const need = (await flowNeeds(each, layHere)).needs.find(({ slotId }) => slotId === 'thread');
      return need?.kind === 'amount' ? need.amount : 0;
    };
    expect(await sewn(shellOnly)).toBeCloseTo(await sewn(of), 6);
  });
  it('of one length for all coats asks for a shorter one for what is left', async () => {
    const of = sources(coat({ ...panel, coats: 'all' }));
    const left = { ...of, cuttings: [await cuttingOf(of, 1, ['shell', 'batting'])] };
    expect(allOf(await shapesOf(left, 'shell'))).toEqual([
      ['Panel of front', 1, expect.closeTo(790 * 1.1 + 50, 2), expect.closeTo(1100, 6)],
    ]);
  });
});

describe('the three orders of one coat', () => {
  it('lay more the more is trimmed: outline, rough cut, panel', async () => {
    const areaOf = async (order: QuiltingOrder) => {
      const base = coat(toOutline);
      const of = sources({ ...base, quilting: { ...base.quilting!, order } });
      return (await shapesOf(of, 'shell')).areaMm2;
    };
    const [outline, rough, onPanel] = [
      await areaOf(toOutline),
      await areaOf({ kind: 'rough', marginMm: 10 }),
      await areaOf({ ...panel, marginMm: 40 }),
    ];
    expect(rough).toBeGreaterThan(outline);
    expect(onPanel).toBeGreaterThan(rough);
  });
  it('and a pattern’s table says why it has no figure for a panel', () => {
    const asked = { widthsMm: [1100], naps: ['with nap' as const], slotIds: ['shell'] };
    const [cell] = tableCells(sources(coat(panel)), asked);
    expect(cell?.problems[0]).toMatchObject({
      where: 'The shell',
      what: expect.stringContaining('quilted as panels'),
    });
    expect(tableCells(sources(coat(toOutline)), asked)[0]?.problems).toEqual([]);
  });
});
