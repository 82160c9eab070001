/**
 * Carries a whole workshop from a file or a database to another, as it stands at this instant:
 *   npm run -s move -- FROM TO
 * Each is a file or an address (postgres://…), its password in it, in PGPASSWORD or kept by Settings. Exit code 0, or 2 with a sentence; then nothing was written.
 */
import { grouped } from '../../shared-core/wording/number-signs.ts';
import { homedir } from 'node:os';
import { type Result, err, ok, problemSentence } from '../../shared-core/measure/problem.ts';
import { chosenAddress } from '../database/chosen-address.ts';
import { moveWorkshop } from '../database/move.ts';
import { askedWorkshop } from './asked-workshop.ts';

const usage =
  'Usage: npm run -s move -- FROM TO, each a file or an address such as postgres://name@host/workshop';
const waitMs = 5000;

/** Prints to out how many rows of each kind were carried. */
export async function runMove(words: readonly string[], out: (text: string) => void): Promise<Result<null>> {
  const [from, to] = words;
  if (from === undefined || to === undefined || words.length > 2) {
    return err({ where: 'The command', what: 'needs to know from where to where', fix: usage });
  }
  const chosen = chosenAddress(askedWorkshop(undefined, homedir()).usualFolder, null);
  const full = (place: string) => chosen.withPassword(place, process.env);
  const moved = await moveWorkshop({ from: full(from), to: full(to), now: () => new Date(), waitMs });
  if (!moved.ok) return moved;
  const rows = [...moved.value].filter(([, count]) => count > 0);
  out('Everything is there, each row and each sum the same:');
  for (const [table, count] of rows) out(`  ${table.replaceAll('_', ' ')}: ${grouped(String(count))}`);
  out('What it was carried from is as it was; from now on, work in one of the two alone.');
  return ok(null);
}

if (import.meta.main) {
  const done = await runMove(process.argv.slice(2), (text) => process.stdout.write(`${text}\n`));
  if (!done.ok) {
    for (const problem of done.problems) process.stderr.write(`${problemSentence(problem)}\n`);
    process.exitCode = 2;
  }
}
