/** The calls about the program itself: its versions and places, and news of a later version. */
import { say } from '../wording/say.ts';
import { z } from 'zod';

const nothing = z.strictObject({});

export const programCalls = {
  /** Versions and places, for Settings. */
  programFacts: { changes: false, input: nothing },
  /** Asks the one address that this build knows, once. Only ever at the maker's own word. */
  askForNews: { changes: false, input: nothing },
  /** Where the workshop is kept now, and from the next start. */
  readSharing: { changes: false, input: nothing },
  /** Chooses the address of a shared workshop for the next starts, once it was reached; null goes back to the file. */
  shareWorkshop: {
    changes: true,
    input: z.strictObject({
      address: z
        .string()
        .max(1000)
        .regex(/^postgres(ql)?:\/\//i, {
          error: () => say('program-calls.is-not-an-address'),
        })
        .nullable(),
    }),
  },
} as const;

export interface Sharing {
  /** The file, or the address without its password. */
  readonly now: string;
  /** Without its password; null: the file. */
  readonly chosenAddress: string | null;
  /** Whether the system's key store keeps the password; else a file does that only its owner may read. */
  readonly isSecretSealed: boolean;
}

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
  readSharing: Sharing;
  shareWorkshop: Sharing;
}
