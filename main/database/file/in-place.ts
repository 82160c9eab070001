/**
 * Whether an open file still stands under its name. One that was removed or replaced goes on taking entries, and they
 * are gone with it when it is closed: so each entry asks before it begins, and again before it is answered.
 */
import { statSync } from 'node:fs';

export class FileNotInPlace extends Error {
  readonly code = 'FILE_NOT_IN_PLACE';
}

/** To be called once the file's log (-wal) is there. What it gives throws a FileNotInPlace from then on where either is another. */
export function placeWatch(file: string): () => void {
  const names = [file, `${file}-wal`];
  const before = names.map(identity);
  return () => {
    if (names.some((name, index) => identity(name) !== before[index])) throw new FileNotInPlace();
  };
}

function identity(path: string): string {
  const facts = statSync(path, { bigint: true, throwIfNoEntry: false });
  return facts ? `${facts.dev} ${facts.ino}` : '';
}
