/**
 * Kills a writing program at a random instant, again and again on one file, and looks whether every entry that it
 * was told was done is there: node tests/main/crash.ts [--runs N] [--seed S] [--json]. Exit code 1 where one is lost.
 * It proves the death of the program, not a power cut.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { openServices } from '../../main/services/calls/services.ts';
import { seeded } from '../fixtures/large-stash.ts';

const writer = fileURLToPath(new URL('crash-writer.ts', import.meta.url));

/** The lines that the writer told before it ended; killAfterMs counts from its first line, null lets it end. */
export function runWriter(
  dataFile: string,
  words: readonly string[],
  killAfterMs: number | null,
): Promise<string[]> {
  return new Promise((ended, failed) => {
    const child = spawn(process.execPath, [writer, dataFile, ...words], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let told = '';
    let complaint = '';
    let timer: NodeJS.Timeout | undefined;
    child.stdout.on('data', (bytes: Buffer) => {
      told += bytes.toString();
      if (killAfterMs !== null) timer ??= setTimeout(() => child.kill('SIGKILL'), killAfterMs);
    });
    child.stderr.on('data', (bytes: Buffer) => {
      complaint += bytes.toString();
    });
    child.on('error', failed);
    child.on('close', (code) => {
      clearTimeout(timer);
      if (code !== null && code !== 0) failed(new Error(complaint));
      // A line that was cut by the kill was not told.
      else ended(told.split('\n').slice(0, -1));
    });
  });
}

export interface CrashReport {
  readonly runs: number;
  readonly acknowledged: number;
  /** Acknowledged entries that the file does not hold; empty when all is well. */
  readonly lost: readonly string[];
  /** What else is wrong with the file: damage, or a balance that is not the sum of its movements. */
  readonly wrong: readonly string[];
}

/** Kills `runs` writers on one new file, and looks after each. */
export async function crashReport(runs: number, seed: number): Promise<CrashReport> {
  const random = seeded(seed);
  const folder = mkdtempSync(join(tmpdir(), 'bolt-crash-'));
  try {
    const dataFile = join(folder, 'own.sqlite');
    const acknowledged: string[] = [];
    const lost = new Set<string>();
    const wrong: string[] = [];
    for (let run = 0; run < runs; run++) {
      const lines = await runWriter(dataFile, [`run ${run}`], Math.floor(random() * 120));
      for (const line of lines) if (line.startsWith('done ')) acknowledged.push(line.slice('done '.length));
      const opened = openServices({ dataFile, demoFile: join(folder, 'demo.sqlite') });
      if (!opened.ok) {
        wrong.push(`run ${run}: ${JSON.stringify(opened.problems)}`);
        break;
      }
      opened.value.close();
      for (const entry of missing(dataFile, acknowledged)) lost.add(entry);
      wrong.push(...faults(dataFile).map((fault) => `run ${run}: ${fault}`));
    }
    return { runs, acknowledged: acknowledged.length, lost: [...lost], wrong };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function missing(dataFile: string, entries: readonly string[]): string[] {
  const database = new SqliteDatabase(dataFile, { readonly: true });
  const held = new Set(
    database.prepare("SELECT reason FROM movement WHERE kind = 'written off'").pluck().all(),
  );
  database.close();
  return entries.filter((entry) => !held.has(entry));
}

function faults(dataFile: string): string[] {
  const database = new SqliteDatabase(dataFile, { readonly: true });
  const check = database.pragma('integrity_check', { simple: true });
  const differing = database
    .prepare(
      `SELECT count(*) FROM lot_balance WHERE on_hand_milli <>
         (SELECT coalesce(sum(on_hand_milli), 0) FROM movement WHERE movement.lot_id = lot_balance.lot_id)`,
    )
    .pluck()
    .get();
  database.close();
  return [
    ...(check === 'ok' ? [] : [`the file is damaged: ${check}`]),
    ...(differing === 0 ? [] : [`${differing} balances differ from their sums`]),
  ];
}

function numberAfter(word: string, otherwise: number): number {
  const at = process.argv.indexOf(word);
  const number = at < 0 ? otherwise : Number(process.argv[at + 1]);
  if (!Number.isInteger(number) || number < 1) throw new RangeError(`${word} needs a whole number above 0`);
  return number;
}

if (import.meta.main) {
  const seed = numberAfter('--seed', 17);
  const report = await crashReport(numberAfter('--runs', 20), seed);
  if (process.argv.includes('--json')) console.log(JSON.stringify({ seed, ...report }, null, 1));
  else
    console.log(
      `${report.runs} kills, ${report.acknowledged} acknowledged entries, ${report.lost.length} lost`,
    );
  for (const fault of [...report.lost, ...report.wrong]) console.error(fault);
  if (report.lost.length + report.wrong.length > 0) process.exitCode = 1;
}
