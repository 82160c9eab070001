import { expect, test } from 'vitest';
import type { PaperTable } from '../../../shared-core/paper/paper-table.ts';
import { brokenLines } from '../../../shared-core/paper/table-columns.ts';
import { tablePdf } from '../../../shared-core/paper/table-pdf.ts';
import { pdfSheets } from './pdf-text.ts';

const list: PaperTable = {
  title: 'Fenwalk coat: to buy',
  lead: 'What 6 coats still need.',
  sectionHead: 'supplier',
  columns: [
    { head: '', kind: 'tick' },
    { head: 'Item', kind: 'text' },
    { head: 'Price', kind: 'number' },
    { head: 'Priced on', kind: 'text', only: 'file' },
  ],
  sections: [
    {
      title: 'Tallow Lane',
      rows: [
        ['', { text: 'Peatwater nylon', note: '0.4 m will be left' }, '1,249.45 EUR', '2026-10-02'],
        ['x', 'Ochre cord', '0.70 EUR', '2026-10-03'],
      ],
      total: ['', 'Together', '1,250.15 EUR', ''],
    },
  ],
  total: ['', 'In all', '1,250.15 EUR', ''],
  notes: ['Nothing is chosen for: facing.'],
};

async function read(table: PaperTable, format: 'A4' | 'letter' = 'A4', day = '') {
  const { bytes, changedLetters } = await tablePdf(table, { format, day });
  const sheets = await pdfSheets(bytes);
  return { sheets, changedLetters, texts: sheets.flatMap((sheet) => sheet.texts) };
}

test('everything on the table can be selected in the PDF, in the order in which it is read', async () => {
  const { texts } = await read(list, 'A4', '14 Oct 2026');
  expect(texts.map(({ text }) => text)).toEqual([
    'Fenwalk coat: to buy',
    'What 6 coats still need.',
    'Tallow Lane',
    'Item',
    'Price',
    'Peatwater nylon',
    '0.4 m will be left',
    '1,249.45 EUR',
    'Ochre cord',
    '0.70 EUR',
    'Together',
    '1,250.15 EUR',
    'In all',
    '1,250.15 EUR',
    'Nothing is chosen for: facing.',
    'Fenwalk coat: to buy, 14 Oct 2026',
    'Page 1 of 1',
  ]);
});

test('numbers end on one line at the right, texts begin on one line at the left', async () => {
  const digits = {
    ...list,
    sections: [
      {
        title: '',
        rows: [
          ['', 'Ochre', '7'],
          ['', 'Peat', '77'],
        ],
      },
    ],
  };
  const { total: _, ...numbers } = digits;
  const { texts } = await read(numbers);
  const at = (text: string) => texts.find((each) => each.text === text)!;
  // A digit of Helvetica is 0.556 of the size wide (Adobe's metrics of the core fonts).
  expect(at('7').x - at('77').x).toBeCloseTo(0.556 * at('7').size, 2);
  expect(at('Ochre').x).toBe(at('Peat').x);
});

test('the sheet is the maker’s own', async () => {
  const sizeOf = async (format: 'A4' | 'letter') => {
    const { sheets } = await read(list, format);
    return [sheets[0]!.width, sheets[0]!.height];
  };
  expect(await sizeOf('A4')).toEqual([595.28, 841.89]);
  expect(await sizeOf('letter')).toEqual([612, 792]);
});

test('a long list goes over pages, with its head on each and no row lost or below the foot', async () => {
  const rows = Array.from({ length: 137 }, (_, index) => ['', `Item ${index + 1}`, `${index}.50 EUR`, '']);
  const { sheets, texts } = await read({ ...list, sections: [{ title: 'Tallow Lane', rows }] });
  expect(sheets.length).toBeGreaterThan(3);
  const items = texts.map(({ text }) => text).filter((text) => /^Item \d/.test(text));
  expect(items).toEqual(rows.map(([, name]) => name));
  for (const [index, { texts: onSheet, height }] of sheets.entries()) {
    expect(onSheet.map(({ text }) => text)).toContain('Price');
    const foot = onSheet.find(({ text }) => text === `Page ${index + 1} of ${sheets.length}`)!;
    for (const { y } of onSheet.filter((each) => each.size > 8)) {
      expect(y).toBeGreaterThan(foot.y + 12);
      expect(y).toBeLessThan(height - 40);
    }
  }
});

test('a very long name is broken over lines inside its column, whatever it is made of', async () => {
  const endless = 'Q'.repeat(400);
  const many = Array.from({ length: 60 }, (_, index) => `word${index}`).join(' ');
  const table = {
    ...list,
    sections: [
      {
        title: '',
        rows: [
          ['', endless, '1.00 EUR'],
          ['', many, '2.00 EUR'],
        ],
      },
    ],
  };
  const { sheets, texts } = await read(table);
  const right = sheets[0]!.width - 48;
  const pieces = texts.filter(({ text }) => /^Q+$/.test(text));
  expect(pieces.map(({ text }) => text).join('')).toBe(endless);
  // Q is 0.778 of the size wide.
  for (const { text, x, size } of pieces) expect(x + text.length * 0.778 * size).toBeLessThan(right);
  const words = texts.filter(({ text }) => /^word/.test(text));
  expect(words.map(({ text }) => text).join(' ')).toBe(many);
});

test('no line ends between a number and its unit', () => {
  const lines = brokenLines('lot of 8 Sept 2026: 1620 m; to buy: 1093 m', 30, (text) => text.length);
  expect(lines).toEqual(['lot of 8 Sept 2026: 1620 m; to', 'buy: 1093 m']);
  expect(brokenLines('to buy: 1093 m', 12, (text) => text.length)).toEqual(['to buy:', '1093 m']);
});

test('more columns than a sheet holds upright turn it on its side, and at last grow smaller', async () => {
  const wide = (count: number): PaperTable => ({
    ...list,
    columns: [
      { head: 'Size', kind: 'text' },
      ...Array.from({ length: count }, (_, index) => ({ head: `w${index}`, kind: 'number' as const })),
    ],
    sections: [
      { title: '', rows: [['EU 40', ...Array.from({ length: count }, (_, i) => `${i + 100}.25 m`)]] },
    ],
    total: [],
  });
  const onSide = await read(wide(11));
  expect(onSide.sheets[0]!.width).toBeGreaterThan(onSide.sheets[0]!.height);
  const many = await read(wide(30));
  const cells = many.texts.filter(({ text }) => /^1\d\d\.25 m$/.test(text));
  expect(cells).toHaveLength(30);
  for (const { x, text, size } of cells)
    expect(x + text.length * 0.556 * size).toBeLessThan(many.sheets[0]!.width - 30);
});

test('what the typeface lacks stands in plain letters, and the reader is told', async () => {
  const names = [
    'Šedý łan',
    'Πράσινο',
    'Жёлтая щука',
    '絹の裏地',
    '=SUM(A1)',
    'Tab\tand\nline',
    '“Grün” – 5 × €',
  ];
  const table = { ...list, sections: [{ title: '', rows: names.map((name) => ['', name, '1 EUR']) }] };
  const { texts, changedLetters } = await read(table);
  const said = texts.map(({ text }) => text);
  for (const name of [
    'Šedý lan',
    'Prasino',
    'Zheltaya shchuka',
    '????',
    '=SUM(A1)',
    'Tab and line',
    '“Grün” – 5 × €',
  ])
    expect(said).toContain(name);
  expect(changedLetters).toContain('絹');
  expect(changedLetters).not.toContain('Š');
  expect(said.join(' ')).toContain('lacks some letters');
  const signs = { ...list, notes: ['cost ÷ (1 − 40 %) → 2⅛ yd, ½ in'] };
  const plain = await read(signs);
  expect(plain.changedLetters).toEqual([]);
  expect(plain.texts.map(({ text }) => text)).toContain('cost ÷ (1 - 40 %) -> 2 1/8 yd, ½ in');
  expect((await read(list)).texts.map(({ text }) => text).join(' ')).not.toContain('lacks');
});
