import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import { defaultChoices, defaultLimits } from '../../../shared-core/exchange/pattern/pattern.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import {
  type At,
  bytesOf,
  insert,
  line,
  metric,
  type Pairs,
  patternText,
  polyline,
  readText,
} from './dxf-text.ts';

const square: readonly At[] = [
  [0, 0],
  [310, 0],
  [310, 190],
  [0, 190],
];
const grain = line(7, [10, 10], [90, 10]);
const good = (boundary: Pairs = polyline(1, square), more: Pairs = []) =>
  patternText({ blocks: { PANEL: [...boundary, ...grain, ...more] }, entities: metric });

/** The one sentence of a file of which nothing comes in. */
function refusal(file: string | Uint8Array, limits = {}, name = 'pattern.dxf'): string {
  const bytes = typeof file === 'string' ? bytesOf(file) : file;
  const { found, problems } = readPattern(bytes, name, { ...defaultLimits, ...limits }, defaultChoices);
  expect(found).toBeNull();
  expect(problems).toHaveLength(1);
  return problemSentence(problems[0]!);
}

/** What is said of a file of which no piece is left, or some. */
function said(text: string): string[] {
  return readText(text).problems.map(problemSentence);
}

describe('a file that is no pattern', () => {
  it('is named for what it is', () => {
    expect(refusal('')).toBe('The file is empty. Choose another file.');
    expect(refusal('Dear Moss, here is the pattern.')).toBe(
      'Line 1 should be a group code of DXF, but is "Dear Moss, here is the pattern". Choose an ASCII DXF file.',
    );
    expect(refusal('Dear Moss', {}, 'letter.txt')).toBe(
      'The file is neither DXF nor SVG. Save the pattern as an ASCII DXF or a plain SVG.',
    );
    expect(refusal('1\n2\n3\n4\n')).toMatch(/^Line 1 does not begin a DXF drawing\./);
    expect(refusal('AutoCAD Binary DXF\r\n\x1a\0\0')).toMatch(
      /^The file is a binary DXF\. Save it as an ASCII/,
    );
    expect(refusal('PK\x03\x04 and more')).toMatch(/zip archive/);
    expect(refusal('%PDF-1.7\n')).toMatch(
      /^The file is a PDF, which does not say which of its lines are pieces\./,
    );
    expect(refusal('AC1032 and more')).toMatch(/DWG/);
    expect(refusal(Uint8Array.from([0xff, 0xfe, 0x30, 0]))).toMatch(/UTF-16/);
    expect(refusal(`0\nSECTION\0`)).toBe('The file is not text. Choose a DXF or SVG file.');
  });

  it('that is compressed is never unpacked, however large it would grow', () => {
    const bomb = gzipSync(Buffer.alloc(5_000_000, 48));
    expect(bomb.length).toBeLessThan(10_000);
    expect(refusal(bomb, {}, 'pattern.svgz')).toMatch(/^The file is compressed \(gzip\)\. Unpack it/);
  });

  it('that is too large is not read', () => {
    expect(refusal(good(), { byteCount: 300 })).toMatch(
      /^The file has 1 MB, more than the 0.0003 MB that are read\./,
    );
  });

  it('without an outline says so', () => {
    expect(refusal(patternText({ entities: metric }))).toBe(
      'The file draws no closed outline. Save the pieces as closed lines.',
    );
    expect(refusal('<svg xmlns="http://www.w3.org/2000/svg"/>')).toMatch(/no closed outline/);
  });
});

describe('a damaged DXF', () => {
  it('cut short at any line brings nothing in', () => {
    const lines = good().trimEnd().split('\n');
    expect(readText(lines.join('\n')).found?.pieces).toHaveLength(1);
    for (let count = 1; count < lines.length; count++) {
      const { found, problems } = readText(`${lines.slice(0, count).join('\n')}\n`);
      expect([count, found, problems.length]).toEqual([count, null, 1]);
    }
    expect(refusal(lines.slice(0, 60).join('\n'))).toMatch(
      /^Line 6\d is the end of the file, but its EOF is missing: it was cut short\./,
    );
  });

  it('with a word where a code belongs names the line', () => {
    const lines = good().split('\n');
    lines[20] = 'oops';
    expect(refusal(lines.join('\n'))).toBe(
      'Line 21 should be a group code of DXF, but is "oops". Save the file again: it is damaged there.',
    );
  });

  it.each(['NaN', '', 'Infinity', '1e400', '12mm'])(
    'with %j for a place leaves that line out and names it',
    (value) => {
      const lines = good().split('\n');
      const at = lines.indexOf('310');
      lines[at] = value;
      const sentences = said(lines.join('\n'));
      expect(sentences[0]).toBe(
        'Line 18 begins a POLYLINE with a place that is not a number. It is left out; mend it in the file, or save the file again.',
      );
      expect(readText(lines.join('\n')).found).toBeNull();
    },
  );

  it('with an open outline says how far open, and brings the others', () => {
    const open = patternText({
      blocks: { OPEN: polyline(1, [...square, [0, 17]], false), WELL: [...polyline(1, square), ...grain] },
      entities: metric,
    });
    const { found, problems } = readText(open);
    expect(found?.pieces.map(({ key }) => key)).toEqual(['WELL']);
    expect(problems.map(problemSentence)).toEqual([
      "The piece OPEN (line 6) has an open boundary: its ends lie 17 of the file's units apart. Close the line that begins on line 18.",
    ]);
  });

  it('with an outline that crosses itself leaves it out', () => {
    const bow: At[] = [
      [0, 0],
      [310, 190],
      [310, 0],
      [0, 190],
    ];
    expect(said(good(polyline(1, bow)))).toEqual([
      'Outline of PANEL (line 6) crosses or touches itself: edge 1 meets edge 3. Redraw one of them so that the outline runs round once.',
    ]);
  });

  it('drawn ten times too large is refused by its size', () => {
    expect(
      said(
        good(
          polyline(
            1,
            square.map(([x, y]): At => [x * 40, y * 40]),
          ),
        ),
      )[0],
    ).toMatch(/is 12\.40 m long or wide\. Check its numbers and their unit/);
  });

  it('of very many points stops at the limit, and reads no further', () => {
    const vertices = Array.from({ length: 9000 }, (_, i) => `0\nVERTEX\n10\n${i % 97}\n20\n${i}\n`).join('');
    const text = `0\nSECTION\n2\nENTITIES\n0\nPOLYLINE\n8\n1\n70\n1\n${vertices}oops\noops\n`;
    expect(refusal(text)).toMatch(/should be a group code of DXF, but is "oops"/);
    expect(refusal(text, { pointCount: 8000 })).toMatch(/goes beyond the limit: more than 8000 points\./);
    expect(refusal(bytesOf(' '.repeat(20_000_001)))).toMatch(
      /^The file has 21 MB, more than the 20 MB that are read\./,
    );
  });

  it('of too many things, or too many pieces, stops at the limit', () => {
    expect(
      refusal(good(polyline(1, square), Array.from({ length: 40 }, () => line(8, [1, 1], [2, 2])).flat()), {
        entityCount: 30,
      }),
    ).toMatch(/more than 30 drawn things/);
    const blocks = Object.fromEntries(Array.from({ length: 5 }, (_, i) => [`P${i}`, polyline(1, square)]));
    expect(refusal(patternText({ blocks }), { pieceCount: 4 })).toBe(
      'The file has 5 pieces, more than the 4 that are read. Save fewer pieces or sizes in one file.',
    );
  });

  it('whose blocks hold themselves, or each other a thousandfold, stops', () => {
    expect(
      refusal(
        patternText({ blocks: { A: [...polyline(1, square), ...insert('A')] }, entities: insert('A') }),
      ),
    ).toMatch(/puts blocks within blocks more than 32 deep/);
    const ten = (name: string) => Array.from({ length: 10 }, () => insert(name)).flat();
    const blocks: Record<string, Pairs> = { L0: line(8, [0, 0], [1, 1]) };
    for (let level = 1; level < 9; level++) blocks[`L${level}`] = ten(`L${level - 1}`);
    expect(refusal(patternText({ blocks, entities: ten('L8') }))).toMatch(
      /^What is repeated by line \d+ goes beyond the limit: more than 60000 drawn things/,
    );
  });
});

describe('a damaged SVG', () => {
  const svg = (inside: string, head = '') =>
    `${head}<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300">\n${inside}\n</svg>`;

  it('cut short names the line', () => {
    expect(refusal(svg('<path d="M0 0h200v150z"/>').slice(0, -8))).toMatch(
      /^Line 2 is not sound XML: unclosed tag: svg\./,
    );
    expect(refusal('<svg><g>\n<path d="M0 0"</g>')).toMatch(/^Line 2 is not sound XML/);
  });

  it('with entities of its own is not read', () => {
    const bomb = `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>`;
    expect(refusal(svg('<title>&b;</title>', bomb))).toMatch(
      /^Line 1 defines entities of its own\. Save the drawing as plain SVG\./,
    );
    expect(refusal(svg('<title>&b;</title>'))).toMatch(/is not sound XML: undefined entity/);
  });

  it('with a path that cannot be read brings the others', () => {
    const { found, problems } = readText(
      svg('<path id="a" d="M0 0h200v150z"/>\n<path d="M0 0 L 5 five"/>\n<path d="M0 1e999h1v1z"/>'),
      {},
      {},
      'a.svg',
    );
    expect(found?.pieces.map(({ name }) => name)).toEqual(['a']);
    expect(problems.map(({ where }) => where)).toEqual(['The path on line 3', 'The path on line 4']);
  });

  it('of groups too deep, uses that repeat themselves, or too many points stops', () => {
    expect(refusal(svg('<g>'.repeat(40) + '</g>'.repeat(40)))).toMatch(
      /groups within groups more than 32 deep/,
    );
    expect(refusal(svg('<g id="a"><use href="#a"/><use href="#a"/></g>'))).toMatch(/goes beyond the limit/);
    const many = Array.from(
      { length: 10 },
      (_, i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(10)}</g>`,
    ).join('');
    expect(refusal(svg(`<path id="g0" d="M0 0h2v1z"/>${many}`))).toMatch(/more than 60000 drawn things/);
    expect(refusal(svg(`<path d="M0 0${'l1 1'.repeat(400)}z"/>`), { pointCount: 300 })).toMatch(
      /more than 300 points/,
    );
  });

  it('whose outlines are open or cross says so', () => {
    const { problems } = readText(
      svg('<path d="M0 0L100 0L120 90L40 130"/><path id="bow" d="M0 200L100 290L100 200L0 290z"/>'),
      {},
      {},
      'a.svg',
    );
    expect(problems.map(({ where, what }) => `${where} ${what}`)).toEqual([
      'The line on line 2 is open, so it is no piece',
      'Outline of bow (line 2) crosses or touches itself: edge 1 meets edge 3',
    ]);
  });
});
