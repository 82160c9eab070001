import { describe, expect, it } from 'vitest';
import type { FoundPiece } from '../../../shared-core/exchange/pattern/pattern.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import {
  type At,
  insert,
  line,
  metric,
  type Pairs,
  patternText,
  point,
  polyline,
  readText,
  wellRead,
} from './dxf-text.ts';

/** 300 long, 200 and 120 wide, with the long side on the right of one who looks along the grain. */
const wedge: readonly At[] = [
  [0, 0],
  [300, 0],
  [300, 120],
  [0, 200],
];
const grain = line(7, [20, 20], [200, 20]);
const corners = (piece: FoundPiece | undefined) =>
  piece?.outline.edges.flatMap(({ segments }) =>
    segments.map(({ to }) => `${Math.round(to.x)} ${Math.round(to.y)}`),
  );
const said = (text: string) => {
  const { found, problems } = readText(text);
  return [...problems.map(problemSentence), ...(found?.notes ?? [])];
};
const keys = (text: string) => readText(text).found?.pieces.map(({ key }) => key);

describe('a DXF', () => {
  it('drawn face down is turned over, so that a left piece stays a left one', () => {
    const down: Pairs = [[230, -1]];
    const light = (extra: Pairs): Pairs => [
      [0, 'LWPOLYLINE'],
      [8, 1],
      [70, 1],
      ...extra,
      ...wedge.flatMap(
        ([x, y]): Pairs => [
          [10, x],
          [20, y],
        ],
      ),
    ];
    const up = wellRead(patternText({ blocks: { P: [...light([]), ...grain] }, entities: metric })).pieces[0];
    const turned = wellRead(patternText({ blocks: { P: [...light(down), ...grain] }, entities: metric }))
      .pieces[0];
    expect(corners(up)).toContain('300 120');
    // The narrow end lies at the other end of the grain now.
    expect(corners(turned)).toContain('0 120');
    const inserted = wellRead(
      patternText({ blocks: { P: [...light([]), ...grain] }, entities: [...metric, ...insert('P', down)] }),
    ).pieces[0];
    // Turned over with its grain, the slanting side lies on the other hand.
    expect(corners(inserted)).toContain('300 80');
  });

  it('drawn aslant in space is left out, and that is said', () => {
    const aslant = [...polyline(1, wedge)].flatMap(
      (pair, i): Pairs => (i === 3 ? [pair, [210, 0.6], [230, 0.8]] : [pair]),
    );
    expect(said(patternText({ blocks: { P: aslant }, entities: metric }))[0]).toMatch(
      /begins a POLYLINE that does not lie flat on the drawing\. It is left out/,
    );
  });

  it('that repeats a shape in rows and columns has them all', () => {
    const grid: Pairs = [
      [70, 3],
      [71, 2],
      [44, 400],
      [45, 300],
    ];
    const found = wellRead(
      patternText({ blocks: { P: polyline('0', wedge) }, entities: [...metric, ...insert('P', grid)] }),
    );
    expect(found.pieces).toHaveLength(6);
  });

  it('with two blocks of one name has both pieces, and says so', () => {
    const text = patternText({ blocks: { P: [...polyline(1, wedge), ...grain] }, entities: metric });
    const twice = text.replace(
      /0\nBLOCK\n[\s\S]*0\nENDBLK\n/,
      (blocks) => blocks + blocks.replace('\n120\n', '\n140\n'),
    );
    expect(keys(twice)).toEqual(['P', 'P (2)']);
    expect(said(twice)[0]).toMatch(/^Line \d+ begins a second block of the name P; the first is on line 6\./);
  });

  it('with a second outline in a block takes the larger, and says so', () => {
    const small: readonly At[] = [
      [400, 0],
      [500, 0],
      [500, 90],
    ];
    const text = patternText({
      blocks: { P: [...polyline(1, small), ...polyline(1, wedge), ...grain] },
      entities: metric,
    });
    expect(corners(readText(text).found?.pieces[0])).toContain('300 120');
    expect(said(text)[0]).toMatch(
      /^The piece P \(line 6\) draws another line on the layer of its boundary; only the largest/,
    );
  });

  it('with frozen or switched-off layers leaves them out, and says so', () => {
    const layer = (name: string, flags: number, colour: number) =>
      `0\nLAYER\n2\n${name}\n70\n${flags}\n62\n${colour}\n`;
    const tables = `0\nSECTION\n2\nTABLES\n${layer('old', 1, 7)}${layer('OFF', 0, -7)}${layer('1', 64, 7)}0\nENDSEC\n`;
    const text =
      tables +
      patternText({
        entities: [
          ...metric,
          ...polyline('0', wedge),
          ...polyline(
            'OLD',
            wedge.map(([x, y]): At => [x + 900, y]),
          ),
          ...polyline(
            'off',
            wedge.map(([x, y]): At => [x, y + 900]),
          ),
        ],
      });
    expect(readText(text).found?.pieces).toHaveLength(1);
    expect(said(text).slice(0, 2)).toEqual([
      'Layer OLD is switched off or frozen in the file: one drawn thing on it is left out. Switch it on and save the file again if it belongs to the pieces.',
      'Layer off is switched off or frozen in the file: one drawn thing on it is left out. Switch it on and save the file again if it belongs to the pieces.',
    ]);
  });

  it('that goes on after its end says where', () => {
    const text = patternText({ blocks: { P: [...polyline(1, wedge), ...grain] }, entities: metric });
    const lineCount = text.trimEnd().split('\n').length;
    expect(said(`${text}0\nSECTION\n2\nENTITIES\n`)[0]).toMatch(
      new RegExp(`^Line ${lineCount + 1} comes after the end that the file itself gives`),
    );
    expect(said(`${text}\n \n`)).toEqual([]);
  });

  it('takes 0x12C for no number', () => {
    const text = patternText({ blocks: { P: polyline(1, wedge) }, entities: metric });
    expect(said(text.replace('\n300\n', '\n0x12C\n'))[0]).toMatch(
      /begins a POLYLINE with a place that is not a number/,
    );
  });

  it('that places a block it does not hold says so', () => {
    const text = patternText({
      blocks: { P: [...polyline(1, wedge), ...grain] },
      entities: [...metric, ...insert('GONE')],
    });
    expect(said(text)[0]).toMatch(/^Line \d+ places the block GONE, which the file does not hold\./);
  });

  it('says how many closed lines inside its pieces are not kept', () => {
    const text = patternText({
      entities: [
        ...metric,
        ...polyline('0', wedge),
        ...polyline(
          '0',
          wedge.map(([x, y]): At => [x / 4 + 50, y / 4 + 50]),
        ),
        ...point('0', [60, 60]),
      ],
    });
    expect(said(text)).toEqual([
      '1 closed line that lies inside a piece not kept: a piece has no place for holes and marks.',
    ]);
  });

  it('that draws past a kilometre is told that a unit or a number is wrong', () => {
    const far = polyline(
      1,
      wedge.map(([x, y]): At => [x * 10_000, y * 10_000]),
    );
    const text = patternText({
      blocks: { P: [...polyline(1, wedge), ...grain], FAR: far },
      entities: metric,
    });
    expect(keys(text)).toEqual(['P']);
    expect(said(text)[0]).toMatch(
      /^Line \d+ draws further than 1 km from the origin of the drawing\. It is left out/,
    );
  });
});
