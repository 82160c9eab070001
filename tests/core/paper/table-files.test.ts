import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { PaperTable } from '../../../shared-core/paper/paper-table.ts';
import { tableCsv } from '../../../shared-core/paper/table-csv.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';

const list: PaperTable = {
  title: 'To buy',
  lead: 'What 6 coats still need.',
  sectionHead: 'supplier',
  columns: [
    { head: '', fileHead: 'bought', kind: 'tick' },
    { head: 'Item', fileHead: 'item', kind: 'text' },
    { head: 'Price', fileHead: 'price (EUR)', kind: 'number' },
    { head: 'For', kind: 'text', only: 'paper' },
    { head: 'priced on', kind: 'text', only: 'file' },
  ],
  sections: [
    {
      title: 'Tallow Lane',
      rows: [
        [
          '',
          { text: 'Peatwater', note: 'dye lot P-2207' },
          { text: '1,249.45 EUR', fileText: '1249.45' },
          'shell',
          '2026-10-02',
        ],
        ['x', 'Cord, "springy"\n5 mm', { text: '-0.70 EUR', fileText: '-0.70' }, 'hem', '2026-10-03'],
      ],
      total: ['', 'Together', '1,248.75 EUR', '', ''],
    },
    { title: '=Fernlow', rows: [['', '+1', '5 EUR', '', '']] },
  ],
  total: ['', 'In all', '1,253.75 EUR', '', ''],
  notes: ['Nothing is chosen for: facing.'],
};

describe('a table for a spreadsheet', () => {
  const table = () => Papa.parse<Record<string, string>>(tableCsv(list), { header: true });

  it('has the section first, plain numbers, and only the columns of a file', () => {
    expect(table().errors).toEqual([]);
    expect(table().meta.fields).toEqual(['supplier', 'bought', 'item', 'price (EUR)', 'priced on']);
    expect(table().data[0]).toEqual({
      supplier: 'Tallow Lane',
      bought: 'no',
      item: 'Peatwater',
      'price (EUR)': '1249.45',
      'priced on': '2026-10-02',
    });
    expect(table().data).toHaveLength(3);
  });

  it('holds no formula that a spreadsheet would run, on however many lines it is written', () => {
    const texts = ['=HYPERLINK("x")\nmore', '+1\r\n+2', '@cmd', '-2+3', '\t=1', "'=1"];
    const rows = texts.map((text) => ['', text, '-7', '', '']);
    const csv = tableCsv({ ...list, sections: [{ title: '=a\n=b', rows }] });
    const cells = Papa.parse<string[]>(csv).data.slice(1);
    expect(cells.map(([, , text]) => text)).toEqual(texts.map((text) => `'${text}`));
    for (const cell of cells.flat()) expect(cell).toMatch(/^(-7$|[^=+\-@\t\r]|$)/);
  });

  it('keeps commas, quotes and line breaks inside their cell, and a number below 0 a number', () => {
    expect(table().data[1]).toMatchObject({
      bought: 'yes',
      item: 'Cord, "springy"\n5 mm',
      'price (EUR)': '-0.7',
    });
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])('runs no name as a formula: %j', (name) => {
    const named = { ...list, sections: [{ title: name, rows: [['', name, '5', '', name]] }] };
    const [row] = Papa.parse<Record<string, string>>(tableCsv(named), { header: true }).data;
    expect(row).toMatchObject({ supplier: `'${name}`, item: `'${name}`, 'priced on': `'${name}` });
  });

  it('without sections has no column for them', () => {
    expect(tableCsv({ ...list, sectionHead: '' }).split('\r\n')[0]).toBe('bought,item,price (EUR),priced on');
  });
});

describe('a table as text', () => {
  it('lines up, says notes below their row and totals at the end', () => {
    expect(tableText(list).split('\n')).toEqual([
      'To buy',
      'What 6 coats still need.',
      '',
      'Tallow Lane',
      '     Item                         Price  For',
      '[ ]  Peatwater             1,249.45 EUR  shell',
      '      dye lot P-2207',
      '[x]  Cord, "springy" 5 mm     -0.70 EUR  hem',
      '     Together              1,248.75 EUR',
      '',
      '=Fernlow',
      '     Item                         Price  For',
      '[ ]  +1                           5 EUR',
      '',
      '     In all                1,253.75 EUR',
      '',
      'Nothing is chosen for: facing.',
    ]);
  });
});
