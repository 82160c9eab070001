import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../main/services/solver.ts';
import { cuttingProposal } from '../../shared-core/cover/cutting-proposal.ts';
import { estimate, flowNeeds, type FlowSources } from '../../shared-core/flow.ts';
import { estimateJson } from '../../shared-core/flow-json.ts';
import { estimateText } from '../../shared-core/flow-text.ts';
import { tableCells } from '../../shared-core/flow-table.ts';
import { ringBox, ringTurned } from '../../shared-core/geometry/ring.ts';
import { totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import type { CoatPlan, PanelOrder, Piece, QuiltingOrder } from '../../shared-core/plan/coat-plan.ts';
import { toOutline } from '../../shared-core/plan/quilting-order.ts';
import type { ShapesNeed } from '../../shared-core/requirement/need.ts';
import { requirement } from '../../shared-core/requirement/requirement.ts';
import { trimmedMm2 } from '../../shared-core/requirement/trimmings.ts';
import type { Cutting } from '../../shared-core/stash/cutting.ts';
import {
  clothLot,
  item,
  layHere,
  measured,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../fixtures/small-workshop.ts';

const panel: PanelOrder = { kind: 'panel', marginMm: 25, widthMm: null, coats: 'each' };
const plies = (count: number) => [
  { slotId: 'shell', plyCount: 1 },
  { slotId: 'batting', plyCount: count },
];

/** Two fronts of 390 x 480 side by side, on 1000 mm of quilted width: 1100 less its edges, taken up by 5 %. */
function coat(
  order: PanelOrder | typeof toOutline,
  pieces?: readonly Piece[],
  more: Partial<CoatPlan> = {},
): CoatPlan {
  return plan({
    coatCount: 3,
    clearanceMm: 0,
    slots: [
      slot('shell', 'cloth', { isQuilted: true }),
      slot('batting', 'batting'),
      slot('thread', 'thread'),
    ],
    pieces: pieces ?? [
      piece('front', rectangle(390, 480), {
        cutCount: 2,
        isMirrored: true,
        quilted: 'across',
        cutFrom: plies(2),
      }),
    ],
    quilting: {
      spacingMm: 100,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'thread',
      order,
      ...measured(null, 2, { overLinesRatio: 0.1, alongLinesRatio: 0.05 }),
    },
    ...more,
  });
}

const taffeta = item('cloth', 'shell item', { widthMm: 1100, arealMassGPerM2: 50 });
const fleece = item('batting', 'batting item', { widthMm: 1500, arealMassGPerM2: 120, loftMm: 4 });

function sources(of: CoatPlan, more: Partial<FlowSources> = {}): FlowSources & { today: string } {
  return {
    plan: of,
    shelf: [
      onShelf(taffeta, clothLot('shell item', 'autumn', 1100, [9000], 9000)),
      onShelf(fleece, clothLot('batting item', 'winter', 1500, [9000], 9000)),
    ],
    offers: [],
    suppliers: [],
    today: '2026-11-25',
    ...more,
  };
}

async function shapesOf(of: FlowSources, slotId: string): Promise<ShapesNeed> {
  const need = (await flowNeeds(of, layHere)).needs.find((each) => each.slotId === slotId);
  if (need?.kind !== 'shapes') throw new Error(`${slotId} is not cut`);
  return need;
}

const allOf = ({ shapes }: ShapesNeed) =>
  shapes.map(({ name, ring, count }) => {
    const box = ringBox(ring);
    return [name, count, box.maxX - box.minX, box.maxY - box.minY];
  });

describe('a coat whose fronts are cut from a quilted panel', () => {
  it('takes a panel of every layer for each coat, larger by the take-up both ways and by its edges', async () => {
    const of = sources(coat(panel));
    // 390 x 1.1 + 50, and the whole width; two plies of batting in each of three.
    expect(allOf(await shapesOf(of, 'shell'))).toEqual([
      ['Panel of front', 3, expect.closeTo(479, 2), expect.closeTo(1100, 6)],
    ]);
    expect(allOf(await shapesOf(of, 'batting'))).toEqual([
      ['Panel of front', 6, expect.closeTo(479, 2), expect.closeTo(1100, 6)],
    ]);
    const { panels } = await flowNeeds(of, layHere);
    expect(panels).toMatchObject([
      {
        count: 3,
        size: '40',
        quiltedLengthMm: expect.closeTo(440, 2),
        quiltedWidthMm: expect.closeTo(1050, 6),
        pieces: [{ pieceId: 'front', count: 1, mirroredCount: 1 }],
      },
    ]);
    expect(panels[0]?.layers.map(({ slotId, plyCount }) => [slotId, plyCount])).toEqual([
      ['shell', 1],
      ['batting', 2],
    ]);
  });
  it('or one length for all coats', async () => {
    const shell = await shapesOf(sources(coat({ ...panel, coats: 'all' })), 'shell');
    expect(allOf(shell)).toEqual([
      ['Panel of front', 1, expect.closeTo(1190 * 1.1 + 50, 2), expect.closeTo(1100, 6)],
    ]);
  });
  it('is as wide as its narrowest layer, or as the maker has it', async () => {
    const narrow = item('batting', 'batting item', { widthMm: 630 });
    const shelf = [
      sources(coat(panel)).shelf[0]!,
      onShelf(narrow, clothLot('batting item', 'winter', 630, [9000], 9000)),
    ];
    // 580 mm taken up by 5 % are 552 mm: one front beside nothing, two behind each other.
    expect(allOf(await shapesOf(sources(coat(panel), { shelf }), 'shell'))).toEqual([
      ['Panel of front', 3, expect.closeTo(790 * 1.1 + 50, 2), expect.closeTo(630, 6)],
    ]);
    const own = await shapesOf(sources(coat({ ...panel, widthMm: 700 })), 'shell');
    expect(allOf(own)).toEqual([['Panel of front', 3, expect.closeTo(919, 2), expect.closeTo(700, 6)]]);
  });
  it('says in a sentence where its edges leave no width', async () => {
    await expect(flowNeeds(sources(coat({ ...panel, widthMm: 100, marginMm: 60 })), layHere)).rejects.toThrow(
      'A quilted panel for front has no width left beside its edges',
    );
  });
  it('is sewn from edge to edge of the panel, and each of its threads is said once', async () => {
    const of = sources(coat(panel));
    const { needs } = await flowNeeds(of, layHere);
    const thread = needs.find(({ slotId }) => slotId === 'thread');
    // Lines at 0, 100, 200 and 300 mm of 1050 mm each, on three panels.
    const part =
      thread?.kind === 'amount' ? thread.parts.filter(({ what }) => what.startsWith('quilting')) : [];
    expect(part).toHaveLength(1);
    expect(part[0]?.what).toMatch(/^quilting of the panel of front/);
    const { panels } = await flowNeeds(of, layHere);
    expect(panels[0]?.stitchingMm).toBeCloseTo(4 * 1050, 2);
  });
  it('leaves what no line goes through on the cloth', async () => {
    const facing = piece('facing', rectangle(300, 90), { cutFrom: [{ slotId: 'shell', plyCount: 1 }] });
    const shell = await shapesOf(sources(coat(panel, [...coat(panel).pieces, facing])), 'shell');
    expect(shell.shapes.map(({ name, count }) => [name, count])).toEqual([
      ['Panel of front', 3],
      ['facing', 3],
    ]);
  });
});

describe('pieces on a panel', () => {
  const back = piece('back', rectangle(430, 900), { quilted: 'across', cutFrom: plies(2) });
  const yoke = piece('yoke', rectangle(260, 900), { quilted: 'across', cutFrom: plies(2) });
  it('lie so that their own lines fall on those of the panel', async () => {
    const of = sources(coat({ ...panel, coats: 'all' }, [back, yoke]));
    const [laid] = (await flowNeeds(of, layHere)).panels;
    const { job, result } = laid!.lay;
    expect(result.placements).toHaveLength(6);
    for (const placement of result.placements) {
      const shape = job.shapes[placement.shape]!;
      const [x] = ringTurned(Float64Array.of(shape.match!.x, 0), placement.turnDeg, placement.mirrored);
      const lineAtMm = placement.x + x!;
      expect(Math.abs(lineAtMm - 100 * Math.round(lineAtMm / 100))).toBeLessThan(0.01);
    }
    // Two of 430 mm cannot lie closer than 500, however little there is between them.
    expect(totalUsedMm(result)).toBeGreaterThan(3 * 430 + 3 * 260);
  });
  it('with other layers, or lines another way, are on panels of their own', async () => {
    const sleeve = { ...yoke, id: 'sleeve', name: 'sleeve', cutFrom: plies(1) };
    const turned = { ...yoke, id: 'flap', name: 'flap', quilted: 'along' as const };
    const { panels } = await flowNeeds(sources(coat(panel, [back, sleeve, turned])), layHere);
    expect(panels.map(({ id, direction }) => [id, direction])).toEqual([
      ['panel of back', 'across'],
      ['panel of sleeve', 'across'],
      ['panel of flap', 'along'],
    ]);
  });
  it('of two sizes are on panels of their size, or on one length together', async () => {
    const larger = { ...back, outline: rectangle(470, 900) };
    const sized = (order: PanelOrder) =>
      coat(order, [back], { sizes: [{ size: '42', coatCount: 2, pieces: [larger] }] });
    const { panels } = await flowNeeds(sources(sized(panel)), layHere);
    expect(panels.map(({ id, size, count }) => [id, size, count])).toEqual([
      ['panel of back', '40', 3],
      ['panel of back, 42', '42', 2],
    ]);
    const all = await flowNeeds(sources(sized({ ...panel, coats: 'all' })), layHere);
    expect(all.panels.map(({ id, size, count }) => [id, size, count])).toEqual([
      ['panel of back and back, 42', null, 1],
    ]);
    const lines = (need: typeof all) => {
      const thread = need.needs.find(({ slotId }) => slotId === 'thread');
      return thread?.kind === 'amount'
        ? thread.parts.filter(({ what }) => what.startsWith('quilting')).length
        : 0;
    };
    expect([lines(all), lines(await flowNeeds(sources(sized(panel)), layHere))]).toEqual([1, 2]);
  });
});

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
