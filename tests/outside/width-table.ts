/**
 * The classic table of cloth lengths at other widths: a comparison beside our lays, never a rule of ours.
 * Lengths in eighths of a yard, widths in inches at the wider end of each column.
 * Source: conversion table printed at sewwithsarah.com; a second copy agrees in 95 of 96 cells.
 */
export const widthTableWidthsIn = [36, 39, 41, 45, 50, 54, 60, 66] as const;

export const widthTableEighths: readonly (readonly number[])[] = [
  [14, 12, 12, 11, 10, 9, 8, 7],
  [16, 14, 14, 13, 12, 11, 10, 9],
  [18, 16, 16, 14, 13, 12, 11, 10],
  [20, 18, 18, 17, 14, 14, 13, 12],
  [23, 20, 20, 18, 16, 15, 14, 13],
  [25, 22, 22, 20, 18, 16, 15, 14],
  [27, 24, 23, 22, 19, 18, 16, 15],
  [30, 26, 25, 23, 21, 19, 18, 17],
  [34, 28, 27, 25, 22, 21, 19, 18],
  [36, 30, 29, 27, 24, 22, 21, 20],
  [38, 32, 31, 29, 26, 23, 22, 21],
  [40, 34, 33, 31, 27, 25, 23, 22],
];

/** Added for a large difference of widths, one-way cloth, or sleeves cut in one with the body, yd. Same source. */
export const widthTableExtraYd = 0.25;

/** Length that holds the same area at another width. Throws when a width is not above 0. */
export function sameAreaLengthMm(lengthMm: number, widthMm: number, otherWidthMm: number): number {
  if (!(widthMm > 0) || !(otherWidthMm > 0))
    throw new RangeError(`cloth ${widthMm} and ${otherWidthMm} mm wide`);
  return (lengthMm * widthMm) / otherWidthMm;
}

/**
 * What the table says for a length at one width when the cloth is of another, mm: the row at or above the length,
 * the column at or below each width (narrower is safe). Null where the table does not reach.
 */
export function tableLengthMm(lengthMm: number, widthMm: number, otherWidthMm: number): number | null {
  const from = columnOf(widthMm);
  const to = columnOf(otherWidthMm);
  if (from === null || to === null) return null;
  const eighths = lengthMm / 114.3;
  const row = widthTableEighths.find((candidate) => candidate[from]! >= eighths - 1e-6);
  return row ? row[to]! * 114.3 : null;
}

/** The widest column that the cloth fills. */
function columnOf(widthMm: number): number | null {
  const index = widthTableWidthsIn.findLastIndex((widthIn) => widthMm >= widthIn * 25.4 - 1e-6);
  return index < 0 ? null : index;
}
