/** A run over many spoiled files and texts: the same ones for the same seed. */
import { seeded } from '../../fixtures/large-stash.ts';
import { dxfTraps } from '../../core/exchange/traps/dxf-traps.ts';
import { outlineTraps } from '../../core/exchange/traps/outline-traps.ts';
import { svgTraps } from '../../core/exchange/traps/svg-traps.ts';
import type { FileKind, FuzzFile, Judged } from './fuzz-file.ts';
import { mutant } from './mutants.ts';
import type { Pool } from './pool.ts';
import { tableTraps } from './table-traps.ts';
import { typedTexts } from './typed-texts.ts';
import type { WholeFiles } from './whole-files.ts';

export interface FuzzReport {
  readonly files: number;
  readonly crashes: number;
  readonly hangs: number;
  readonly overMemory: number;
  readonly changedData: number;
}

/** How many of a hundred files are of each kind; bringing back a backup takes longest. */
const shares: readonly (readonly [keyof WholeFiles, number])[] = [
  ['DXF', 27],
  ['SVG', 27],
  ['price list', 18],
  ['stash file', 13],
  ['photo', 12],
  ['backup', 3],
];
const textsAtOnce = 1000;

export interface FuzzOptions {
  readonly seed: number;
  readonly fileCount: number;
  readonly textCount: number;
  /** All of the crafted files, or those of these names. */
  readonly traps: 'all' | readonly string[];
}

/** Files are made one by one as they are asked for: all at once would not fit into memory. */
export function* fuzzFiles(whole: WholeFiles, options: FuzzOptions): Generator<FuzzFile> {
  for (const trap of craftedFiles(whole))
    if (options.traps === 'all' || options.traps.includes(trap.name)) yield trap.file();
  const random = seeded(options.seed);
  for (let index = 0; index < options.fileCount; index++) {
    const kind = kindAt(index);
    const sources = whole[kind];
    const source = sources[Math.floor(random() * sources.length)]!;
    const others = whole[kindAt(Math.floor(random() * 100))];
    const { bytes, how } = mutant(source, others[0]!, random);
    yield { kind, name: `${kind} ${index} (${how})`, bytes };
  }
  const texts = typedTexts(options.textCount, random);
  for (let from = 0; from < texts.length; from += textsAtOnce) {
    const bytes = Buffer.from(JSON.stringify(texts.slice(from, from + textsAtOnce)));
    yield { kind: 'typed texts', name: `typed texts from ${from}`, bytes };
  }
}

function kindAt(index: number): keyof WholeFiles {
  let place = index % 100;
  for (const [kind, share] of shares) {
    if (place < share) return kind;
    place -= share;
  }
  throw new RangeError('the shares do not make a hundred');
}

export function craftedFiles(whole: WholeFiles): { readonly name: string; readonly file: () => FuzzFile }[] {
  const pattern = (kind: FileKind) => (trap: { readonly name: string; readonly text: () => string }) => ({
    name: trap.name,
    file: () => ({ kind, name: trap.name, bytes: Buffer.from(trap.text()) }),
  });
  return [
    ...[...dxfTraps, ...outlineTraps].map(pattern('DXF')),
    ...svgTraps.map(pattern('SVG')),
    ...tableTraps.map(({ kind, name, bytes }) => ({
      name,
      file: () => ({ kind, name, bytes: bytes(whole[kind as keyof WholeFiles][0]!) }),
    })),
  ];
}

/** Reads all of them, as many at once as the pool has workers, and tells of each that is not as it should be. */
export async function fuzzReport(
  files: Iterable<FuzzFile>,
  pool: Pool,
  atOnce: number,
  tell: (file: FuzzFile, judged: Judged, index: number) => void,
): Promise<FuzzReport> {
  const counts = { files: 0, crashes: 0, hangs: 0, overMemory: 0, changedData: 0 };
  const next = files[Symbol.iterator]();
  const hand = async (): Promise<void> => {
    for (let step = next.next(); !step.done; step = next.next()) {
      const file = step.value;
      const judged = await pool.read(file);
      // Typed texts are no files.
      if (file.kind !== 'typed texts') counts.files++;
      if (judged.verdict === 'crashed') counts.crashes++;
      if (judged.verdict === 'hung') counts.hangs++;
      if (judged.verdict === 'over memory') counts.overMemory++;
      if (judged.verdict === 'changed data') counts.changedData++;
      tell(file, judged, counts.files);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, hand));
  return counts;
}
