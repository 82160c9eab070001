import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readText, textCell } from '../../../../shared-core/measure/text/cell-text.ts';
import {
  numberCell,
  quantityCell,
  readDays,
  readFlaws,
  readQuantityCell,
} from '../../../../shared-core/exchange/stash-csv/stash-cells.ts';
import { plainHeading, stashColumns } from '../../../../shared-core/exchange/stash-csv/stash-columns.ts';
import { stashFileText } from '../../../../shared-core/exchange/stash-csv/stash-file-bytes.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);

it('a file has a column for each fact of a batting', () => {
  const headings = stashColumns('EUR').map(({ heading }) => heading);
  expect(headings).toEqual(
    expect.arrayContaining([
      'loft (mm)',
      'lines apart at most (mm)',
      'held together by',
      'needs a backing (yes or no)',
    ]),
  );
});

describe('a cell of a stash file', () => {
  it('holds any text and gives it back, and never begins like a formula', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.constantFrom('=1', "'=1", "''-2", '@x', '+', "'", '\tx')),
        (text) => {
          expect(readText(textCell(text))).toBe(text);
          expect(textCell(text)).not.toMatch(/^[=+\-@\t\r]/);
        },
      ),
    );
  });

  it('holds any measure to the last bit, a share to a part in 10^12', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e7, noNaN: true }), (value) => {
        expect(readQuantityCell('length', numberCell(value))).toEqual({ value });
        const share = readQuantityCell('ratio', quantityCell('ratio', value / 1e7));
        expect('value' in share && Math.abs(share.value * 1e7 - value) <= 1e-12 * value).toBe(true);
      }),
    );
  });

  it('takes a measure as it is typed in a form, and refuses a doubtful one', () => {
    expect(readQuantityCell('length', '4 1/2 in')).toEqual({ value: 114.3, typed: '4 1/2 in' });
    expect(readQuantityCell('arealMass', '1470,5')).toEqual({ value: 1470.5, typed: '1470,5' });
    expect(readQuantityCell('length', '1,250')).toMatchObject({ what: expect.stringContaining('two ways') });
  });

  it('is a day in the manner of several countries, and never guesses', () => {
    expect(readDays('2026-03-07')).toEqual(['2026-03-07']);
    expect(readDays('7.3.2026')).toEqual(['2026-03-07']);
    expect(readDays('27/03/2026')).toEqual(['2026-03-27']);
    expect(readDays('03/27/2026')).toEqual(['2026-03-27']);
    expect(readDays('3/4/2026')).toEqual(['2026-04-03', '2026-03-04']);
    expect(readDays('2026-02-30')).toEqual([]);
    expect(readDays('last spring')).toEqual([]);
  });

  it('is a list of flaws with four measures each', () => {
    const flaw = { x: 2140, y: 930.5, widthX: 65, widthY: 40 };
    expect(readFlaws('2140 930.5 65 40; 1 2 3 4')).toEqual({
      value: [flaw, { x: 1, y: 2, widthX: 3, widthY: 4 }],
    });
    for (const text of ['2140 930', '1 2 3 4 5', '0x10 1 2 3', '1 2 3 1e999', '1 2 0 4', '-1 2 3 4', 'moth'])
      expect(readFlaws(text)).toHaveProperty('what');
  });
});

it('each heading of a stash file stands there once', () => {
  const headings = stashColumns('EUR').map(({ heading }) => plainHeading(heading));
  expect(new Set(headings).size).toBe(headings.length);
  expect(headings).toContain('width (mm)');
  expect(headings).toContain('weight (g/m2)');
  expect(headings).toContain('price of the lot (eur)');
});

describe('the bytes of a stash file', () => {
  it('are UTF-8, with or without its mark, or Latin-1', () => {
    const text = (...values: number[]) => stashFileText(bytes(...values));
    expect(text(0xef, 0xbb, 0xbf, 0xc3, 0x89, 0x63)).toEqual({ ok: true, value: 'Éc' });
    expect(text(0xc3, 0x89, 0x63)).toEqual({ ok: true, value: 'Éc' });
    expect(text(0xc9, 0x63)).toEqual({ ok: true, value: 'Éc' });
  });

  it('that are something else are named', () => {
    const what = (file: Uint8Array) => {
      const read = stashFileText(file);
      return read.ok ? 'was read' : read.problems[0]!.what;
    };
    expect(what(bytes())).toBe('is empty');
    expect(what(bytes(0x50, 0x4b, 3, 4, 9))).toContain('workbook of a spreadsheet');
    expect(what(bytes(0xff, 0xfe, 0x41, 0))).toContain('UTF-16');
    expect(what(bytes(0x41, 0, 0x42))).toBe('is not text');
    expect(what(new Uint8Array(16_000_001).fill(0x41))).toContain('is larger than 16 MB');
  });
});
