import { describe, expect, it } from 'vitest';
import type { Piece } from '../../../shared-core/plan/coat-plan.ts';
import type { Outline } from '../../../shared-core/plan/outline.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { meetingReport } from '../../../shared-core/quilting/meeting.ts';
import { piece } from '../../fixtures/small-workshop.ts';
import { quiltedCoat, sideSeam } from '../requirement/small-coat.ts';

/** A piece from corners, with the seam of each side by its place. */
function drawn(
  id: string,
  corners: readonly (readonly [number, number])[],
  seams: readonly (string | null)[],
  more: Partial<Piece> = {},
) {
  const outline: Outline = {
    start: { x: corners[0]![0], y: corners[0]![1] },
    edges: corners.map((_, index) => {
      const [x, y] = corners[(index + 1) % corners.length]!;
      return {
        name: `edge ${index}`,
        segments: [{ kind: 'line', to: { x, y } }],
        allowanceMm: 0,
        seam: seams[index] ?? null,
      };
    }),
  };
  return piece(id, outline, { quilted: 'across', ...more });
}

/** A pair of fronts and backs whose side seams lie on y = the given heights at hem and underarm. */
const body = (backHemY: number, frontHemY: number, frontDownMm = 0) => [
  drawn(
    'back',
    [
      [0, 0],
      [700, 0],
      [700, 240],
      [0, backHemY],
    ],
    [null, null, 'side seam', null],
    { cutCount: 2, isMirrored: true },
  ),
  drawn(
    'front',
    [
      [frontDownMm, 0],
      [700 + frontDownMm, 0],
      [700 + frontDownMm, 260],
      [frontDownMm, frontHemY],
    ],
    [null, null, 'side seam', null],
    { cutCount: 2, isMirrored: true },
  ),
];

describe('the quilting map', () => {
  it('tells the lines of each piece from the hem, the channels and the stitching', () => {
    const [back, front] = quiltingMap(quiltedCoat({ coatCount: 3 }));
    expect(back?.offsetsMm).toEqual([100, 200, 300, 400, 500, 600]);
    expect([back?.stitchingMm, back?.copyCount]).toEqual([expect.closeTo(6 * 520, 6), 3]);
    expect([front?.stitchingMm, front?.copyCount]).toEqual([expect.closeTo(6 * 240, 6), 6]);
    expect(front?.channels.map((channel) => channel.widthMm)).toEqual(Array(7).fill(100));
  });
  it('a piece that is not quilted has no lines', () => {
    const [back, front] = quiltedCoat().pieces;
    const map = quiltingMap(quiltedCoat({ pieces: [back!, { ...front!, quilted: null }] }));
    expect(map.map(({ pieceId }) => pieceId)).toEqual(['back']);
  });
  it('a plan without quilting has no map', () => {
    expect(quiltingMap(quiltedCoat({ quilting: null }))).toEqual([]);
  });
  it('a front drafted 37 mm further up its sheet has its lines moved with it', () => {
    const coat = quiltedCoat({ pieces: body(300, 320, 37) });
    const [back, front] = quiltingMap(coat);
    expect(back?.lines[0]?.atMm).toBeCloseTo(100, 9);
    expect(front?.lines[0]?.atMm).toBeCloseTo(137, 9);
    expect(meetingReport(coat)[0]?.meets).toBe(true);
  });
  it('a shirt-tail front 50 mm longer below the side seam still meets the back there', () => {
    const [back] = body(300, 320);
    const front = drawn(
      'front',
      [
        [-50, 0],
        [700, 0],
        [700, 260],
        [0, 320],
        [-50, 200],
      ],
      [null, null, 'side seam', null, null],
    );
    const coat = quiltedCoat({ pieces: [back!, front] });
    expect(quiltingMap(coat)[1]?.offsetsMm[0]).toBeCloseTo(50, 9);
    expect(meetingReport(coat)[0]?.meets).toBe(true);
  });
  it('lines along start at the middle of the piece', () => {
    const coat = quiltedCoat({
      pieces: quiltedCoat().pieces.map((one) => ({ ...one, quilted: 'along' as const })),
    });
    expect(quiltingMap(coat)[1]?.lines.map((line) => line.atMm)).toEqual([20, 120, 220]);
  });
});

describe('whether lines meet at a seam', () => {
  it('they meet all the way where both sides slant alike', () => {
    const [meeting] = meetingReport(quiltedCoat({ pieces: body(300, 320) }));
    expect([meeting?.meets, meeting?.crossings.length, meeting?.unmatchedCount]).toEqual([true, 6, 0]);
    expect(meeting?.says).toBe('Side: the lines meet.');
  });
  it('they part further up where the front flares more, and it says how far', () => {
    const [meeting] = meetingReport(quiltedCoat({ pieces: body(240, 520) }));
    const slope = Math.hypot(700, 260) / 700;
    expect(meeting?.meets).toBe(false);
    expect(meeting?.crossings[0]?.gapMm).toBeCloseTo(100 * (slope - 1), 6);
    expect(meeting?.largestGapMm).toBeCloseTo(600 * (slope - 1), 6);
    expect(meeting?.says).toContain('do not meet');
  });
  it('a slight flare meets at the hem and parts at the top', () => {
    const [meeting] = meetingReport(quiltedCoat({ pieces: body(240, 340) }));
    expect(meeting?.meets).toBe(false);
    expect(meeting?.crossings[0]?.gapMm).toBeLessThan(1);
    expect(meeting?.says).toContain('meet at the lower end and part further up');
  });
  it('are measured from the hem upwards, whichever way round the edges are drawn', () => {
    const back = drawn(
      'back',
      [
        [0, 0],
        [730, 60],
        [730, 300],
        [0, 300],
      ],
      ['side seam'],
    );
    const front = drawn(
      'front',
      [
        [0, 0],
        [730, 0],
        [730, 240],
        [0, 240],
      ],
      [null, null, 'side seam'],
    );
    const [meeting] = meetingReport(quiltedCoat({ pieces: [back, front] }));
    const slope = Math.hypot(730, 60) / 730;
    expect(meeting?.crossings.map(({ aMm }) => aMm)).toEqual(
      [1, 2, 3, 4, 5, 6, 7].map((k) => expect.closeTo(k * 100 * slope, 6)),
    );
    expect(meeting?.crossings.map(({ bMm }) => bMm)).toEqual(
      [1, 2, 3, 4, 5, 6, 7].map((k) => expect.closeTo(k * 100, 6)),
    );
  });
  it('a longer side has lines without a partner', () => {
    const [back] = body(240, 260);
    const short = drawn(
      'front',
      [
        [0, 0],
        [350, 0],
        [350, 260],
        [0, 260],
      ],
      [null, null, 'side seam', null],
    );
    expect(meetingReport(quiltedCoat({ pieces: [back!, short] }))[0]?.unmatchedCount).toBe(3);
  });
  it('lines across and lines along cannot meet', () => {
    const [back, front] = body(300, 320);
    const coat = quiltedCoat({ pieces: [back!, { ...front!, quilted: 'along' }] });
    expect(meetingReport(coat)[0]).toMatchObject({
      meets: false,
      says: expect.stringContaining('different ways'),
    });
  });
  it('a centre seam meets its own mirror image', () => {
    const half = drawn(
      'back',
      [
        [0, 0],
        [700, 0],
        [640, 240],
        [0, 240],
      ],
      ['side seam'],
      { cutCount: 2, isMirrored: true },
    );
    const [meeting] = meetingReport(quiltedCoat({ pieces: [half] }));
    expect([meeting?.meets, meeting?.crossings.length]).toEqual([true, 6]);
  });
  it('a piece that is not quilted is not asked', () => {
    const [back, front] = body(300, 320);
    expect(meetingReport(quiltedCoat({ pieces: [back!, { ...front!, quilted: null }] }))).toEqual([]);
    expect(meetingReport(quiltedCoat({ quilting: null }))).toEqual([]);
  });
});

describe('the sleeve', () => {
  const armhole = { ...sideSeam, id: 'armhole', label: 'Armhole' };
  /** Bodies 700 long with an underarm at 430; a sleeve 520 long whose underarms stand at 385. */
  const pieces = [
    drawn(
      'back',
      [
        [0, 0],
        [700, 0],
        [700, 180],
        [430, 240],
        [0, 240],
      ],
      [null, null, 'armhole', 'side seam', null],
      { cutCount: 2, isMirrored: true },
    ),
    drawn(
      'front',
      [
        [0, 0],
        [700, 0],
        [700, 160],
        [430, 260],
        [0, 260],
      ],
      [null, null, 'armhole', 'side seam', null],
      { cutCount: 2, isMirrored: true },
    ),
    drawn(
      'sleeve',
      [
        [0, 0],
        [385, 0],
        [520, 210],
        [385, 420],
        [0, 420],
      ],
      [null, 'armhole', 'armhole', null, null],
      { cutCount: 2, isMirrored: true },
    ),
  ];
  const firstSide = [
    { pieceId: 'back', edge: 'edge 2' },
    { pieceId: 'front', edge: 'edge 2' },
  ];
  const coat = quiltedCoat({ pieces, seams: [{ ...armhole, firstSide }, sideSeam] });
  it('has its lines set so that they meet the body’s at the underarm', () => {
    // The body's next line over the underarm is at 500, 70 mm above 430; so the sleeve's is at 385 + 70.
    const sleeve = quiltingMap(coat)[2];
    expect(sleeve?.offsetsMm).toEqual([55, 155, 255, 355, 455].map((mm) => expect.closeTo(mm, 6)));
  });
  it('is said to meet at the underarm alone', () => {
    const meeting = meetingReport(coat).find((one) => one.seamId === 'armhole');
    expect(meeting).toMatchObject({
      where: 'lowest point',
      meets: true,
      says: 'Armhole: the lines meet at the underarm.',
    });
    expect(meeting?.crossings).toEqual([
      { aMm: expect.closeTo(70, 6), bMm: expect.closeTo(70, 6), gapMm: expect.closeTo(0, 6) },
    ]);
  });
  it('with two underarms of unlike height the lower one decides', () => {
    const lower = {
      ...pieces[1]!,
      outline: drawn(
        'front',
        [
          [0, 0],
          [700, 0],
          [700, 160],
          [415, 260],
          [0, 260],
        ],
        [null, null, 'armhole', 'side seam', null],
      ).outline,
    };
    const sleeve = quiltingMap({ ...coat, pieces: [pieces[0]!, lower, pieces[2]!] })[2];
    expect(sleeve?.offsetsMm[0]).toBeCloseTo(70, 6);
    const meeting = meetingReport({ ...coat, pieces: [pieces[0]!, lower, pieces[2]!] }).find(
      (one) => one.seamId === 'armhole',
    );
    expect([meeting?.a.pieceId, meeting?.crossings[0]?.aMm]).toEqual(['front', expect.closeTo(85, 6)]);
  });
});
