/**
 * The typeface of every PDF: Noto Sans, which has all letters of the Latin, Greek, Cyrillic and Devanagari scripts.
 * What a file writes is embedded in it, and no more, so a list takes some 20 kB.
 */
import fontkit, { type Font, type Glyph } from '@cantoo/fontkit';
import type { PDFDocument, PDFFont } from '@cantoo/pdf-lib';
import { plainLetters } from './plain-letters.ts';

/** The bytes of resources/typeface; how they are read is the door's affair. */
export interface TypefaceFiles {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export interface Face {
  readonly font: PDFFont;
  /** How wide a text is at a size, points. The text is one that `letters` gave. */
  readonly widthPt: (text: string, sizePt: number) => number;
}

export interface Typeface {
  readonly regular: Face;
  readonly bold: Face;
  /** A text as it can be written; letters that the typeface lacks come into `missing`. */
  readonly letters: (text: string) => string;
  readonly missing: ReadonlySet<string>;
}

/** What a PDF gives its caller: the file, and the letters that stand in it as ?. */
export interface WrittenPdf {
  readonly bytes: Uint8Array;
  readonly missingLetters: readonly string[];
}

/** A typeface is read once, whatever number of files is written in it: its tables take longer than a list. */
const fonts = new WeakMap<Uint8Array, Font>();

/** Scripts whose signs are joined or set in another order. Of all others a text is its letters one after the other. */
const shaped = /[\p{M}\p{Script=Devanagari}]/u;

function fontOf(bytes: Uint8Array): Font {
  const known = fonts.get(bytes);
  if (known) return known;
  const font = fontkit.create(bytes) as Font;
  // The library keeps a glyph as it was first met, at times as a part of another and so without the letter that it
  // stands for. What a reader copies from the file is that letter, so each is told its own.
  const glyphs = new Map<number, Glyph>();
  const glyphOf = (codePoint: number): Glyph => {
    const known = glyphs.get(codePoint);
    if (known) return known;
    const glyph: Glyph = Object.create(font.glyphForCodePoint(codePoint), {
      codePoints: { value: [codePoint] },
    });
    glyphs.set(codePoint, glyph);
    return glyph;
  };
  // Of its own for the same reason: nothing but shaped texts comes before it.
  let shaper: Font | null = null;
  // Shaping each text by the rules of all scripts took most of the time that a list takes.
  font.layout = (text, ...others) => {
    if (shaped.test(text)) {
      shaper ??= fontkit.create(bytes) as Font;
      return shaper.layout(text, ...others);
    }
    const row = [...text].map((letter) => glyphOf(letter.codePointAt(0) ?? 0));
    return { glyphs: row } as unknown as ReturnType<Font['layout']>;
  };
  fonts.set(bytes, font);
  return font;
}

export async function embedTypeface(pdf: PDFDocument, files: TypefaceFiles): Promise<Typeface> {
  pdf.registerFontkit({ create: fontOf });
  const embed = async (bytes: Uint8Array) => faceOf(await pdf.embedFont(bytes, { subset: true }));
  const regular = await embed(files.regular);
  const bold = await embed(files.bold);
  const known = new Set(regular.font.getCharacterSet());
  const missing = new Set<string>();
  const letters = (text: string): string => {
    const written = plainLetters(text, (codePoint) => known.has(codePoint));
    for (const letter of written.changed) missing.add(letter);
    return written.text;
  };
  return { regular, bold, letters, missing };
}

function faceOf(font: PDFFont): Face {
  const widths = new Map<string, number>();
  const ofWord = (word: string): number => {
    const known = widths.get(word);
    if (known !== undefined) return known;
    const width = font.widthOfTextAtSize(word, 1);
    widths.set(word, width);
    return width;
  };
  return {
    font,
    widthPt: (text, sizePt) => {
      const words = text.split(' ');
      const wide = words.reduce((sum, word) => sum + (word === '' ? 0 : ofWord(word)), 0);
      return (wide + (words.length - 1) * ofWord(' ')) * sizePt;
    },
  };
}
