import { describe, expect, it } from 'vitest';
import { joinedPaths } from '../../../shared-core/exchange/pattern/joined-paths.ts';
import { defaultLimits } from '../../../shared-core/exchange/pattern/pattern.ts';
import { BeyondLimit, openMeter } from '../../../shared-core/exchange/read-meter.ts';
import { cubicChords } from '../../../shared-core/geometry/curve.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type At, insert, line, metric, type Pairs, patternText, polyline, readText } from './dxf-text.ts';

const square: readonly At[] = [
  [0, 0],
  [310, 0],
  [310, 190],
  [0, 190],
];
const times = (count: number, pairs: Pairs): Pairs => Array.from({ length: count }, () => pairs).flat();
const svg = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="700mm" height="500mm" viewBox="0 0 700 500">${inside}</svg>`;

/** The one sentence of a file that goes beyond a limit. */
function refusal(text: string, limits = {}): string {
  const { found, problems } = readText(text, {}, limits);
  expect(found).toBeNull();
  expect(problems).toHaveLength(1);
  return problemSentence(problems[0]!);
}

describe('a DXF counts', () => {
  it('its inserts, though what they insert is empty', () => {
    const blocks: Record<string, Pairs> = { L0: [] };
    for (let level = 1; level < 6; level++) blocks[`L${level}`] = times(3, insert(`L${level - 1}`));
    const text = patternText({ blocks, entities: [...metric, ...insert('L5')] });
    expect(refusal(text, { entityCount: 200 })).toMatch(
      /^What is repeated by line \d+ goes beyond the limit/,
    );
    expect(refusal(text, { entityCount: 2000 })).toMatch(/draws no closed outline/);
  });

  it('its blocks, though they are empty', () => {
    const blocks = Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`B${i}`, [] as Pairs]));
    expect(refusal(patternText({ blocks }), { entityCount: 40 })).toMatch(/more than 40 drawn things/);
  });

  it('the points of a line each time that it is repeated', () => {
    const zigzag = Array.from({ length: 90 }, (_, i): At => [i, i % 2]);
    const text = patternText({
      blocks: { Z: polyline(8, zigzag, false) },
      entities: [...metric, ...times(20, insert('Z'))],
    });
    expect(refusal(text, { pointCount: 900 })).toMatch(/goes beyond the limit: more than 900 points/);
    expect(readText(text, {}, { pointCount: 2000 }).problems.map(({ what }) => what)).not.toContainEqual(
      expect.stringMatching(/limit/),
    );
  });

  it('each copy of an insert in rows and columns', () => {
    const rows: Pairs = [
      [70, 30_000],
      [71, 30_000],
      [44, 1],
      [45, 1],
    ];
    const text = patternText({
      blocks: { S: polyline(0, square) },
      entities: [...metric, ...insert('S', rows)],
    });
    expect(refusal(text)).toMatch(/more than 60000 drawn things/);
  });

  it('the steps of its curves, and follows none without end', () => {
    const rounds = times(40, [
      [0, 'CIRCLE'],
      [8, 1],
      [10, 0],
      [20, 0],
      [40, 300],
    ]);
    expect(refusal(patternText({ entities: [...metric, ...rounds] }), { chordCount: 900 })).toMatch(
      /more than 900 steps along its curves/,
    );
    const far = { x: 1e15, y: -1e15 };
    expect(cubicChords({ x: 0, y: 0 }, far, far, { x: 1, y: 1 }, 0.01)).toHaveLength(2000);
    const nowhere = { x: Infinity, y: 0 };
    expect(cubicChords({ x: 0, y: 0 }, nowhere, far, { x: 1, y: 1 }, 0.01)).toHaveLength(2000);
  });
});

describe('an SVG counts', () => {
  it('every letter of a path that draws nothing', () => {
    expect(refusal(svg(`<path d="M0 0${'Z'.repeat(4000)}"/>`), { pointCount: 1000 })).toMatch(
      /more than 1000 points/,
    );
  });

  it('every use, though what it uses cannot be read, and tells of that once', () => {
    const failing = `<defs><path id="p" d="M0 0L5 five"/></defs>${'<use href="#p"/>'.repeat(30)}`;
    expect(refusal(svg(failing), { entityCount: 20 })).toMatch(/goes beyond the limit of 20 shapes/);
    expect(refusal(svg(failing))).toMatch(/^The path on line 1 cannot be read/);
  });

  it('its attributes', () => {
    const many = Array.from({ length: 500 }, (_, i) => `a${i}="1"`).join(' ');
    expect(refusal(svg(`<path ${many}/>`), { entityCount: 20 })).toMatch(
      /its shapes have too many attributes/,
    );
  });

  it('its comments', () => {
    expect(refusal(svg(`<!--${' -'.repeat(1_100_000)}-->`))).toMatch(
      /holds more than 2 million letters of comments/,
    );
  });
});

describe('what grows faster than the file', () => {
  it('is not begun where there are more pieces than are read', () => {
    const rects = Array.from({ length: 3000 }, (_, i) => `<rect x="${i * 3}" width="2" height="2"/>`).join(
      '',
    );
    expect(refusal(svg(rects), { pieceCount: 10, stepCount: 40_000 })).toMatch(
      /^The file has more than the 10 pieces that are read/,
    );
  });

  it('is ended where ends lie too close to be told apart', () => {
    const star = Array.from({ length: 900 }, (_, i) => line(1, [0, 0], [300 + i, 300 - i])).flat();
    expect(refusal(patternText({ blocks: { S: star }, entities: metric }), { stepCount: 100_000 })).toMatch(
      /more points and loose ends than can be compared/,
    );
  });

  it('is ended in the midst of an outline that is too rough', () => {
    const comb = [
      ...Array.from({ length: 900 }, (_, i): At => [i % 2 === 0 ? 1 : 300, i / 10]),
      [310, 95] as const,
      [0, 95] as const,
    ];
    const turns: Pairs = [
      [0, 'POINT'],
      [8, 2],
      [10, 1],
      [20, 0],
      [0, 'POINT'],
      [8, 2],
      [10, 0],
      [20, 95],
    ];
    const text = patternText({ blocks: { C: [...polyline(1, comb), ...turns] }, entities: metric });
    expect(refusal(text, { stepCount: 100_000 })).toMatch(/more points and loose ends than can be compared/);
  });

  it('stays in proportion for lines drawn one by one', () => {
    const chain = (count: number) => {
      const meter = openMeter({ ...defaultLimits, stepCount: 40 * count });
      const paths = Array.from({ length: count }, (_, i) => ({
        start: { x: i, y: i % 2 },
        segments: [{ kind: 'line' as const, to: { x: i + 1, y: (i + 1) % 2 } }],
        isClosed: false,
        line: i,
      }));
      return joinedPaths(paths, 0.01, meter);
    };
    for (const count of [50, 500, 5000]) {
      const [path, ...more] = chain(count);
      expect([path?.segments.length, more]).toEqual([count, []]);
    }
    expect(() => openMeter({ ...defaultLimits, stepCount: 5 }).steps(6, 'Line 3')).toThrow(BeyondLimit);
  });
});

describe('what is told of a file', () => {
  it('is no more than a maker reads, and no sentence is endless', () => {
    const wrong = times(500, [
      [0, 'LINE'],
      [8, 1],
      [10, 'x'],
    ]);
    const { problems } = readText(patternText({ entities: [...metric, ...wrong] }));
    expect(problems).toHaveLength(61);
    expect(problemSentence(problems[60]!)).toBe(
      'The file has 440 more problems like these. Mend those above first.',
    );
    const kinds = Array.from({ length: 300 }, (_, i): Pairs => [[0, `K${i}${'X'.repeat(3000)}`]]).flat();
    const { found } = readText(
      patternText({ blocks: { P: polyline(1, square) }, entities: [...metric, ...kinds] }),
    );
    expect(found?.notes).toHaveLength(61);
    expect(Math.max(...found!.notes.map((note) => note.length))).toBeLessThanOrEqual(400);
  });
});
