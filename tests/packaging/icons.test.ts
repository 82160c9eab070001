import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Icns } from '@fiahfy/icns';
import { Ico } from '@fiahfy/ico';
import { expect, test } from 'vitest';
import { root } from '../../main/launch/install.mjs';
import { iconFiles, linuxSizesPx } from './icons.ts';

const folder = join(root, 'resources/icon');

/** Width and height as a PNG's head gives them. */
function pngSizePx(bytes: Uint8Array): [number, number] {
  const view = Buffer.from(bytes);
  expect(view.subarray(1, 4).toString('latin1')).toBe('PNG');
  return [view.readUInt32BE(16), view.readUInt32BE(20)];
}

test('the icons that are kept are those of the drawing as it is', () => {
  for (const [name, bytes] of iconFiles(readFileSync(join(folder, 'icon.svg'), 'utf8'))) {
    expect(Buffer.compare(readFileSync(join(folder, name)), bytes), `${name}: npm run build:icons`).toBe(0);
  }
});

test('each system finds the sizes that it shows', () => {
  const icns = Icns.from(readFileSync(join(folder, 'icon.icns')));
  const retina = icns.images.find(({ osType }) => osType === 'ic10')!;
  expect(pngSizePx(retina.image)).toEqual([1024, 1024]);
  const ico = Ico.from(readFileSync(join(folder, 'icon.ico')));
  expect(ico.infoHeaders.map(({ width }) => width || 256)).toEqual([16, 24, 32, 48, 64, 128, 256]);
  for (const sizePx of linuxSizesPx) {
    const png = readFileSync(join(folder, 'linux', `${sizePx}x${sizePx}.png`));
    expect(pngSizePx(png)).toEqual([sizePx, sizePx]);
  }
});
