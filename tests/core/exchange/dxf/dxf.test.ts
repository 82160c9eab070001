import { describe, expect, it } from 'vitest';
import { seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { ringAreaMm2, ringBox } from '../../../../shared-core/geometry/ring.ts';
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
    expect(onlyPiece(small).extentMm).toEqual({
      alongMm: expect.closeTo(508, 3),
      acrossMm: expect.closeTo(228.6, 3),
    });
    expect(onlyPiece(small, { mmPerUnit: 10 }).extentMm.alongMm).toBeCloseTo(200, 3);
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
    expect(found.pieces[0]!.extentMm.alongMm).toBeCloseTo(610, 6);
  });

  it('too small for a coat is named, so that a wrong unit is noticed', () => {
    const { problems } = readText(sleeve(), { mmPerUnit: 0.1 });
    expect(problems.map(({ what }) => what)).toEqual(['would be 41 mm, small for a coat']);
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
    expect(onlyPiece(scaled).extentMm).toEqual({
      alongMm: expect.closeTo(820, 6),
      acrossMm: expect.closeTo(460, 6),
    });
    expect(onlyPiece(sleeve([], [...metric, ...insert('SLEEVE')])).extentMm.alongMm).toBeCloseTo(410, 6);
    const uneven = sleeve(
      [],
      [
        ...metric,
        ...insert('SLEEVE', [
          [41, 2],
          [42, 3],
        ]),
      ],
    );
    expect(onlyPiece(uneven).extentMm).toEqual({
      alongMm: expect.closeTo(1230, 6),
      acrossMm: expect.closeTo(460, 6),
    });
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

  it.each([
    [1, (Math.PI * 1600) / 2],
    // 20 mm high over a chord of 80: radius 50, and the sine of its angle is 0.96.
    [0.5, 1250 * (4 * Math.atan(0.5) - 0.96)],
    [-0.5, -1250 * (4 * Math.atan(0.5) - 0.96)],
  ])('reads light polylines with arcs, of bulge %d', (bulge, addedMm2) => {
    const corners: Pairs = [
      [10, 0],
      [20, 0],
      [10, 200],
      [20, 0],
      [42, bulge],
      [10, 200],
      [20, 80],
      [10, 0],
      [20, 80],
    ];
    const light: Pairs = [[0, 'LWPOLYLINE'], [8, '0'], [90, 4], [70, 1], ...corners];
    const header: Pairs = [
      [9, '$INSUNITS'],
      [70, 4],
    ];
    const { outline } = wellRead(patternText({ header, entities: light })).pieces[0]!;
    expect(ringAreaMm2(seamRing(outline, 0.001))).toBeCloseTo(200 * 80 + addedMm2, -1);
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
