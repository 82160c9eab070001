/** DXF files whose outlines are made to take a reader's time or memory, each by one means. */
import type { At } from '../dxf-text.ts';
import { block, closedLine, drawing, many, square, stroke, type Trap } from './trap-text.ts';

/** Up and down from side to side, round outside and back: no two sides cross, and all lie above each other. */
function comb(count: number, width: number, height: number): At[] {
  const teeth = many(count, (i): At => [i % 2 === 0 ? 1 : width, (i * height) / count]);
  return [...teeth, [width + 5, height], [width + 5, -5], [0, -5], [0, height + 5], [1, height + 5]];
}

function spiral(count: number): At[] {
  const turn = (i: number, off: number): At => {
    const angle = (i / count) * 60;
    const radius = 300 + angle * 8 + off;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  };
  return [...many(count, (i) => turn(i, 0)), ...many(count, (i) => turn(count - i, 3))];
}

export const outlineTraps: readonly Trap[] = [
  {
    name: 'twenty thousand triangles side by side',
    text: () =>
      drawing(
        many(20_000, (i) => {
          const [x, y] = [(i % 200) * 12, Math.floor(i / 200) * 12];
          return closedLine('0', [
            [x, y],
            [x + 9, y],
            [x + 4, y + 9],
          ]);
        }).join(''),
      ),
  },
  {
    name: 'fifteen thousand circles, each in the one before',
    text: () => drawing(many(15_000, (i) => `0\nCIRCLE\n8\n0\n10\n0\n20\n0\n40\n${900 - i / 20}\n`).join('')),
  },
  {
    name: 'two hundred rough outlines with a thousand small circles in each',
    text: () =>
      drawing(
        many(150, (i) =>
          closedLine(
            '0',
            comb(600, 300, 190).map(([x, y]): At => [x + i * 400, y]),
          ),
        ).join('') +
          many(
            40_000,
            (i) => `0\nCIRCLE\n8\n0\n10\n${(i % 150) * 400 + 100}\n20\n${40 + (i % 97)}\n40\n0.2\n`,
          ).join(''),
      ),
  },
  {
    name: 'blocks of thousands of lines that all begin in one point',
    text: () =>
      drawing(
        '',
        many(14, (b) =>
          block(`S${b}`, many(4000, (i) => stroke('1', [0, 0], [100 + i, b + 100 - i])).join('')),
        ).join(''),
      ),
  },
  {
    name: 'blocks of thousands of lines in one long chain',
    text: () =>
      drawing(
        '',
        many(14, (b) =>
          block(
            `S${b}`,
            many(4000, (i) => stroke('1', [i, b + (i % 2)], [i + 1, b + ((i + 1) % 2)])).join(''),
          ),
        ).join(''),
      ),
  },
  {
    name: 'a sewing line of fifty thousand single lines in one spot',
    text: () =>
      drawing(
        '',
        block(
          'P',
          closedLine('1', square) +
            many(50_000, (i) => stroke('14', [50, 50], [50 + (i % 7) / 100, 50])).join(''),
        ),
      ),
  },
  {
    name: 'an outline of three hundred thousand sides, all above each other',
    text: () =>
      drawing(
        '',
        block(
          'P',
          closedLine('1', comb(290_000, 300, 190)) +
            `0\nPOINT\n8\n2\n10\n0\n20\n-5\n0\nPOINT\n8\n2\n10\n305\n20\n-5\n`,
        ),
      ),
  },
  {
    name: 'nine outlines of twenty-nine thousand sides, side by side',
    text: () =>
      drawing(
        '',
        many(9, (b) =>
          block(
            `P${b}`,
            `${closedLine(
              '1',
              comb(29_000, 190, 300).map(([x, y]): At => [y, x]),
            )}0\nPOINT\n8\n2\n10\n-5\n20\n0\n0\nPOINT\n8\n2\n10\n-5\n20\n195\n`,
          ),
        ).join(''),
      ),
  },
  {
    name: 'a spiral of almost thirty thousand points',
    text: () => drawing('', block('P', closedLine('1', spiral(14_500)))),
  },
  {
    name: 'a hundred and fifty outlines of two thousand sides',
    text: () =>
      drawing(
        '',
        many(140, (b) =>
          block(
            `P${b}`,
            closedLine('1', comb(1900, 300, 190)) +
              `0\nPOINT\n8\n2\n10\n0\n20\n-5\n0\nPOINT\n8\n2\n10\n305\n20\n-5\n`,
          ),
        ).join(''),
      ),
  },
  {
    name: 'a line that crosses itself a hundred thousand times',
    text: () =>
      drawing(
        '',
        block(
          'P',
          closedLine(
            '1',
            many(290_000, (i): At => [500 * Math.cos(i * 2.399), 500 * Math.sin(i * 1.618)]),
          ),
        ),
      ),
  },
  {
    name: 'sixty thousand turn points in one spot',
    text: () =>
      drawing(
        '',
        block(
          'P',
          closedLine(
            '1',
            many(29_000, (i): At => [300 * Math.cos(i / 4615), 300 * Math.sin(i / 4615)]),
          ) + '0\nPOINT\n8\n2\n10\n300\n20\n0.01\n'.repeat(50_000),
        ),
      ),
  },
  {
    name: 'five hundred notches along a line of twenty-nine thousand points',
    text: () =>
      drawing(
        '',
        block(
          'P',
          closedLine(
            '1',
            many(29_000, (i): At => [300 * Math.cos(i / 4615), 300 * Math.sin(i / 4615)]),
          ) +
            many(600, (i) => `0\nPOINT\n8\n4\n10\n${300 * Math.cos(i)}\n20\n${300 * Math.sin(i)}\n`).join(''),
        ),
      ),
  },
  {
    name: 'four hundred edges, each measured against thirty thousand sides',
    text: () => {
      const round = (radius: number, count: number) =>
        many(
          count,
          (i): At => [
            radius * Math.cos((i / count) * 2 * Math.PI),
            radius * Math.sin((i / count) * 2 * Math.PI),
          ],
        );
      const turns = round(300, 390)
        .map(([x, y]) => `0\nPOINT\n8\n2\n10\n${x}\n20\n${y}\n`)
        .join('');
      return drawing(
        '',
        block('P', closedLine('1', round(310, 29_000)) + closedLine('14', round(300, 39_000)) + turns),
      );
    },
  },
];
