/** Bytes of a stash file as text, or what else they are. */
import { ok, type Result, err } from '../../measure/problem.ts';
import { fileText } from '../file-text.ts';
import { defaultStashLimits } from './stash-lines.ts';

/** As many as are read: a letter may take several. */
export const maxStashBytes = defaultStashLimits.letterCount;

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
export function stashFileText(bytes: Uint8Array): Result<string> {
  const where = 'The file';
  if (bytes.length === 0) return err({ where, what: 'is empty', fix: 'Choose another file.' });
  const other = otherFiles.find(([start]) => start.every((byte, index) => bytes[index] === byte));
  if (other) return err({ where, what: other[1], fix: saveAsCsv });
  if (bytes.length > maxStashBytes) {
    const fix = 'Split it into several files with the same headings, and bring them in one after the other.';
    return err({ where, what: `is larger than ${maxStashBytes / 1e6} MB`, fix });
  }
  if (bytes.includes(0)) return err({ where, what: 'is not text', fix: saveAsCsv });
  return ok(fileText(bytes));
}
