/** The usual folder of the workshop's files, which other people of this machine have no business in. */
import { chmodSync, mkdirSync } from 'node:fs';

/** Makes the folder where it is missing and closes it, with all that lies in it, to everybody but its owner. */
export function openOwnFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  try {
    chmodSync(folder, 0o700);
  } catch {
    // A disk that knows no such rights has none to take away.
  }
}
