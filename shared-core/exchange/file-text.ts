/** Bytes of a file as text, and what a file is by its first bytes when it is no text at all. */
import { say } from '../wording/say.ts';
import type { Problem } from '../measure/problem.ts';
import type { ReadLimits } from './pattern/pattern.ts';

/** Files that are often taken for a pattern: how they begin, what they are, and what to do instead. */
const otherFiles = (): readonly (readonly [string, string, string])[] => [
  ['AutoCAD Binary DXF', say('file-text.is-a-binary-dxf'), say('file-text.save-it-as-an-ascii-text')],
  ['PK\x03\x04', say('file-text.is-a-zip-archive'), say('file-text.unpack-it-and-choose-the-pattern')],
  ['\x1f\x8b', say('file-text.is-compressed-gzip'), say('file-text.unpack-it-or-save-the-drawing')],
  ['7z\xbc\xaf', say('file-text.is-a-7z-archive'), say('file-text.unpack-it-and-choose-the-pattern')],
  ['Rar!', say('file-text.is-a-rar-archive'), say('file-text.unpack-it-and-choose-the-pattern')],
  ['%PDF', say('file-text.is-a-pdf-which-does-not'), say('file-text.save-the-pattern-as-dxf-or')],
  ['AC10', say('file-text.is-a-dwg-drawing'), say('file-text.save-it-as-an-ascii-text')],
  ['\x89PNG', say('file-text.is-a-picture'), say('file-text.choose-a-drawing-dxf-or-svg')],
  ['\xff\xd8\xff', say('file-text.is-a-photograph'), say('file-text.choose-a-drawing-dxf-or-svg')],
  ['\xff\xfe', say('file-text.is-text-in-utf-16'), say('file-text.save-it-as-utf-8')],
  ['\xfe\xff', say('file-text.is-text-in-utf-16'), say('file-text.save-it-as-utf-8')],
];

/** Why these bytes are not read at all; null when they may be text within the limits. */
export function bytesProblem(bytes: Uint8Array, limits: ReadLimits): Problem | null {
  const where = say('common.the-file');
  if (bytes.length === 0)
    return { where, what: say('common.is-empty'), fix: say('file-text.choose-another-file') };
  const head = latinText(bytes.subarray(0, 24));
  const other = otherFiles().find(([start]) => head.startsWith(start));
  if (other) return { where, what: other[1], fix: other[2] };
  if (bytes.length > limits.byteCount) {
    return {
      where,
      what: say('file-text.has-mb-more-than-the-mb', {
        bytesCount: Math.ceil(bytes.length / 1e6),
        byteCount: limits.byteCount / 1e6,
      }),
      fix: say('file-text.save-fewer-pieces-or-sizes-in'),
    };
  }
  if (bytes.includes(0))
    return { where, what: say('common.is-not-text'), fix: say('file-text.choose-a-dxf-or-svg-file') };
  return null;
}

/** UTF-8 where the bytes are that, else one byte for each letter (Latin-1). A leading byte order sign falls away. */
export function fileText(bytes: Uint8Array): string {
  const body = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
  // Patterns are plain ASCII as a rule, which needs no decoding.
  return isAscii(body) ? latinText(body) : (utf8Text(body) ?? latinText(body));
}

const chunkSize = 8192;

function isAscii(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; i++) if (bytes[i]! >= 0x80) return false;
  return true;
}

/** Spreading a chunk into arguments is ten times slower than handing it over whole. */
function latinText(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += chunkSize)
    parts.push(String.fromCharCode.apply(null, bytes.subarray(i, i + chunkSize) as unknown as number[]));
  return parts.join('');
}

/** Null where the bytes are not UTF-8. */
function utf8Text(bytes: Uint8Array): string | null {
  const parts: string[] = [];
  let codes: number[] = [];
  let i = 0;
  while (i < bytes.length) {
    const first = bytes[i]!;
    const more = first < 0x80 ? 0 : first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : first >= 0xc2 ? 1 : -1;
    if (more < 0 || first > 0xf4) return null;
    let code = more === 0 ? first : first & (0x3f >> more);
    for (let k = 1; k <= more; k++) {
      const next = bytes[i + k];
      if (next === undefined || (next & 0xc0) !== 0x80) return null;
      code = (code << 6) | (next & 0x3f);
    }
    const min = [0, 0x80, 0x800, 0x10000][more]!;
    if (code < min || code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return null;
    codes.push(code);
    i += more + 1;
    if (codes.length >= chunkSize) {
      parts.push(String.fromCodePoint.apply(null, codes));
      codes = [];
    }
  }
  parts.push(String.fromCodePoint(...codes));
  return parts.join('');
}
