/** Bytes of a file as text, and what a file is by its first bytes when it is no text at all. */
import type { Problem } from '../measure/problem.ts';
import type { ReadLimits } from './pattern/pattern.ts';

/** Files that are often taken for a pattern: how they begin, what they are, and what to do instead. */
const otherFiles: readonly (readonly [string, string, string])[] = [
  ['AutoCAD Binary DXF', 'is a binary DXF', 'Save it as an ASCII (text) DXF.'],
  ['PK\x03\x04', 'is a zip archive', 'Unpack it and choose the pattern inside.'],
  ['\x1f\x8b', 'is compressed (gzip)', 'Unpack it, or save the drawing as plain SVG.'],
  ['7z\xbc\xaf', 'is a 7z archive', 'Unpack it and choose the pattern inside.'],
  ['Rar!', 'is a RAR archive', 'Unpack it and choose the pattern inside.'],
  ['%PDF', 'is a PDF, which does not say which of its lines are pieces', 'Save the pattern as DXF or SVG.'],
  ['AC10', 'is a DWG drawing', 'Save it as an ASCII (text) DXF.'],
  ['\x89PNG', 'is a picture', 'Choose a drawing: DXF or SVG.'],
  ['\xff\xd8\xff', 'is a photograph', 'Choose a drawing: DXF or SVG.'],
  ['\xff\xfe', 'is text in UTF-16', 'Save it as UTF-8.'],
  ['\xfe\xff', 'is text in UTF-16', 'Save it as UTF-8.'],
];

/** Why these bytes are not read at all; null when they may be text within the limits. */
export function bytesProblem(bytes: Uint8Array, limits: ReadLimits): Problem | null {
  const where = 'The file';
  if (bytes.length === 0) return { where, what: 'is empty', fix: 'Choose another file.' };
  const head = latinText(bytes.subarray(0, 24));
  const other = otherFiles.find(([start]) => head.startsWith(start));
  if (other) return { where, what: other[1], fix: other[2] };
  if (bytes.length > limits.byteCount) {
    return {
      where,
      what: `has ${Math.ceil(bytes.length / 1e6)} MB, more than the ${limits.byteCount / 1e6} MB that are read`,
      fix: 'Save fewer pieces or sizes in one file.',
    };
  }
  if (bytes.includes(0)) return { where, what: 'is not text', fix: 'Choose a DXF or SVG file.' };
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
