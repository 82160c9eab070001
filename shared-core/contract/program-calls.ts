/** The calls about the program itself: its versions and places, and news of a later version. */
import { z } from 'zod';

const nothing = z.strictObject({});

export const programCalls = {
  /** Versions and places, for Settings. */
  programFacts: { changes: false, input: nothing },
  /** Asks the one address that this build knows, once. Only ever at the maker's own word. */
  askForNews: { changes: false, input: nothing },
} as const;

export interface ProgramFacts {
  readonly version: string;
  /** What it runs on, such as Electron and Node, with their versions. */
  readonly runsOn: readonly { readonly name: string; readonly version: string }[];
  /** Absolute; the data file and its backups lie there. */
  readonly folder: string;
  /** Absolute, there or not: it is made at the first failure. */
  readonly logFile: string;
  /** Where news of later versions would be asked for; null in a build that knows no such place. */
  readonly newsAddress: string | null;
}

/** A later version, as its makers have signed it. */
export interface ReleaseNews {
  readonly version: string;
  /** ISO date. */
  readonly date: string;
  readonly words: string;
}

export interface ProgramOutputs {
  programFacts: ProgramFacts;
  /** null: there is no later version. */
  askForNews: { readonly news: ReleaseNews | null };
}
