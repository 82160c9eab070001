import { describe, expect, it } from 'vitest';
import { foundExtentMm } from '../../../shared-core/exchange/found-pattern.ts';
import { edgeLengthMm, seamRing } from '../../../shared-core/plan/outline-ring.ts';
import { ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import {
  type At,
  insert,
  line,
  metric,
  onlyPiece,
  type Pairs,
  patternText,
  point,
  polyline,
  readText,
  wellRead,
  words,
} from './dxf-text.ts';

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

describe('a piece of the standard', () => {
  it('lies with its grain along x, whichever way it was drawn', () => {
    const piece = onlyPiece(sleeve());
    const box = ringBox(seamRing(piece.outline));
    expect([box.minX, box.minY, box.maxX, box.maxY].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([
      0, 0, 410, 230,
    ]);
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(410 * 230, 6);
    // Up the page is up the coat: the left side of the page has the greater y.
    const slanted = onlyPiece(
      patternText({
        blocks: {
          A: [
            ...polyline(1, [
              [0, 0],
              [200, 0],
              [200, 500],
              [150, 500],
            ]),
            ...line(7, [9, 0], [9, 300]),
          ],
        },
        entities: metric,
      }),
    );
    expect(ringBox(seamRing(slanted.outline)).maxX).toBeCloseTo(500, 6);
    expect(
      slanted.outline.edges.flatMap(({ segments }) =>
        segments.map(({ to }) => [Math.round(to.x), Math.round(to.y)]),
      ),
    ).toContainEqual([0, 200]);
  });

  it('says its name, size, quantity, material, category and annotation', () => {
    const texts = [
      'Piece Name: Top sleeve',
      'SIZE: 14',
      'Quantity: 3,3',
      'Material: shell',
      'Category: TS',
      'Annotation: ease the cap',
    ];
    const piece = onlyPiece(sleeve(texts.flatMap((text) => words(15, text))));
    expect(piece).toMatchObject({
      name: 'Top sleeve',
      size: '14',
      cutCount: 6,
      isMirrored: true,
      material: 'shell',
      category: 'TS',
      annotation: 'ease the cap',
    });
    expect(onlyPiece(sleeve(words(15, 'Quantity: 3')))).toMatchObject({ cutCount: 3, isMirrored: false });
    expect(onlyPiece(sleeve())).toMatchObject({ name: 'SLEEVE', cutCount: 1 });
  });

  it('cut two plain and one mirrored has no form in a plan, and is said', () => {
    const { found, problems } = readText(sleeve(words(15, 'Quantity: 2,1')));
    expect(found?.pieces[0]?.cutCount).toBe(1);
    expect(problems.map(({ what }) => what)).toEqual(['has a quantity that cannot be read: 2,1']);
  });

  it('in inches is 25.4 times as large, and may be read in another unit', () => {
    const inches = sleeve([], words(1, 'Units: ENGLISH'));
    expect(readText(inches).found?.statedMmPerUnit).toBe(25.4);
    const small = patternText({
      blocks: {
        A: [
          ...polyline(1, [
            [0, 0],
            [20, 0],
            [20, 9],
            [0, 9],
          ]),
          ...line(7, [1, 1], [5, 1]),
        ],
      },
      entities: words(1, 'units: english'),
    });
    expect(foundExtentMm(onlyPiece(small))).toEqual({
      alongMm: expect.closeTo(508, 3),
      acrossMm: expect.closeTo(228.6, 3),
    });
    expect(foundExtentMm(onlyPiece(small, { mmPerUnit: 10 })).alongMm).toBeCloseTo(200, 3);
  });

  it('of no stated unit is taken in mm, and that is said; a header may state it', () => {
    expect(readText(sleeve([], [])).problems.map(({ what }) => what)).toEqual([
      'does not say its unit; mm are taken',
    ]);
    const header: Pairs = [
      [9, '$ACADVER'],
      [1, 'AC1012'],
      [9, '$INSUNITS'],
      [70, 5],
    ];
    const drawn = [
      ...polyline(1, [
        [0, 0],
        [61, 0],
        [61, 23],
        [0, 23],
      ]),
      ...line(7, [1, 1], [5, 1]),
    ];
    const found = wellRead(patternText({ header, blocks: { A: drawn } }));
    expect(found.mmPerUnit).toBe(10);
    expect(foundExtentMm(found.pieces[0]!).alongMm).toBeCloseTo(610, 6);
  });

  it('too small for a coat is named, so that a wrong unit is noticed', () => {
    const { problems } = readText(sleeve(), { mmPerUnit: 0.1 });
    expect(problems.map(({ what }) => what)).toEqual(['would be 41 mm, small for a coat']);
  });

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
    expect(foundExtentMm(piece)).toEqual({
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

  it('drawn at the cutting line alone is sewn inside it by the stated allowance', () => {
    const piece = onlyPiece(sleeve(), { outlineIs: 'cutting line', allowanceMm: 11 });
    expect(ringAreaMm2(seamRing(piece.outline))).toBeCloseTo(388 * 208, 3);
    expect(foundExtentMm(piece).alongMm).toBeCloseTo(410, 3);
    const outside = onlyPiece(sleeve(), { allowanceMm: 11 });
    expect(foundExtentMm(outside)).toEqual({
      alongMm: expect.closeTo(432, 3),
      acrossMm: expect.closeTo(252, 3),
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

  it('says what a plan has no place for', () => {
    const { notes } = wellRead(
      sleeve([
        ...point(13, [650, 300]),
        ...line(8, [650, 300], [660, 300]),
        ...line(8, [650, 310], [660, 310]),
      ]),
    );
    expect(notes).toEqual([
      '2 internal lines not kept: a piece has no place for them.',
      '1 drill hole not kept: a piece has no place for them.',
    ]);
  });

  it('inserted at a scale is as large as it stands there', () => {
    const scaled = sleeve(
      [],
      [
        ...metric,
        ...insert('SLEEVE', [
          [41, 2],
          [42, 2],
          [50, 90],
        ]),
      ],
    );
    expect(foundExtentMm(onlyPiece(scaled))).toEqual({
      alongMm: expect.closeTo(820, 6),
      acrossMm: expect.closeTo(460, 6),
    });
    expect(foundExtentMm(onlyPiece(sleeve([], [...metric, ...insert('SLEEVE')]))).alongMm).toBeCloseTo(
      410,
      6,
    );
  });

  it('may be drawn by blocks within its block', () => {
    const text = patternText({
      blocks: { MARKS: polyline(1, tall), OUTER: [...insert('MARKS'), ...upwards] },
      entities: metric,
    });
    expect(wellRead(text).pieces.map(({ key }) => key)).toEqual(['OUTER']);
  });

  it('has its letters back', () => {
    expect(onlyPiece(sleeve(words(1, 'Piece Name: \\U+00C4rmel'))).name).toBe('Ärmel');
    const latin = sleeve(words(1, 'Piece Name: \u00c4rmel'));
    expect(onlyPiece(latin).name).toBe('Ärmel');
  });
});

describe('any other drawing', () => {
  it('gives each closed line as a piece, lines joined where they meet', () => {
    const lines = [
      line('0', [0, 0], [300, 0]),
      line('0', [300, 170], [300, 0]),
      line('0', [300, 170], [0, 0]),
    ].flat();
    const round: Pairs = [
      [0, 'CIRCLE'],
      [8, '0'],
      [10, 700],
      [20, 90],
      [40, 65],
    ];
    const found = wellRead(
      patternText({
        header: [
          [9, '$INSUNITS'],
          [70, 4],
        ],
        entities: [
          ...lines,
          ...round,
          ...polyline('X', [
            [690, 80],
            [710, 80],
            [700, 99],
          ]),
        ],
      }),
    );
    const areas = found.pieces.map((piece) => ringAreaMm2(seamRing(piece.outline, 0.001)));
    expect(areas).toEqual([expect.closeTo(Math.PI * 65 * 65, -1), expect.closeTo((300 * 170) / 2, 6)]);
  });

  it('reads light polylines with arcs', () => {
    const light: Pairs = [
      [0, 'LWPOLYLINE'],
      [8, '0'],
      [90, 4],
      [70, 1],
      [10, 0],
      [20, 0],
      [10, 200],
      [20, 0],
      [42, 1],
      [10, 200],
      [20, 80],
      [10, 0],
      [20, 80],
    ];
    const found = wellRead(
      patternText({
        header: [
          [9, '$INSUNITS'],
          [70, 4],
        ],
        entities: light,
      }),
    );
    expect(ringAreaMm2(seamRing(found.pieces[0]!.outline, 0.01))).toBeCloseTo(
      200 * 80 + (Math.PI * 1600) / 2,
      -1,
    );
  });

  it('says which kinds of line it does not read', () => {
    const spline: Pairs = [
      [0, 'SPLINE'],
      [8, 1],
      [10, 0],
      [20, 0],
    ];
    const { found } = readText(sleeve([], [...metric, ...spline, ...spline]));
    expect(found?.notes[0]).toMatch(/^2 SPLINE not read, the first on line \d+: save curves as polylines\.$/);
  });
});
