import { describe, expect, it } from 'vitest';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { meetingReport } from '../../../shared-core/quilting/meeting.ts';
import { quiltedCoat, sideSeam } from '../requirement/small-coat.ts';
import { body, drawn } from './drawn-body.ts';

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
  it('lines half as far apart on the front meet the back’s, and those between have no partner', () => {
    const [back, front] = body(300, 320);
    const halved = quiltedCoat({ pieces: [back!, { ...front!, quiltingSpacingMm: 50 }] });
    expect(quiltingMap(halved).map(({ spacingMm, lines }) => [spacingMm, lines.length])).toEqual([
      [100, 6],
      [50, 13],
    ]);
    const [meeting] = meetingReport(halved);
    expect(meeting).toMatchObject({ meets: false, unmatchedCount: 7 });
    expect(meeting?.crossings).toHaveLength(6);
    expect(meeting?.largestGapMm).toBeLessThan(1e-6);
    expect(meeting?.says).toBe(
      'Side: the lines of front are nearer to each other; every line of the other piece meets one.',
    );
  });
  it('lines 70 apart on the back pass between those 100 apart on the front, and it says how far', () => {
    const [back, front] = body(300, 300).map((one) => ({ ...one, outline: body(300, 300)[0]!.outline }));
    const [meeting] = meetingReport(quiltedCoat({ pieces: [{ ...back!, quiltingSpacingMm: 70 }, front!] }));
    // 100, 200 ... 600 against 70, 140 ... 630: 500 lies 10 from 490, 400 lies 20 from 420, 100 lies 30 from 70.
    const slope = Math.hypot(700, 60) / 700;
    expect(meeting?.largestGapMm).toBeCloseTo(30 * slope, 6);
    expect(meeting?.says).toContain('do not meet those of the other piece');
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
