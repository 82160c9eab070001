import { describe, expect, it } from 'vitest';
import { flowNeeds } from '../../../shared-core/flow/estimate.ts';
import { ringTurned } from '../../../shared-core/geometry/ring.ts';
import { totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import type { PanelOrder } from '../../../shared-core/plan/model/coat-plan.ts';
import { clothLot, item, layHere, onShelf, piece, rectangle } from '../../fixtures/small-workshop.ts';
import { allOf, coat, panel, plies, shapesOf, sources } from './panel-coat.ts';

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
  it('is as wide as a layer that is washed first is after its wash, and no wider', async () => {
    const shrinking = item('batting', 'batting item', {
      widthMm: 700,
      shrinkageAlongRatio: 0,
      shrinkageAcrossRatio: 0.1,
    });
    const roll = clothLot('batting item', 'winter', 700, [9000], 9000);
    const shelf = [sources(coat(panel)).shelf[0]!, onShelf(shrinking, roll)];
    for (const slotId of ['shell', 'batting']) {
      const [cut] = allOf(await shapesOf(sources(coat(panel), { shelf }), slotId));
      expect(cut?.slice(2)).toEqual([expect.closeTo(790 * 1.1 + 50, 2), expect.closeTo(630, 6)]);
    }
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
