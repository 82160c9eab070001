/** Whole files spoiled by accident and on purpose, the same ones for the same seed. */

export type Random = () => number;

type Mutate = (bytes: Buffer, random: Random, other: Buffer) => Buffer;

const upTo = (random: Random, max: number): number => Math.floor(random() * max);
const oneOf = <Thing>(random: Random, things: readonly Thing[]): Thing =>
  things[upTo(random, things.length)]!;

/** Begin and end of a stretch, most of them short. */
function stretch(bytes: Buffer, random: Random): readonly [number, number] {
  const from = upTo(random, bytes.length + 1);
  const longest = oneOf(random, [4, 40, 400, bytes.length]);
  return [from, Math.min(bytes.length, from + 1 + upTo(random, longest))];
}

function put(bytes: Buffer, at: number, end: number, instead: Buffer): Buffer {
  return Buffer.concat([bytes.subarray(0, at), instead, bytes.subarray(end)]);
}

const oddNumbers = [
  '999999999999999999999',
  '-999999999',
  '-1',
  '0',
  '1e308',
  '1e-308',
  '1e999',
  'NaN',
  'Infinity',
  '-0',
  '0x7fffffff',
  '',
  '2147483648',
  '4294967296',
  '0.00000000000000000001',
  '1,5',
  '1.2.3',
  '٣',
  '½',
];

const oddWords = [
  '"',
  '""',
  '"\n',
  "'",
  '<',
  '>',
  '</g>',
  '<g>',
  '&amp;',
  '&x;',
  '<![CDATA[',
  ']]>',
  '<!--',
  '-->',
  ',',
  ';',
  '\t',
  '\r',
  '\n\n',
  '\0',
  '0\nENDSEC\n',
  '0\nEOF\n',
  '0\nINSERT\n2\nX\n',
  '=1+1',
  '__proto__',
  'constructor',
  'transform="scale(1e300)"',
  'M0 0',
  'Z',
  '(',
  '{',
  '\u202e',
  '\ud83e\udea1',
  '\ufeff',
];

/** Texts as another program might encode them. */
const encodings: readonly ((text: string) => Buffer)[] = [
  (text) => Buffer.from(`\ufeff${text}`, 'utf16le'),
  (text) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16(),
  (text) => Buffer.from(text, 'utf16le'),
  (text) => Buffer.from(text, 'latin1'),
  (text) => Buffer.from(`\ufeff${text}`, 'utf8'),
  (text) => Buffer.from(text.replaceAll('\n', '\r\n')),
  (text) => Buffer.from(text.replaceAll('\n', '\r')),
  (text) => Buffer.from(text.replaceAll('\r\n', '\n')),
];

const mutations: readonly (readonly [string, Mutate])[] = [
  [
    'bits turned',
    (bytes, random) => {
      const turned = Buffer.from(bytes);
      for (let i = 1 + upTo(random, 8); i > 0 && turned.length > 0; i--)
        turned[upTo(random, turned.length)]! ^= 1 << upTo(random, 8);
      return turned;
    },
  ],
  [
    'bytes changed',
    (bytes, random) => {
      const changed = Buffer.from(bytes);
      for (let i = 1 + upTo(random, 20); i > 0 && changed.length > 0; i--)
        changed[upTo(random, changed.length)] = oneOf(random, [0, 255, 127, 10, 34, upTo(random, 256)]);
      return changed;
    },
  ],
  ['cut short', (bytes, random) => bytes.subarray(0, upTo(random, bytes.length + 1))],
  [
    'a stretch gone',
    (bytes, random) => {
      const [from, to] = stretch(bytes, random);
      return put(bytes, from, to, Buffer.alloc(0));
    },
  ],
  [
    'a stretch many times',
    (bytes, random) => {
      const [from, to] = stretch(bytes, random);
      const times = oneOf(random, [1, 2, 3, 50]);
      return put(bytes, to, to, Buffer.concat(Array.from({ length: times }, () => bytes.subarray(from, to))));
    },
  ],
  [
    'two stretches swapped',
    (bytes, random) => {
      const [a, b] = stretch(bytes, random);
      const [c, d] = stretch(bytes, random);
      if (b > c) return put(bytes, a, b, bytes.subarray(c, d));
      const parts = [bytes.subarray(0, a), bytes.subarray(c, d), bytes.subarray(b, c), bytes.subarray(a, b)];
      return Buffer.concat([...parts, bytes.subarray(d)]);
    },
  ],
  [
    'a stretch of another file',
    (bytes, random, other) => {
      const [from, to] = stretch(other, random);
      const [at, end] = stretch(bytes, random);
      return put(bytes, at, end, other.subarray(from, to));
    },
  ],
  [
    'numbers changed',
    (bytes, random) => {
      const text = bytes.toString('latin1');
      const places = [...text.matchAll(/-?\d+(?:\.\d+)?/g)];
      if (places.length === 0) return bytes;
      let changed = bytes;
      const few = Array.from({ length: 1 + upTo(random, 4) }, () => oneOf(random, places));
      for (const place of few.sort((a, b) => b.index - a.index))
        changed = put(
          changed,
          place.index,
          place.index + place[0].length,
          Buffer.from(oneOf(random, oddNumbers)),
        );
      return changed;
    },
  ],
  [
    'odd words put in',
    (bytes, random) => {
      let changed = bytes;
      for (let i = 1 + upTo(random, 4); i > 0; i--) {
        const at = upTo(random, changed.length + 1);
        changed = put(changed, at, at, Buffer.from(oneOf(random, oddWords)));
      }
      return changed;
    },
  ],
  [
    'opened and never closed',
    (bytes, random) => {
      const at = upTo(random, bytes.length + 1);
      const word = oneOf(random, ['<g>', '"', '(', '0\nBLOCK\n2\nB\n', '<svg>', '[', '{', 'translate(']);
      return put(bytes, at, at, Buffer.from(word.repeat(1 + upTo(random, 3000))));
    },
  ],
  ['another encoding', (bytes, random) => oneOf(random, encodings)(bytes.toString())],
];

/** One spoiled file: up to three mutations of a whole one. other: any whole file to take stretches from. */
export function mutant(
  whole: Buffer,
  other: Buffer,
  random: Random,
): { readonly bytes: Buffer; readonly how: string } {
  let bytes = whole;
  const how: string[] = [];
  for (let i = 1 + upTo(random, 3); i > 0; i--) {
    const [name, mutate] = oneOf(random, mutations);
    bytes = mutate(bytes, random, other);
    how.push(name);
  }
  return { bytes, how: how.join(', ') };
}
