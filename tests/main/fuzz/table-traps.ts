/** Price lists, stash files, photos and backups that are made to take a reader's time or memory, each by one means. */
import { Buffer } from 'node:buffer';
import { jpeg } from '../../fixtures/pictures.ts';
import type { FileKind } from './fuzz-file.ts';

export interface BytesTrap {
  readonly kind: FileKind;
  readonly name: string;
  /** whole: a sound file of the kind. */
  readonly bytes: (whole: Buffer) => Uint8Array;
}

const many = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('\n');

const priceHeads = 'supplier,item,sold as,step or length (cm),width (cm),price (EUR),priced on,breaks';
const priced = (width: number | string, breaks = '') =>
  `Fernlow,Peatwater taffeta,by length,10,${width},1.15,2026-10-12,${breaks}`;
const stashHeads =
  'kind,name,width (mm),received on (year-month-day),price of the lot (EUR),received (in the unit)';
const list = (name: string, text: () => string): BytesTrap => ({
  kind: 'price list',
  name,
  bytes: () => Buffer.from(text()),
});
const stash = (name: string, text: () => string): BytesTrap => ({
  kind: 'stash file',
  name,
  bytes: () => Buffer.from(text()),
});
const photo = (name: string, bytes: () => Uint8Array): BytesTrap => ({ kind: 'photo', name, bytes });
const backup = (name: string, bytes: (whole: Buffer) => Uint8Array): BytesTrap => ({
  kind: 'backup',
  name,
  bytes,
});
const withBytes = (whole: Buffer, at: number, ...values: number[]): Buffer => {
  const changed = Buffer.from(whole);
  changed.set(values, at);
  return changed;
};

export const tableTraps: readonly BytesTrap[] = [
  list('five thousand offers of one supplier for one thing', () =>
    [priceHeads, many(5000, (i) => priced(10 + i / 10))].join('\n'),
  ),
  list('five thousand times the same offer', () => [priceHeads, many(5000, () => priced(147))].join('\n')),
  list('five thousand names of accents alone', () =>
    [priceHeads, many(5000, (i) => `${'\u0301'.repeat(300)}${i},x,by length,10,147,1,2026-10-12,`)].join(
      '\n',
    ),
  ),
  list('a cell of three million letters', () => [priceHeads, priced('x'.repeat(3e6))].join('\n')),
  list('a price break of half a million parts', () =>
    [priceHeads, priced(147, '1 = 1;'.repeat(5e5))].join('\n'),
  ),
  list('a quotation mark that is never closed before three million letters', () =>
    [priceHeads, `"${priced(147)}`, 'x\n'.repeat(1.5e6)].join('\n'),
  ),
  list('a million quotation marks in the midst of a cell', () =>
    [priceHeads, `"${'a"b'.repeat(1e6)}`].join('\n'),
  ),
  list('a million columns', () => `${priceHeads},${'x,'.repeat(1e6)}\n${priced(147)}`),
  list('two million blank lines', () => `${priceHeads}\n${'\n'.repeat(2e6)}${priced(147)}`),
  list('three million separating signs in one line', () => `${priceHeads}\n${','.repeat(3e6)}`),
  list('headings of brackets', () => `${'('.repeat(2e6)},supplier\nx,y`),
  stash('five thousand lots of one cloth', () =>
    [stashHeads, many(5000, (i) => `Cloth,Sedge lawn,1470,2026-03-27,12.50,${1000 + i}`)].join('\n'),
  ),
  stash('fifty thousand lines that say the same lot', () =>
    [`${stashHeads},lot mark`, many(50_000, () => 'Cloth,Sedge lawn,1470,2026-03-27,12.50,1000,L1')].join(
      '\n',
    ),
  ),
  stash('fifty thousand lines with all marks wrong', () =>
    [`${stashHeads},item mark`, many(50_000, (i) => `Cloth,x,1470,never,-1,none,${'m'.repeat(90)}${i}`)].join(
      '\n',
    ),
  ),
  stash('fifty thousand kinds that are none', () =>
    [stashHeads, many(50_000, (i) => `Kind ${i},x,1,2026-03-27,1,1`)].join('\n'),
  ),
  stash('a note of fifteen million letters', () =>
    [`${stashHeads},notes`, `Cloth,Lawn,1470,2026-03-27,1,1,${'x'.repeat(15e6)}`].join('\n'),
  ),
  stash('a million flaws', () =>
    [
      `${stashHeads},"flaws (mm: along, across, long, wide)"`,
      `Cloth,Lawn,1470,2026-03-27,1,1,${'1 1 1 1;'.repeat(1e6)}`,
    ].join('\n'),
  ),
  stash(
    'a quotation mark that is never closed before fifteen million letters',
    () => `${stashHeads}\n"${'x,\n'.repeat(5e6)}`,
  ),
  stash('two million quotation marks in the midst of a cell', () => `${stashHeads}\n"${'a"b'.repeat(2e6)}`),
  stash('three million columns', () => `kind,name${',x'.repeat(3e6)}\n`),
  stash('seven million blank lines', () => `${stashHeads}\n${'\r\n'.repeat(7e6)}`),
  photo('a picture of nothing but fill bytes', () => Buffer.alloc(2_900_000, 0xff).fill(0xd8, 1, 2)),
  photo('half a million empty comments', () =>
    Buffer.concat([
      jpeg(20, 20).subarray(0, 2),
      Buffer.from('fffe0002'.repeat(5e5), 'hex'),
      jpeg(20, 20).subarray(2),
    ]),
  ),
  photo('a hundred thousand tables', () => {
    const whole = jpeg(20, 20);
    const table = whole.subarray(
      whole.indexOf(Buffer.from([0xff, 0xc4])),
      whole.indexOf(Buffer.from([0xff, 0xda])),
    );
    return Buffer.concat([
      whole.subarray(0, 2),
      ...Array.from({ length: 60_000 }, () => table),
      whole.subarray(2),
    ]);
  }),
  photo('a picture of four thousand million points', () => {
    const whole = jpeg(20, 20);
    return withBytes(whole, whole.indexOf(Buffer.from([0xff, 0xc0])) + 5, 0xff, 0xff, 0xff, 0xff);
  }),
  photo('a hundred thousand scans', () => {
    const whole = jpeg(20, 20);
    const scan = whole.subarray(whole.indexOf(Buffer.from([0xff, 0xda])), -2);
    return Buffer.concat([
      whole.subarray(0, -2),
      ...Array.from({ length: 100_000 }, () => scan),
      whole.subarray(-2),
    ]);
  }),
  backup('nothing', () => Buffer.alloc(0)),
  backup('a head alone', (whole) => whole.subarray(0, 100)),
  backup('twenty million zeros', () => Buffer.alloc(20e6)),
  backup('pages of no size', (whole) => withBytes(whole, 16, 0, 0)),
  backup('pages of another size', (whole) => withBytes(whole, 16, 0x02, 0x00)),
  backup('four thousand million pages', (whole) => withBytes(whole, 28, 0xff, 0xff, 0xff, 0xff)),
  backup('a version of the far future', (whole) => withBytes(whole, 60, 0x7f, 0xff, 0xff, 0xff)),
  backup('another program', (whole) => withBytes(whole, 68, 1, 2, 3, 4)),
  backup('a first page that points to itself', (whole) =>
    withBytes(whole, 100, 5, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1),
  ),
  backup('every second page gone', (whole) => {
    const size = whole.readUInt16BE(16);
    const holed = Buffer.from(whole);
    for (let at = size; at < holed.length; at += 2 * size) holed.fill(0, at, at + size);
    return holed;
  }),
];
