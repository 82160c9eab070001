import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import {
  filledCells,
  type RunTableLay,
  runTable,
  sharedTime,
  tableCells,
  tableJobs,
  tableSizes,
  tableSlots,
} from '../../../shared-core/flow/requirements-table/requirements-table.ts';
import { readWidths, tooManyCells } from '../../../shared-core/flow/requirements-table/table-asked.ts';
import {
  cellWords,
  requirementsTable,
  soldMm,
  soldWords,
  tableJson,
} from '../../../shared-core/flow/requirements-table/table-words.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import { tableCsv } from '../../../shared-core/paper/table-csv.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';
import { draftedSizes } from '../../fixtures/drafted-sizes.ts';
import { item, layHere, onShelf, piece, plan, rectangle, slot } from '../../fixtures/small-workshop.ts';

/** Size 40: three panels of 700 x 500 and a batting; 9: the same panels of 820; XL is left out of this one. */
const panels = (lengthMm: number) => [
  piece('panel', rectangle(lengthMm, 500), {
    cutCount: 3,
    cutFrom: [
      { slotId: 'shell', plyCount: 1 },
      { slotId: 'batting', plyCount: 1 },
    ],
  }),
];
const coat = plan({
  size: 'EU 40',
  coatCount: 4,
  slots: [slot('shell', 'cloth'), slot('batting', 'batting'), slot('cord', 'fastening')],
  pieces: panels(700),
  sizes: [{ size: 'EU 9', coatCount: 0, pieces: panels(820) }],
});
const shelf = [
  onShelf(item('cloth', 'shell item', { hasNap: true, selvageMm: 10 })),
  onShelf(item('batting', 'batting item')),
];
const sources = { plan: coat, shelf };
const asked = {
  widthsMm: [1530, 1100, 400],
  naps: ['without nap', 'with nap'],
  slotIds: ['shell'],
} as const;

describe('what the table asks', () => {
  it('has every size that the plan holds, in the order of their numbers, and every slot that is cut', () => {
    expect(tableSizes(coat)).toEqual(['EU 9', 'EU 40']);
    expect(tableSlots(coat).map(({ id }) => id)).toEqual(['shell', 'batting']);
  });

  it('asks for one coat on each width less its selvages, narrow first, with and without nap', () => {
    const cells = tableCells(sources, asked);
    expect(cells.map(({ size, widthMm, nap }) => [size, widthMm, nap])).toEqual([
      ['EU 9', 400, 'with nap'],
      ['EU 9', 400, 'without nap'],
      ['EU 9', 1100, 'with nap'],
      ['EU 9', 1100, 'without nap'],
      ['EU 9', 1530, 'with nap'],
      ['EU 9', 1530, 'without nap'],
      ['EU 40', 400, 'with nap'],
      ['EU 40', 400, 'without nap'],
      ['EU 40', 1100, 'with nap'],
      ['EU 40', 1100, 'without nap'],
      ['EU 40', 1530, 'with nap'],
      ['EU 40', 1530, 'without nap'],
    ]);
    const [{ job }, { job: without }] = [cells[4]!, cells[5]!];
    expect(job.lengths).toEqual([{ id: 'endless', widthMm: 1510, lengthMm: null, flaws: [] }]);
    expect(job.shapes.map(({ count, turnsDeg }) => [count, turnsDeg])).toEqual([[3, [0]]]);
    // The item has a nap; the column decides.
    expect(without.shapes[0]?.turnsDeg).toEqual([0, 180]);
  });

  it('a piece wider than the cloth is said, and no lay is looked for', async () => {
    const cells = tableCells(sources, asked);
    expect(tableJobs(cells)).toHaveLength(8);
    const filled = filledCells(cells, await runTable(cells, layHere));
    expect(cellWords(filled[0]!, 'metric')).toContain('wider than every length');
    expect(filled[0]).toMatchObject({ widthMm: 400, result: null });
  });

  it('batting has no nap: both columns are one lay', () => {
    const cells = tableCells(sources, { ...asked, slotIds: ['batting'] });
    expect(tableJobs(cells)).toHaveLength(4);
    expect(cells[2]?.job).toBe(cells[3]?.job);
  });
});

describe('what the table answers', () => {
  it('rounds each lay up to what is sold, in tenths of a metre and eighths of a yard', async () => {
    const cells = tableCells(sources, { ...asked, widthsMm: [1530], naps: ['with nap'] });
    const [nine, forty] = filledCells(cells, await runTable(cells, layHere));
    // Three panels of 500 stand side by side on 1510 mm: 820 and 700 mm of cloth.
    expect(totalUsedMm(nine!.result!)).toBeCloseTo(820, 0);
    expect(totalUsedMm(forty!.result!)).toBeCloseTo(700, 0);
    expect([soldMm(nine!, 'metric'), soldMm(forty!, 'metric')]).toEqual([900, 700]);
    expect([soldWords(nine!, 'metric'), soldWords(forty!, 'metric')]).toEqual(['0.9 m', '0.7 m']);
    // 820 / 914.4 is 0.897 yd: the next eighth is 1 yd; 700 / 914.4 is 0.766 yd: 7/8.
    expect([soldWords(nine!, 'imperial'), soldWords(forty!, 'imperial')]).toEqual(['1 yd', '7/8 yd']);
    expect(cellWords(forty!, 'metric')).toMatch(
      /^0\.70 m, \d+ % of the cloth used; no lay can be shorter; looked for .*seed 1\.$/,
    );
  });

  it('wider cloth never asks for more, nor cloth without nap, and what is borrowed is a lay that holds', async () => {
    const cells = tableCells(
      { plan: draftedSizes(2), shelf: [] },
      { widthsMm: [1150, 1400, 1420], naps: ['with nap', 'without nap'], slotIds: ['shell'] },
    );
    const jobs = tableJobs(cells);
    // Worse lays for wider cloth on purpose: only the first cell of a size is looked for longer.
    const found = await runTable(cells, (job, what) =>
      what.includes('1150') ? layHere(job, what) : layHere({ ...job, seed: 9 }, what),
    );
    expect(found.size).toBe(jobs.length);
    const filled = filledCells(cells, found);
    for (const size of ['76', '80']) {
      for (const nap of ['with nap', 'without nap'] as const) {
        const used = filled
          .filter((cell) => cell.size === size && cell.nap === nap)
          .map((cell) => totalUsedMm(cell.result!));
        expect(used).toEqual([...used].sort((a, b) => b - a));
      }
    }
    for (const cell of filled) expect(checkLay(cell.job, cell.result!)).toEqual([]);
  });

  it('a lay found on narrower cloth is taken where it is shorter, and the cell says whose it is', async () => {
    const cells = tableCells(sources, { ...asked, widthsMm: [1530, 1700], naps: ['without nap'] });
    const longer: RunTableLay = async (job, what) => {
      const result = await layHere(job, what);
      return what.includes('1700') ? { ...result, usedLengthMm: [totalUsedMm(result) + 250] } : result;
    };
    const filled = filledCells(cells, await runTable(cells, longer));
    expect(filled.map((cell) => cell.from?.widthMm ?? null)).toEqual([null, 1530, null, 1530]);
    expect(totalUsedMm(filled[1]!.result!)).toBeCloseTo(820, 0);
    expect(filled[1]!.result!.utilisation).toBeCloseTo((3 * 500 * 820) / (820 * 1680), 4);
    expect(cellWords(filled[1]!, 'metric')).toContain('found for 153 cm without nap and holds here too');
  });

  it('depends on nothing but the plan under a budget of moves', async () => {
    const cells = tableCells(
      { plan: draftedSizes(2), shelf: [] },
      { widthsMm: [1150, 1500], naps: ['without nap'], slotIds: ['body-lining'] },
    );
    const once = async () => {
      const filled = filledCells(cells, await runTable(cells, layHere));
      return filled.map((cell) => [cell.result?.usedLengthMm, cell.result?.placements]);
    };
    expect(await once()).toEqual(await once());
  });
});

describe('the table on paper', () => {
  it('says what is not found yet, and adds nothing in secret', async () => {
    const cells = tableCells(sources, { ...asked, widthsMm: [1530] });
    const stopped: RunTableLay = (job, what) =>
      what.includes('EU 9') ? Promise.resolve(null) : layHere(job, what);
    const filled = filledCells(cells, await runTable(cells, stopped));
    const table = requirementsTable(coat, filled, { systems: ['metric', 'imperial'] });
    expect(table.columns.filter(({ only }) => only === 'paper').map(({ head }) => head)).toEqual([
      '153 cm / 60 1/4 in, without nap',
      '153 cm / 60 1/4 in, with nap',
    ]);
    expect(table.sections.map(({ title }) => title)).toEqual(['Shell']);
    const text = tableText(table);
    expect(text).toMatch(/EU 9 +not found yet +not found yet/);
    expect(text).toMatch(/EU 40 +0\.7 m +0\.7 m\n +7\/8 yd/);
    expect(text).toContain('2 of 4 cells are not found yet.');
    expect(text).toContain('Nothing is added for cloth that is not true');
    const [nine, forty] = Papa.parse<Record<string, string>>(tableCsv(table), { header: true }).data;
    expect(forty).toEqual({
      material: 'Shell',
      size: 'EU 40',
      '153 cm, without nap (m)': '0.7',
      '153 cm, with nap (m)': '0.7',
      '60 1/4 in, without nap (yd)': '0.875',
      '60 1/4 in, with nap (yd)': '0.875',
    });
    expect(nine?.['153 cm, with nap (m)']).toBe('');
  });

  it('as JSON every cell has its length, floor, seed and time', async () => {
    const cells = tableCells(sources, { ...asked, widthsMm: [1530], naps: ['with nap'] });
    const { cells: entries, sizes } = tableJson(sources, filledCells(cells, await runTable(cells, layHere)));
    expect(sizes).toEqual(['EU 9', 'EU 40']);
    expect(entries[1]).toMatchObject({
      slot: 'shell',
      size: 'EU 40',
      widthMm: 1530,
      nap: 'with nap',
      soldMetricMm: 700,
      floorMm: 700,
      seed: 1,
      stoppedBy: 'floor',
      foundOn: null,
    });
    expect(entries[1]?.soldImperialMm).toBeCloseTo(7 * 114.3, 6);
  });
});

describe('asking', () => {
  it('reads widths as they are typed, rising, each once', () => {
    expect(readWidths('150; 115 cm, 1.4 m; 45 in; 150 cm', 'metric')).toEqual({
      ok: true,
      value: [1143, 1150, 1400, 1500],
    });
    expect(readWidths('45; 60', 'imperial')).toEqual({ ok: true, value: [1143, 1524] });
    expect(readWidths('11,5 cm; 140 cm', 'metric').ok).toBe(false);
    expect(readWidths('112,5 cm; 140 cm', 'metric')).toEqual({ ok: true, value: [1125, 1400] });
  });

  it.each(['', ' ; ', 'wide', '15 cm', '6 m', '1;2;3;4;5;6;7;8;9'])('refuses %j with a sentence', (text) => {
    const read = readWidths(text, 'metric');
    expect(read.ok ? [] : read.problems.map(({ fix }) => fix === '')).toContain(false);
  });

  it('refuses a table that nobody could read', () => {
    expect(tooManyCells(coat, 8, 2, 2)).toBeNull();
    expect(tooManyCells(coat, 8, 2, 70)?.what).toBe('has 2240 cells');
  });
});

describe('the time for the whole table', () => {
  it('is shared, and what one lay leaves over goes to those that come', () => {
    let now = 100;
    const next = sharedTime(60, 4, 2, () => now);
    expect(next()).toBeCloseTo((60 * 2 * 0.95) / 4);
    expect(next()).toBeCloseTo((60 * 2 * 0.95) / 3);
    now = 152;
    // Eight seconds are left for two: neither may have more than those.
    expect(next()).toBeCloseTo((8 * 2 * 0.95) / 2);
    expect(next()).toBe(8);
    now = 161;
    expect(next()).toBe(0.05);
  });
});
