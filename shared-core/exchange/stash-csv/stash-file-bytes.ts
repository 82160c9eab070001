/** Bytes of a stash file as text, or what else they are. */
import { found, type Outcome, refused } from '../../measure/problem.ts';
import { fileText } from '../file-text.ts';
import { usualStashLimits } from './stash-lines.ts';

/** As many as are read: a letter may take several. */
export const mostStashBytes = usualStashLimits.letterCount;

const saveAsCsv = 'Open it in the spreadsheet and save the sheet as CSV (UTF-8).';
const otherFiles: readonly (readonly [readonly number[], string])[] = [
  [[0x50, 0x4b, 3, 4], 'is a workbook of a spreadsheet (or a zip archive), not a CSV'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'is an old workbook of a spreadsheet, not a CSV'],
  [[0x25, 0x50, 0x44, 0x46], 'is a PDF'],
  [[0xff, 0xfe], 'is text in UTF-16'],
  [[0xfe, 0xff], 'is text in UTF-16'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'is a database: a whole workshop is brought back under Settings'],
];

/** UTF-8, with or without its mark, or Latin-1. */
export function stashFileText(bytes: Uint8Array): Outcome<string> {
  const where = 'The file';
  if (bytes.length === 0) return refused({ where, what: 'is empty', mend: 'Choose another file.' });
  const other = otherFiles.find(([start]) => start.every((byte, index) => bytes[index] === byte));
  if (other) return refused({ where, what: other[1], mend: saveAsCsv });
  if (bytes.length > mostStashBytes) {
    const mend = 'Split it into several files with the same headings, and bring them in one after the other.';
    return refused({ where, what: `is larger than ${mostStashBytes / 1e6} MB`, mend });
  }
  if (bytes.includes(0)) return refused({ where, what: 'is not text', mend: saveAsCsv });
  return found(fileText(bytes));
}
