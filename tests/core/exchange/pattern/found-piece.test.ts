import { describe, expect, it } from 'vitest';
import { edgeLengthMm, seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { ringAreaMm2 } from '../../../../shared-core/geometry/ring.ts';
import {
  type At,
  line,
  metric,
  onlyPiece,
  type Pairs,
  patternText,
  point,
  polyline,
  readText,
  wellRead,
} from '../dxf-text.ts';

/** 410 up the page, 230 across, drawn clockwise far from the origin. */
const tall: readonly At[] = [
  [600, 100],
  [600, 510],
  [830, 510],
  [830, 100],
];
const upwards = line(7, [700, 150], [700, 450]);
const turns = tall.flatMap((at) => point(2, at));

function sleeve(more: Pairs = [], entities: Pairs = metric): string {
  return patternText({ blocks: { SLEEVE: [...polyline(1, tall), ...turns, ...upwards, ...more] }, entities });
}

describe('the lines of a piece', () => {
  it('is parted into edges at its turn points; curve points stay in the edge', () => {
    const bent: At[] = [
      [0, 0],
      [400, 0],
      [400, 200],
      [300, 230],
      [200, 240],
      [100, 232],
      [0, 200],
    ];
    const drawn = (points: readonly At[]) =>
      onlyPiece(
        patternText({
          blocks: {
            A: [
              ...polyline(1, bent),
              ...points.flatMap((at) => point(2, at)),
              ...[bent[3]!, bent[4]!, bent[5]!].flatMap((at) => point(3, at)),
              ...line(7, [9, 9], [90, 9]),
            ],
          },
          entities: metric,
        }),
      ).outline.edges.map(({ segments }) => segments.length);
    expect(drawn([bent[0]!, bent[1]!, bent[2]!, bent[6]!])).toEqual([1, 1, 4, 1]);
    // A turn point along a curve parts it, where the bend alone would not.
    expect(drawn([bent[0]!, bent[1]!, bent[2]!, bent[4]!, bent[6]!])).toEqual([1, 1, 2, 2, 1]);
    expect(drawn([])).toEqual([1, 1, 4, 1]);
  });

  it('of many curve points keeps those that its shape needs, within a tenth of a mm', () => {
    const count = 360;
    const arch = Array.from({ length: count + 1 }, (_, i): At => {
      const angle = (Math.PI * i) / count;
      return [300 * Math.cos(angle), 300 * Math.sin(angle)];
    });
    const [, curve] = onlyPiece(
      patternText({
        blocks: {
          ARCH: [
            ...polyline(1, arch),
            ...[arch[0]!, arch[count]!].flatMap((at) => point(2, at)),
            ...line(7, [0, 9], [50, 9]),
          ],
        },
        entities: metric,
      }),
    )
      .outline.edges.map(({ segments }) => segments)
      .sort((a, b) => a.length - b.length);
    expect(curve!.length).toBeLessThan(count / 3);
    expect(curve!.length).toBeGreaterThan(20);
    // Few points stay as they are.
    const coarse = arch.filter((_, i) => i % 20 === 0);
    const [, kept] = onlyPiece(
      patternText({
        blocks: {
          ARCH: [
            ...polyline(1, coarse),
            ...[arch[0]!, arch[count]!].flatMap((at) => point(2, at)),
            ...line(7, [0, 9], [50, 9]),
          ],
        },
        entities: metric,
      }),
    )
      .outline.edges.map(({ segments }) => segments)
      .sort((a, b) => a.length - b.length);
    expect(kept).toHaveLength(18);
  });

  it('with a mirror line is on the fold there', () => {
    const piece = onlyPiece(sleeve(line(6, [600, 100], [600, 510])));
    const fold = piece.outline.edges.find(({ name }) => name === piece.foldEdge)!;
    expect([fold.segments.length, fold.allowanceMm, edgeLengthMm(piece.outline, fold.name)]).toEqual([
      1,
      0,
      expect.closeTo(410, 6),
    ]);
    const added = onlyPiece(sleeve(line(6, [600, 100], [600, 510])), { allowanceMm: 12 });
    expect(added.outline.edges.map(({ name, allowanceMm }) => [name === 'fold', allowanceMm]).sort()).toEqual(
      [
        [false, 12],
        [false, 12],
        [false, 12],
        [true, 0],
      ],
    );
    const { found } = readText(sleeve(line(6, [700, 100], [700, 510])));
    expect([found?.pieces[0]?.foldEdge, found?.notes]).toEqual([
      null,
      ['The mirror line of SLEEVE lies along none of its edges, so the piece is cut as it is drawn.'],
    ]);
  });

  it('with a sewing line has that as its outline, and the allowance of each edge', () => {
    const sewn: At[] = [
      [610, 140],
      [810, 140],
      [810, 505],
      [610, 505],
    ];
    const piece = onlyPiece(sleeve([...polyline(14, sewn), ...sewn.flatMap((at) => point(2, at))]));
    expect(piece.hasSewLine).toBe(true);
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(200 * 365, 3);
    expect(piece.extentMm).toEqual({
      alongMm: expect.closeTo(410, 2),
      acrossMm: expect.closeTo(230, 2),
    });
    expect(
      piece.outline.edges.map(({ allowanceMm }) => Math.round(allowanceMm * 100) / 100).sort((a, b) => a - b),
    ).toEqual([5, 10, 20, 40]);
  });

  it('with a sewing line in four open lines is the same', () => {
    const sewn: At[] = [
      [610, 140],
      [810, 140],
      [810, 505],
      [610, 505],
    ];
    const lines = sewn.flatMap((at, i) =>
      i === 2 ? line(14, sewn[3]!, at) : line(14, at, sewn[(i + 1) % 4]!),
    );
    const piece = onlyPiece(sleeve(lines));
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(200 * 365, 3);
  });

  it('with a sewing line that is broken, or runs unevenly, says so', () => {
    const broken = wellRead(
      sleeve([...line(14, [610, 140], [810, 140]), ...line(14, [810, 140], [810, 505])]),
    );
    expect(broken.notes).toEqual([
      'The sewing line of SLEEVE is not one closed line, so its boundary is taken alone.',
    ]);
    expect(broken.pieces[0]?.hasSewLine).toBe(false);
    const slanted: At[] = [
      [610, 120],
      [810, 150],
      [810, 505],
      [610, 505],
    ];
    const { notes } = wellRead(sleeve([...polyline(14, slanted), ...slanted.flatMap((at) => point(2, at))]));
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/^The allowance at edge 1 of SLEEVE is uneven; [234]\d\.\d mm is taken\.$/);
  });

  it('drawn at the cutting line alone is sewn inside it by the stated allowance', () => {
    const piece = onlyPiece(sleeve(), { outlineIs: 'cutting line', allowanceMm: 11 });
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(388 * 208, 3);
    expect(piece.extentMm.alongMm).toBeCloseTo(410, 3);
    const outside = onlyPiece(sleeve(), { allowanceMm: 11 });
    expect(outside.extentMm).toEqual({
      alongMm: expect.closeTo(432, 3),
      acrossMm: expect.closeTo(252, 3),
    });
  });

  it('drawn at the cutting line alone keeps its fold where it is', () => {
    const piece = onlyPiece(sleeve(line(6, [600, 100], [600, 510])), {
      outlineIs: 'cutting line',
      allowanceMm: 11,
    });
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(388 * 219, 3);
    expect(piece.outline.edges.find(({ name }) => name === piece.foldEdge)?.allowanceMm).toBe(0);
    expect(piece.extentMm).toEqual({
      alongMm: expect.closeTo(410, 3),
      acrossMm: expect.closeTo(230, 3),
    });
  });

  it('takes its notches of every form to their edges, from either line', () => {
    const sewn: At[] = [
      [610, 140],
      [810, 140],
      [810, 505],
      [610, 505],
    ];
    const marks = [...point(4, [600, 230]), ...point(83, [810, 300])];
    const piece = onlyPiece(sleeve([...polyline(14, sewn), ...marks]));
    expect(piece.notches.map(({ atMm }) => Math.round(atMm * 100) / 100).sort((a, b) => a - b)).toEqual([
      160, 275,
    ]);
    const { problems } = readText(sleeve(point(4, [700, 300])));
    expect(problems.map(({ what }) => what)).toEqual(['has a notch that lies on none of its edges']);
  });
});
