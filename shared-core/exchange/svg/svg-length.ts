/** Lengths in the attributes of an SVG. */

/** 96 pixels to the inch: CSS Values and Units (from memory). */
export const pixelMm = 25.4 / 96;

const unitMm: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  q: 0.25,
};

export interface SvgLength {
  readonly value: number;
  /** '' or "px" for units of the drawing, else in lower case. */
  readonly unit: string;
}

/** Null for what is no number with a length's unit behind it: shares of the page and of letters are none here. */
export function svgLength(text: string): SvgLength | null {
  if (text.length > 60) return null;
  const match = /^\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)(px|mm|cm|in|pt|pc|q)?\s*$/i.exec(text);
  if (!match) return null;
  const value = Number(match[1]);
  return Number.isFinite(value) ? { value, unit: (match[2] ?? '').toLowerCase() } : null;
}

/** In units of the drawing, where a real length is as many as its pixels; NaN for what cannot be read. */
export function inUnits(length: SvgLength | null): number {
  if (!length) return Number.NaN;
  const mm = unitMm[length.unit];
  return mm === undefined ? length.value : (length.value * mm) / pixelMm;
}

/** Null for pixels, shares and what cannot be read, or is not above 0: those say nothing about cloth. */
export function realMm(text: string | undefined): number | null {
  const length = svgLength(text ?? '');
  const mm = length ? unitMm[length.unit] : undefined;
  return length && mm !== undefined && length.value > 0 ? length.value * mm : null;
}
