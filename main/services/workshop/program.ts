/** What the program says of itself. */
import { say } from '../../../shared-core/wording/say.ts';
import { dirname } from 'node:path';
import type { ProgramFacts } from '../../../shared-core/contract/program-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureLogFile } from '../../database/failures/failure-log.ts';
import type { ReleaseSource } from './release-source.ts';

/** Told by the door, which knows what it runs in. */
export type RunningProgram = Pick<ProgramFacts, 'version' | 'runsOn'>;

export const unnamedProgram: RunningProgram = { version: '0.0.0', runsOn: [] };

export const noNewsHere: Problem = {
  get where() {
    return say('program.news-of-later-versions');
  },
  get what() {
    return say('program.cannot-be-asked-for-this-build');
  },
  get fix() {
    return say('program.look-by-hand-where-you-have');
  },
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
