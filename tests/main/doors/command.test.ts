import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runEstimate } from '../../../main/doors/command.ts';
import { openServices } from '../../../main/services/calls/services.ts';
import { openLayThreads } from '../../../main/services/threads/lay-threads.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { laysHere } from './lays-here.ts';

const command = fileURLToPath(new URL('../../../main/doors/command.ts', import.meta.url));
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-command-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function estimate(...words: string[]) {
  const ended = spawnSync(process.execPath, [command, ...words], { encoding: 'utf8', cwd: folder });
  return { code: ended.status, out: ended.stdout, complaint: ended.stderr };
}

/** What the same command prints without a process of its own. */
async function printed(words: readonly string[], openThreads = laysHere): Promise<string> {
  let out = '';
  const done = await runEstimate(words, (text) => (out += text), openThreads);
  expect(done).toMatchObject({ ok: true });
  return out;
}

/** And what it refuses. */
async function refusal(...words: string[]): Promise<string> {
  const told: string[] = [];
  const done = await runEstimate(words, (text) => told.push(text));
  expect(told).toEqual([]);
  return done.ok ? '' : done.problems.map(problemSentence).join('\n');
}

interface Lay {
  readonly slot: string;
  readonly usedLengthMm: number;
  readonly floorMm: number;
  readonly utilisation: number;
  readonly seed: number;
  readonly seconds: number;
  readonly stoppedBy: string;
  readonly stillFalls: { readonly low: number; readonly high: number } | null;
  readonly placements: readonly { readonly piece: string }[];
}

describe('the estimate for scripts', () => {
  // That a process of its own ends with 0 and complains of nothing: see read-only.test.ts.
  it('gives the whole road of the demo as JSON and draws its lays', async () => {
    const papersAndLays = ['--svg', join(folder, 'lays'), '--pdf', join(folder, 'papers')];
    const out = await printed(['--demo', '--json', '--iterations', '1', ...papersAndLays]);
    const road = JSON.parse(out);
    expect(Object.keys(road)).toEqual([
      'coat',
      'pattern',
      'requirement',
      'cutting',
      'panels',
      'lays',
      'cover',
      'toBuy',
      'cost',
      'finished',
      'advice',
    ]);
    const [pattern] = road.pattern;
    expect(road.pattern).toHaveLength(1);
    expect(pattern.pieces).toHaveLength(26);
    const side = pattern.seams.find((seam: { label: string }) => seam.label === 'Side');
    expect(side).toMatchObject({ sides: 'two', fits: true });
    const back = pattern.quilting.pieces.find((piece: { name: string }) => piece.name === 'Back');
    expect([back.spacingMm, back.offsetsMm.slice(0, 2)]).toEqual([70, [70, 140]]);
    expect(back.takeUp.isMeasured).toBe(false);
    expect(back.markAtMm[1]).toBeCloseTo(140 * (1 + back.takeUp.alongRatio), 9);
    expect(back.markAtMm[1]).toBeGreaterThan(140.5);
    expect(pattern.quilting.meetings.filter((seam: { meets: boolean }) => !seam.meets)).toHaveLength(1);
    const [sewn] = road.finished.coats;
    expect(sewn.massG).toBeCloseTo(
      sewn.mass.lines.reduce((sum: number, line: { massG: number }) => sum + line.massG, 0),
      6,
    );
    expect(sewn.label.lines[0].us).toBe('Shell: 100% nylon');
    const detail = (slot: string) =>
      road.requirement.find((need: { slot: string }) => need.slot === slot).detail;
    expect(detail('front zip').lengths.bySize[0]).toMatchObject({ soldMm: expect.closeTo(812.8, 6) });
    expect(detail('sewing thread').use).toMatchObject({ spoolCount: 1, coneCount: 1 });
    expect(detail('needles').choice).toMatchObject({ sizeNm: 75, point: 'sharp', conflict: '' });
    expect(road.advice.map(({ kind }: { kind: string }) => kind)).toEqual(['pattern matching', 'seam bulk']);
    expect(detail('batting').pieces[0]).toMatchObject({ pieceName: 'Back', plyCount: 2 });
    expect(out).not.toMatch(/\{(length|mass|volume) /);
    const lays: Lay[] = road.lays;
    expect(lays.length).toBeGreaterThan(4);
    for (const lay of lays) {
      expect(lay.usedLengthMm).toBeGreaterThanOrEqual(lay.floorMm - 1);
      expect(lay.utilisation).toBeGreaterThan(0.4);
      expect(lay.utilisation).toBeLessThanOrEqual(1);
      expect(Number.isInteger(lay.seed)).toBe(true);
      expect(lay.placements.length).toBeGreaterThan(0);
      if (lay.stoppedBy === 'floor') expect(lay.stillFalls).toBeNull();
    }
    // A lay looked for so shortly says by how much it usually still gets shorter, and so does what is bought by it.
    const shell = lays.find(({ slot }) => slot === 'shell');
    expect(shell?.stillFalls).toMatchObject({ basis: { kind: 'measured' } });
    expect(shell?.stillFalls?.high).toBeGreaterThan(0.005);
    expect(road.toBuy.stillFalls.high).toBeGreaterThanOrEqual(shell?.stillFalls?.high ?? 1);
    const drawings = readdirSync(join(folder, 'lays'));
    expect(drawings).toHaveLength(lays.length);
    expect(readFileSync(join(folder, 'lays', 'shell.svg'), 'utf8')).toContain('<svg xmlns');
    expect(readdirSync(join(folder, 'papers')).sort()).toEqual([
      'cost.pdf',
      'cutting-sheet.pdf',
      'to-buy.pdf',
    ]);
    const papers = readdirSync(join(folder, 'papers')).map((name) =>
      readFileSync(join(folder, 'papers', name)),
    );
    for (const bytes of papers) expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    // What the batch costs is what its slots cost.
    expect(
      road.cost.lines.reduce((sum: number, line: { costMinor: number }) => sum + line.costMinor, 0),
    ).toBe(road.cost.batchMinor);
    // The basket is goods and deliveries; its reasons and the next best with fewer suppliers are sentences too.
    const { basket, lines, why, nextBest, cautions } = road.toBuy;
    const goodsMinor = lines.reduce((sum: number, line: { priceMinor: number }) => sum + line.priceMinor, 0);
    expect(basket.goodsMinor).toBe(goodsMinor);
    expect(basket.payMinor).toBe(goodsMinor + basket.deliveryMinor);
    // Whoever sells something delivers it, and nobody else does.
    const sellers = new Set<string>(
      lines.map(({ offer }: { offer: { supplier: string } }) => offer.supplier),
    );
    expect(basket.deliveries.map((each: { supplier: string }) => each.supplier)).toEqual(
      [...sellers].sort((a, b) => a.localeCompare(b)),
    );
    expect(sellers.size).toBeGreaterThan(1);
    expect(why.map((each: { sentence: string }) => each.sentence).join(' ')).toContain('instead of');
    for (const other of nextBest) {
      expect(other.basket.deliveries.length).toBeLessThan(basket.deliveries.length);
      expect(other.basket.payMinor).toBeGreaterThanOrEqual(basket.payMinor);
    }
    expect(Array.isArray(cautions)).toBe(true);
    // Nothing of the demo's coat is cut yet.
    expect(road.cost.cut).toBeNull();
    // The demo's makers add work and overhead, and then their margin.
    const { coat, wholesale } = road.cost.price;
    expect(coat.materialMinor).toBe(road.cost.perCoatMinor[0]);
    expect(coat.materialMinor + coat.labourMinor + coat.overheadMinor).toBe(coat.costMinor);
    expect(wholesale.priceMinor).toBe(Math.round(coat.costMinor / 0.65));
  });

  it('says the same in words', async () => {
    const out = await printed(['--demo', '--iterations', '1']);
    for (const heading of [
      'What it needs',
      'Cover: ',
      'To buy',
      'Cost of material',
      'The finished coat',
      'Price of one coat',
    ])
      expect(out).toContain(heading);
    expect(out).toMatch(/The shell is short by [\d.]+ m of 1\.47 m cloth/);
    // Lays that were looked for so shortly are no figures to buy on.
    expect(out).toMatch(/shell .*; usually (another|up to) [\d to]+ % shorter when looked for longer/);
    expect(out).toMatch(/To buy\n {2}This list may still get shorter: .*[\d to]+ % less cloth/);
  });

  it('goes through the plans of the season in their order, and buys for all at once', async () => {
    const told = JSON.parse(await printed(['--demo', '--season', '--json', '--iterations', '1']));
    expect(Object.keys(told)).toEqual(['plans', 'toBuy', 'costMinor', 'currency']);
    expect(
      told.plans.map((plan: { name: string; coatCount: number }) => [plan.name, plan.coatCount]),
    ).toEqual([
      ['Fenwalk coat', 4],
      ['Fenwalk coat in slate', 2],
    ]);
    const costs = told.plans.map((plan: { cost: { batchMinor: number } }) => plan.cost.batchMinor);
    expect(costs[0] + costs[1]).toBe(told.costMinor);
    // One purchase of what both lack.
    expect(
      told.toBuy.lines.some(
        (line: { for: { planId: string }[] }) => new Set(line.for.map(({ planId }) => planId)).size === 2,
      ),
    ).toBe(true);
    const words = await printed(['--demo', '--season', '--iterations', '1']);
    expect(words).toMatch(/^1\. Fenwalk coat, 4 coats: /);
    expect(words).toContain('Material of the season');
  });

  it('a season without plans is refused in a sentence', async () => {
    const file = join(folder, 'empty.sqlite');
    const opened = openServices({ dataFile: file, demoFile: join(folder, 'demo-empty.sqlite') });
    if (opened.ok) opened.value.close();
    expect(await refusal('--data', file, '--season')).toContain('The season has no plans in it');
  });

  it.each([
    ['no workshop named', [], 'needs either --demo or --data FILE'],
    ['two workshops named', ['--demo', '--data', 'x.sqlite'], 'needs either --demo or --data FILE'],
    ['an unknown word', ['--demo', '--fast'], 'cannot be read'],
    ['a negative time', ['--demo', '--seconds=-3'], '--seconds is -3'],
    ['a time in words', ['--demo', '--seconds', 'soon'], '--seconds is soon'],
    [
      'an unknown coat',
      ['--demo', '--coat', 'Overcoat of nobody'],
      'Overcoat of nobody is not in this workshop',
    ],
  ])('%s is refused in a sentence', async (_, words, sentence) => {
    expect(await refusal(...words)).toContain(sentence);
  });

  it('a data file that is not there is not made', async () => {
    const file = join(folder, 'nowhere.sqlite');
    expect(await refusal('--data', file, '--coat', 'Fenwalk coat')).toContain('is not there');
    expect(existsSync(file)).toBe(false);
  });

  it('a data file that is not a database is left as it was', () => {
    const file = join(folder, 'letter.sqlite');
    writeFileSync(file, 'Dear Wren, the taffeta has come.\n'.repeat(40));
    const before = readFileSync(file);
    const { code, out, complaint } = estimate('--data', file, '--coat', 'Fenwalk coat');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(complaint).toContain('letter.sqlite');
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(folder).filter((name) => name.startsWith('letter'))).toEqual(['letter.sqlite']);
  });
});

describe('the table of requirements for scripts', () => {
  const words = ['--demo', '--table', '150 cm; 45 in', '--nap', 'without', '--iterations', '5'];

  it('gives every slot that is cut, on each width, and the same by its threads as in this one', async () => {
    const once = JSON.parse(await printed([...words, '--json']));
    expect(Object.keys(once)).toEqual(['coat', 'table']);
    const { sizes, cells } = once.table;
    expect(sizes).toEqual(['EU 40']);
    expect(
      cells.map(({ slotId, widthMm }: { slotId: string; widthMm: number }) => [slotId, widthMm]),
    ).toEqual(
      ['shell', 'body-lining', 'sleeve-lining', 'batting', 'pocketing', 'trim'].flatMap((slotId) => [
        [slotId, 1143],
        [slotId, 1500],
      ]),
    );
    for (const cell of cells) {
      expect(cell.foundMm).toBeGreaterThanOrEqual(cell.floorMm - 1);
      expect(cell.soldMetricMm).toBeGreaterThanOrEqual(cell.foundMm - 1);
      expect(cell.soldMetricMm % 100).toBeCloseTo(0, 6);
    }
    const again = JSON.parse(await printed([...words, '--json'], openLayThreads));
    const lengths = (table: typeof once) =>
      table.table.cells.map((cell: { foundMm: number }) => cell.foundMm);
    expect(lengths(again)).toEqual(lengths(once));
  });

  it('says the same in words', async () => {
    const out = await printed([...words.slice(0, -1), '1']);
    expect(out).toMatch(/Shell\nSize +114.3 cm +150 cm\nEU 40 +\d\.\d m +\d\.\d m\n/);
    expect(out).toContain('rounded up to a tenth of a metre');
  });

  it('refuses widths and naps that it cannot read', async () => {
    expect(await refusal('--demo', '--table', 'wide')).toContain('Width of the cloth');
    expect(await refusal('--demo', '--table', '140', '--nap', 'some')).toContain('--nap is some');
  });
});
