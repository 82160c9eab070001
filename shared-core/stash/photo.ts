/** The photo of an item's swatch: how large it may be, and what its own first bytes say of it. */

/** The longer side. */
export const mostPhotoSidePx = 640;
/** So that a stash of some hundred photos stays a file of some ten megabytes. */
export const mostPhotoBytes = 200_000;

export interface PictureFacts {
  readonly mediaType: 'image/jpeg' | 'image/webp';
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * What a JPEG or WebP file says of itself; null for anything else, and where the file stops short.
 *
 * Sources: ITU-T T.81 (frame header, B.2.2); RFC 9649 (WebP), RFC 6386 (key frame of VP8, 9.1).
 */
export function pictureFacts(bytes: Uint8Array): PictureFacts | null {
  const size = jpegSize(bytes);
  if (size) return { mediaType: 'image/jpeg', ...size };
  const webp = webpSize(bytes);
  return webp && { mediaType: 'image/webp', ...webp };
}

type Size = Pick<PictureFacts, 'widthPx' | 'heightPx'>;

/** Walks the segments up to the frame header. */
function jpegSize(bytes: Uint8Array): Size | null {
  const view = viewOf(bytes);
  const end = bytes.length - 2;
  if (end < 2 || view.getUint16(0) !== 0xffd8 || view.getUint16(end) !== 0xffd9) return null;
  let at = 2;
  while (at + 9 <= end && bytes[at] === 0xff) {
    const code = bytes[at + 1]!;
    if (isFrame(code)) return sizeOf(view.getUint16(at + 7), view.getUint16(at + 5));
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

/** SOF0 to SOF15; C4, C8 and CC lie among them and are tables, reserved and arithmetic conditioning. */
function isFrame(code: number): boolean {
  return code >= 0xc0 && code <= 0xcf && code !== 0xc4 && code !== 0xc8 && code !== 0xcc;
}

function webpSize(bytes: Uint8Array): Size | null {
  if (bytes.length < 30 || letters(bytes, 0) !== 'RIFF' || letters(bytes, 8) !== 'WEBP') return null;
  const view = viewOf(bytes);
  if (view.getUint32(4, true) + 8 !== bytes.length) return null;
  switch (letters(bytes, 12)) {
    case 'VP8 ':
      return sizeOf(view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff);
    case 'VP8L': {
      const packed = view.getUint32(21, true);
      return sizeOf((packed & 0x3fff) + 1, ((packed >>> 14) & 0x3fff) + 1);
    }
    case 'VP8X':
      return sizeOf((view.getUint32(24, true) & 0xffffff) + 1, (view.getUint32(26, true) >>> 8) + 1);
    default:
      return null;
  }
}

function sizeOf(widthPx: number, heightPx: number): Size | null {
  return widthPx > 0 && heightPx > 0 ? { widthPx, heightPx } : null;
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function letters(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
