import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, test } from 'vitest';
import type { PaperTable } from '../../../shared-core/paper/paper-table.ts';
import { brokenLines } from '../../../shared-core/paper/table-columns.ts';
import { tablePdf } from '../../../shared-core/paper/table-pdf.ts';
import { embedTypeface } from '../../../shared-core/paper/typeface.ts';
import { pdfSheets } from './pdf-text.ts';
import { typefaceFiles } from './typeface.ts';

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
  const { bytes, missingLetters } = await tablePdf(table, { format, day }, typefaceFiles);
  const sheets = await pdfSheets(bytes);
  return { bytes, sheets, missingLetters, texts: sheets.flatMap((sheet) => sheet.texts) };
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
  expect(at('77').width).toBeCloseTo(2 * at('7').width, 4);
  expect(at('7').x + at('7').width).toBeCloseTo(at('77').x + at('77').width, 3);
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
  for (const { x, width } of pieces) expect(x + width).toBeLessThan(right);
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
  for (const { x, width } of cells) expect(x + width).toBeLessThan(many.sheets[0]!.width - 47);
});

test('names in Latin, Greek, Cyrillic and Devanagari letters stand in the PDF as they were typed', async () => {
  const names = [
    'Šedý łan, Đặng Thị Hồng, ŧæłþ',
    'Πράσινο ύφασμα, ᾠδή',
    'Жёлтая щука, ґанок, қыз, ӂ',
    'नीला कपड़ा',
    'Tab\tand\nline',
    '“Grün” – 5 × €',
    'cost ÷ (1 − 40 %), 2⅛ yd, ½ in',
  ];
  const table = { ...list, sections: [{ title: '', rows: names.map((name) => ['', name, '1 EUR', '']) }] };
  const { texts, missingLetters } = await read(table);
  const said = texts.map(({ text }) => text);
  for (const name of names.slice(0, 4)) expect(said).toContain(name.normalize('NFC'));
  expect(said).toContain('Tab and line');
  for (const name of names.slice(5)) expect(said).toContain(name);
  expect(missingLetters).toEqual([]);
  expect(said.join(' ')).not.toContain('lacks');
});

test('a letter that was first met as a part of others is still itself when it is copied', async () => {
  // Cyrillic Т and Latin T, Е and E: some are drawn by the other’s outline.
  const names = ['ТЕ Ţé Ĕ', 'TE te', 'Те ё', 'T̈ë', 'Together'];
  for (const bold of [false, true]) {
    const rows = names.map((name) => ['', name, '1 EUR', '']);
    const total = ['', names.join(' '), '6 EUR', ''];
    const { total: _, ...table } = { ...list, sections: [{ title: '', rows, ...(bold && { total }) }] };
    await read(table);
    const said = (await read(table)).texts.map(({ text }) => text);
    for (const name of bold ? [names.join(' ')] : names) expect(said).toContain(name.normalize('NFC'));
  }
});

test('every letter of the Latin, Greek and Cyrillic alphabets is in the typeface', async () => {
  const pdf = await PDFDocument.create();
  const { letters, missing } = await embedTypeface(pdf, typefaceFiles);
  // Capitals and small letters of Unicode's blocks for these scripts; the Coptic ones of the Greek block are another script.
  const blocks = [
    [0x41, 0x24f],
    [0x1e00, 0x1eff],
    [0x370, 0x3ff],
    [0x1f00, 0x1fff],
    [0x400, 0x52f],
  ] as const;
  for (const [from, to] of blocks) {
    for (let codePoint = from; codePoint <= to; codePoint++) {
      const letter = String.fromCodePoint(codePoint);
      if (/\p{L}/u.test(letter) && !/\p{Script=Coptic}/u.test(letter)) letters(letter);
    }
  }
  expect([...missing]).toEqual([]);
});

test('letters that the typeface lacks stand as ?, and are told on the paper and to the caller', async () => {
  const table = {
    ...list,
    sections: [
      {
        title: '',
        rows: [
          ['', '絹の裏地', '1 EUR', ''],
          ['', 'ﬁｘ → ≤ 3', '2 EUR', ''],
        ],
      },
    ],
  };
  const { texts, missingLetters } = await read(table);
  const said = texts.map(({ text }) => text);
  expect(said).toContain('????');
  expect(said).toContain('ﬁx -> <= 3');
  expect(missingLetters).toEqual(['絹', 'の', '裏', '地', 'ｘ']);
  expect(said.join(' ')).toContain('lacks some letters');
});

test('only the letters that are written are embedded, so that a list stays small', async () => {
  const { bytes } = await read(list);
  expect(bytes.length).toBeLessThan(40_000);
});
