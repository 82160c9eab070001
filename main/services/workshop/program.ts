/** What the program says of itself. */
import { dirname } from 'node:path';
import type { ProgramFacts } from '../../../shared-core/contract/program-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureLogFile } from '../../database/failures/failure-log.ts';
import type { ReleaseSource } from './release-source.ts';

/** Told by the door, which knows what it runs in. */
export type RunningProgram = Pick<ProgramFacts, 'version' | 'runsOn'>;

export const unnamedProgram: RunningProgram = { version: '0.0.0', runsOn: [] };

export const noNewsHere: Problem = {
  where: 'News of later versions',
  what: 'cannot be asked for: this build knows no place for them',
  fix: 'Look by hand where you have this program from.',
};

/** dataFile: absolute. */
export function programFacts(
  program: RunningProgram,
  dataFile: string,
  source: ReleaseSource | null,
): ProgramFacts {
  return {
    ...program,
    folder: dirname(dataFile),
    logFile: failureLogFile(dataFile),
    newsAddress: source?.address ?? null,
  };
}
