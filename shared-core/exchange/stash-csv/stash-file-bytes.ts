/** Bytes of a stash file as text, or what else they are. */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import { fileText } from '../file-text.ts';
import { defaultStashLimits } from './stash-lines.ts';

/** As many as are read: a letter may take several. */
export const maxStashBytes = defaultStashLimits.letterCount;

const saveAsCsv = () => say('stash-file-bytes.open-it-in-the-spreadsheet-and');
const otherFiles = (): readonly (readonly [readonly number[], string])[] => [
  [[0x50, 0x4b, 3, 4], say('stash-file-bytes.is-a-workbook-of-a-spreadsheet')],
  [[0xd0, 0xcf, 0x11, 0xe0], say('stash-file-bytes.is-an-old-workbook-of-a')],
  [[0x25, 0x50, 0x44, 0x46], say('stash-file-bytes.is-a-pdf')],
  [[0xff, 0xfe], say('stash-file-bytes.is-text-in-utf-16')],
  [[0xfe, 0xff], say('stash-file-bytes.is-text-in-utf-16')],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], say('stash-file-bytes.is-a-database-a-whole-workshop')],
];

/** UTF-8, with or without its mark, or Latin-1. */
export function stashFileText(bytes: Uint8Array): Result<string> {
  const where = say('common.the-file');
  if (bytes.length === 0)
    return err({ where, what: say('common.is-empty'), fix: say('stash-file-bytes.choose-another-file') });
  const other = otherFiles().find(([start]) => start.every((byte, index) => bytes[index] === byte));
  if (other) return err({ where, what: other[1], fix: saveAsCsv() });
  if (bytes.length > maxStashBytes) {
    const fix = say('stash-file-bytes.split-it-into-several-files-with');
    return err({
      where,
      what: say('stash-file-bytes.is-larger-than-mb', { maxStashBytes: maxStashBytes / 1e6 }),
      fix,
    });
  }
  if (bytes.includes(0)) return err({ where, what: say('common.is-not-text'), fix: saveAsCsv() });
  return ok(fileText(bytes));
}
