/**
 * Writes the icons of the installed app from the one drawing in resources/icon:
 *   npm run build:icons
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { iconFiles } from './icons.ts';

const folder = join(import.meta.dirname, '../../resources/icon');
mkdirSync(join(folder, 'linux'), { recursive: true });
for (const [name, bytes] of iconFiles(readFileSync(join(folder, 'icon.svg'), 'utf8'))) {
  writeFileSync(join(folder, name), bytes);
}
