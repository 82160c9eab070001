/** The icons of the installed app, all from one drawing. */
import { Icns, IcnsImage } from '@fiahfy/icns';
import { Ico, IcoImage } from '@fiahfy/ico';
import { Resvg } from '@resvg/resvg-js';

/** The desktop asks for these on Linux; the names are what electron-builder looks for. */
export const linuxSizesPx = [16, 32, 48, 64, 128, 256, 512];
const windowsSizesPx = [16, 24, 32, 48, 64, 128, 256];
/** Kinds of picture in an ICNS file, with their sizes; the second of a size is for screens of double density. */
const macKinds = [
  ['ic04', 16],
  ['ic11', 32],
  ['ic05', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
  ['ic10', 1024],
] as const;

/** Each file by its name within resources/icon. svg: a square drawing. */
export function iconFiles(svg: string): Map<string, Uint8Array> {
  const drawn = new Map<number, Buffer>();
  const png = (sizePx: number): Buffer => {
    const known = drawn.get(sizePx);
    if (known !== undefined) return known;
    const made = Buffer.from(new Resvg(svg, { fitTo: { mode: 'width', value: sizePx } }).render().asPng());
    drawn.set(sizePx, made);
    return made;
  };
  const ico = new Ico();
  for (const sizePx of windowsSizesPx) ico.append(IcoImage.fromPNG(png(sizePx)));
  const icns = new Icns();
  for (const [kind, sizePx] of macKinds) icns.append(IcnsImage.fromPNG(png(sizePx), kind));
  return new Map<string, Uint8Array>([
    ['icon.ico', ico.data],
    ['icon.icns', icns.data],
    ['icon.png', png(512)],
    ...linuxSizesPx.map((sizePx): [string, Uint8Array] => [`linux/${sizePx}x${sizePx}.png`, png(sizePx)]),
  ]);
}
