/** A workshop's file from its name to an open connection that nobody else has: found, claimed, looked at, opened. */
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { listBackups } from '../backups/backup-folder.ts';
import { type Claim, claimFile } from './claim.ts';
import { type OpenOptions, type OpenWorkshop, openWorkshop } from './connection.ts';
import { isFaultOfFile } from '../failures/failure.ts';
import { checkDataFile, checkPlace, realFile, secondNameProblem } from './file-check.ts';
import { closeAllToOthers, sweepLeftovers } from './leftovers.ts';

export interface ClaimedFile {
  /** Absolute, and its true name. */
  readonly file: string;
  /** Held as long as the file is in use, open or not. */
  readonly claim: Claim;
  /** Refused only where the file itself is at fault and a backup of it is there. */
  readonly opened: Result<OpenWorkshop>;
}

/** Refused, with nothing left beside the file, where it cannot be had, or is at fault with no backup to bring back. */
export function openClaimed(dataFile: string, options: OpenOptions): Result<ClaimedFile> {
  const real = realFile(dataFile);
  if (!real.ok) return real;
  const file = real.value;
  const placed = checkPlace(file);
  if (!placed.ok) return placed;
  const looked = checkDataFile(file, options.isDemo ? 'to be a demo' : 'to be written');
  if (!looked.ok && !hasBackups(file)) return looked;
  const claimed = claimFile(file, options.now);
  if (!claimed.ok) return claimed;
  const claim = claimed.value;
  let isKept = false;
  try {
    sweepLeftovers(file);
    const problem = secondNameProblem(file);
    if (problem) return err(problem);
    if (looked.ok) closeAllToOthers(file);
    const opened = openWorkshop(file, options);
    if (!opened.ok && !(opened.problems.every(isFaultOfFile) && hasBackups(file))) return opened;
    isKept = true;
    return ok({ file, claim, opened });
  } finally {
    if (!isKept) claim.release();
  }
}

function hasBackups(file: string): boolean {
  try {
    return listBackups(file).length > 0;
  } catch {
    return false;
  }
}
