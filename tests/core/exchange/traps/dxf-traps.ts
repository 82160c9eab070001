/** DXF files whose blocks, texts and sections are made to take a reader's time or memory, each by one means. */
import {
  dxfText,
  insert,
  line,
  type Pairs,
  patternText,
  point,
  polyline,
  words,
  type At,
} from '../dxf-text.ts';
import { block, closedLine, drawing, many, placed, square, stroke, type Trap } from './trap-text.ts';

const grain = line(7, [10, 10], [90, 10]);
const board = polyline(1, square);

const comb = (count: number): At[] => many(count, (i): At => [i % 2 === 0 ? 1 : 300, (i * 200) / count]);

export const dxfTraps: readonly Trap[] = [
  {
    name: 'two inserts in each of thirty nested blocks, all empty',
    text: () =>
      drawing(
        placed('B29'),
        many(30, (i) => block(`B${i}`, i === 0 ? '' : placed(`B${i - 1}`).repeat(2))).join(''),
      ),
  },
  {
    name: 'ten inserts in each of nine nested blocks',
    text: () => {
      const blocks: Record<string, Pairs> = { L0: line(8, [0, 0], [1, 1]) };
      for (let level = 1; level < 9; level++)
        blocks[`L${level}`] = many(10, () => insert(`L${level - 1}`)).flat();
      return patternText({ blocks, entities: many(10, () => insert('L8')).flat() });
    },
  },
  { name: 'a block that holds itself', text: () => drawing(placed('A'), block('A', placed('A').repeat(3))) },
  {
    name: 'half a million empty blocks',
    text: () => drawing('', many(500_000, (i) => block(String(i), '')).join('')),
  },
  {
    name: 'twenty thousand blocks, each sought among twenty thousand inserts',
    text: () =>
      drawing(
        many(20_000, (i) => placed(`P${19_999 - i}`)).join(''),
        many(20_000, (i) => block(`P${i}`, '')).join(''),
      ),
  },
  {
    name: 'a long text without a colon, repeated fifty thousand times',
    text: () => drawing(placed('T').repeat(50_000), block('T', `0\nTEXT\n1\n${'x '.repeat(900)}\n`)),
  },
  { name: 'a text of nineteen million blanks', text: () => drawing(`0\nTEXT\n1\n${' '.repeat(19e6)}\n`) },
  { name: 'a text of nineteen million letters', text: () => drawing(`0\nTEXT\n1\n${'ab'.repeat(9.5e6)}\n`) },
  {
    name: 'a line of a hundred thousand points, repeated fifty thousand times',
    text: () => drawing(placed('L').repeat(50_000), block('L', closedLine('1', comb(100_000)))),
  },
  {
    name: 'an insert of a billion copies',
    text: () =>
      drawing(`${placed('S')}70\n32767\n71\n32767\n44\n1\n45\n1\n`, block('S', closedLine('1', square))),
  },
  {
    name: 'a circle a billion times as large',
    text: () =>
      drawing(
        `${placed('C')}41\n999999999\n42\n999999999\n`,
        block('C', '0\nCIRCLE\n8\n1\n10\n0\n20\n0\n40\n9\n'),
      ),
  },
  {
    name: 'scales of a billion within scales of a billion',
    text: () =>
      drawing(
        placed('B20'),
        many(21, (i) =>
          block(
            `B${i}`,
            i === 0 ? closedLine('1', square) : `${placed(`B${i - 1}`)}41\n999999999\n42\n999999999\n`,
          ),
        ).join(''),
      ),
  },
  {
    name: 'circles of almost a million kilometres',
    text: () =>
      drawing(many(10_000, (i) => `0\nCIRCLE\n8\n1\n10\n${i}\n20\n0\n40\n99999999${i % 10}\n`).join('')),
  },
  {
    name: 'sixty thousand arcs of a kilometre',
    text: () =>
      drawing(
        many(
          59_000,
          (i) => `0\nARC\n8\n1\n10\n${i}\n20\n0\n40\n400000\n50\n${i % 360}\n51\n${(i + 90) % 360}\n`,
        ).join(''),
      ),
  },
  {
    name: 'bulges next to nothing and next to endless',
    text: () =>
      drawing(
        many(
          20_000,
          (i) =>
            `0\nLWPOLYLINE\n8\n1\n70\n1\n10\n0\n20\n0\n42\n${i % 2 ? '1e-300' : '9e8'}\n10\n200\n20\n0\n10\n9\n20\n300\n`,
        ).join(''),
      ),
  },
  {
    name: 'a light polyline of two million corners',
    text: () => drawing(`0\nLWPOLYLINE\n8\n1\n70\n1\n${'10\n1\n'.repeat(3e6)}`),
  },
  {
    name: 'a heavy polyline of a million corners',
    text: () => drawing(`0\nPOLYLINE\n8\n1\n70\n1\n${'0\nVERTEX\n10\n1\n'.repeat(1e6)}`),
  },
  {
    name: 'a header of two million values',
    text: () => `0\nSECTION\n2\nHEADER\n${'9\n$A\n'.repeat(3e6)}0\nENDSEC\n${drawing('')}`,
  },
  { name: 'a million comments', text: () => `${'999\nx\n'.repeat(1e6)}${drawing('')}` },
  {
    name: 'sixty thousand kinds of thing that nobody knows',
    text: () => drawing(many(59_000, (i) => `0\nTHING${i}\n8\n1\n`).join('')),
  },
  {
    name: 'sixty thousand lines that are no numbers',
    text: () => drawing(many(59_000, () => stroke('1', ['x' as unknown as number, 0], [1, 1])).join('')),
  },
  {
    name: 'sixty thousand layers, all frozen',
    text: () =>
      `0\nSECTION\n2\nTABLES\n${many(60_000, (i) => `0\nLAYER\n2\nL${i}\n70\n1\n`).join('')}0\nENDSEC\n${drawing(many(59_000, (i) => stroke(`L${i}`, [0, 0], [1, 1])).join(''))}`,
  },
  {
    name: 'a block with a name of fifteen million letters',
    text: () => drawing('', block('N'.repeat(15e6), dxfText(polyline(1, square.slice(0, 2))))),
  },
  {
    name: 'a piece with a name of fifteen million letters',
    text: () =>
      drawing(
        '',
        block(
          'P',
          `0\nTEXT\n1\nPiece Name: ${'N'.repeat(15e6)}\n${dxfText([...board, ...grain, ...words(1, 'Quantity: x')])}`,
        ),
      ),
  },
  { name: 'one line of nineteen million digits', text: () => '1'.repeat(19e6) },
  { name: 'a group code behind nineteen million blanks', text: () => `${' '.repeat(19e6)}0\nSECTION\n` },
  {
    name: 'a number of nineteen million digits',
    text: () => drawing(`0\nPOINT\n8\n1\n10\n${'9'.repeat(19e6)}\n20\n1\n`),
  },
  {
    name: 'nothing but section marks',
    text: () => `${'0\nSECTION\n2\nENTITIES\n0\nENDSEC\n'.repeat(500_000)}0\nEOF\n`,
  },
  {
    name: 'drill holes by the ten thousand, in a well-made piece',
    text: () =>
      drawing(
        '',
        block(
          'P',
          dxfText([...board, ...grain]) +
            many(50_000, (i) => dxfText(point(13, [i % 300, i % 180]))).join(''),
        ),
      ),
  },
];
