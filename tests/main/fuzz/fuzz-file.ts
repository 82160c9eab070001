/** A file that is given to one of the program's readers. */

export const fileKinds = [
  'DXF',
  'SVG',
  'price list',
  'stash file',
  'photo',
  'backup',
  'typed texts',
] as const;
export type FileKind = (typeof fileKinds)[number];

export interface FuzzFile {
  readonly kind: FileKind;
  /** Tells it from all others of a run, so that it can be made again. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What became of a file. */
export type Verdict = 'refused' | 'taken' | 'crashed' | 'hung' | 'over memory' | 'changed data';

export interface Judged {
  readonly verdict: Verdict;
  /** In words, for what must not be; else ''. */
  readonly why: string;
}

/** The readers of a workshop of its own in a folder of its own. */
export interface Readers {
  /** Only looks at it: a preview, or the reading itself where nothing is saved. True: it would be taken. */
  look(file: FuzzFile): Promise<boolean>;
  /** Saves what it brings. False: it was refused. */
  take(file: FuzzFile): Promise<boolean>;
  /** Everything that the workshop holds, as one text. */
  contents(): string;
  /** Mistakes of the program that a reader swallowed since this was asked last. */
  failures(): readonly unknown[];
  close(): void;
}

export type OpenReaders = (folder: string) => Promise<Readers>;
