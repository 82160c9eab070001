/** The typeface's files, read from where they lie. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TypefaceFiles } from '../../../shared-core/paper/typeface.ts';

const folder = join(import.meta.dirname, '..', '..', '..', 'resources', 'typeface');

export const typefaceFiles: TypefaceFiles = {
  regular: new Uint8Array(readFileSync(join(folder, 'noto-sans-regular.ttf'))),
  bold: new Uint8Array(readFileSync(join(folder, 'noto-sans-bold.ttf'))),
};
