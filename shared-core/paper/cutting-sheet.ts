/**
 * A cutting sheet as data: one part for each length that is cut, with its lay in mm (x from the start of the length,
 * y from its lower selvage inwards), and how it comes onto pages.
 */
import type { MeasureSystem } from '../measure/quantity.ts';
import type { PaperTable } from './paper-table.ts';
import type { SheetPoint } from './tiles.ts';

export interface SheetPiece {
  /** Of the placement, from 1 for each length: the table names what the drawing has no room for. */
  readonly number: number;
  readonly name: string;
  /** As it is cut. */
  readonly ring: readonly SheetPoint[];
  /** What is left of it after quilting; absent: all of it. */
  readonly keptRing?: readonly SheetPoint[];
  /** Where its two halves meet, for a piece that is drafted to a fold; absent: it has none. */
  readonly fold?: readonly SheetPoint[];
  /** Where its grain points, degrees counter-clockwise from the length of the cloth. */
  readonly grainDeg: number;
}

export interface SheetRect {
  readonly x: number;
  readonly y: number;
  readonly widthX: number;
  readonly widthY: number;
}

export interface CuttingPart {
  /** "Shell: Peatwater nylon". */
  readonly title: string;
  /** Which length, how wide, how much of it is used. */
  readonly facts: string;
  /** Usable; selvages lie beyond it on both sides. Of folded cloth: from the fold to the selvage. */
  readonly widthMm: number;
  readonly selvageMm: number;
  readonly usedMm: number;
  readonly isFolded: boolean;
  readonly flaws: readonly SheetRect[];
  readonly pieces: readonly SheetPiece[];
  /** Where each piece lies, which pieces these are, and how they are quilted; without titles of their own. */
  readonly tables: readonly PaperTable[];
}

/** Selvages and all. */
export function wholeWidthMm({ widthMm, selvageMm, isFolded }: CuttingPart): number {
  return widthMm + selvageMm * (isFolded ? 1 : 2);
}

/** What the lower edge of the length is called. */
export function lowerEdge({
  selvageMm,
  isFolded,
}: Pick<CuttingPart, 'selvageMm' | 'isFolded'>): 'fold' | 'selvage' | 'edge' {
  return isFolded ? 'fold' : selvageMm > 0 ? 'selvage' : 'edge';
}

export interface CuttingSheet {
  readonly title: string;
  readonly system: MeasureSystem;
  readonly parts: readonly CuttingPart[];
}

/** One to so many; a maker reads 1:20 at arm's length. Smaller ones are for cloth wider than any that is woven. */
const scales = [10, 12, 15, 20, 25, 30, 40, 60, 100] as const;
const smallestGood = 20;

/** What a page repeats of the page before, mm of cloth. */
export const overlapMm = 100;

export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/**
 * The scale that the width of the cloth has room at and that needs the fewest pages; of several the largest.
 * room: for the drawing, mm of paper.
 */
export function drawingScale(
  { widthMm, lengthMm }: { readonly widthMm: number; readonly lengthMm: number },
  room: { readonly widthMm: number; readonly heightMm: number },
): number {
  const fitting = scales.filter((scale) => widthMm / scale <= room.heightMm);
  const good = fitting.filter((scale) => scale <= smallestGood);
  const candidates = good.length > 0 ? good : fitting.slice(0, 1);
  const pages = (scale: number) => stretchesOf(lengthMm, room.widthMm * scale).length;
  return candidates.reduce(
    (best, scale) => (pages(scale) < pages(best) ? scale : best),
    candidates[0] ?? 100,
  );
}

/** Stretches of the length, one for each page, alike in length; each begins `overlapMm` before the one before it ends. */
export function stretchesOf(lengthMm: number, maxMm: number): readonly Stretch[] {
  const count = lengthMm <= maxMm ? 1 : Math.ceil((lengthMm - overlapMm) / (maxMm - overlapMm));
  const eachMm = (lengthMm + (count - 1) * overlapMm) / count;
  return Array.from({ length: count }, (_, index) => {
    const fromMm = index * (eachMm - overlapMm);
    return { fromMm, toMm: index === count - 1 ? lengthMm : fromMm + eachMm };
  });
}

export interface RulerMark {
  readonly atMm: number;
  readonly label: string;
  readonly hasLabel: boolean;
  /** At each metre, or each yard. */
  readonly isWhole: boolean;
}

/**
 * Marks by 10 cm or 4 in that lie in the stretch, with their number.
 * apartMm: what the numbers need from one to the next; where marks stand closer, only some have one.
 */
export function rulerMarks(
  { fromMm, toMm }: Stretch,
  system: MeasureSystem,
  apartMm: number,
): readonly RulerMark[] {
  const { partMm, part, whole, steps } =
    system === 'metric'
      ? { partMm: 100, part: 10, whole: 10, steps: [1, 2, 5, 10] }
      : { partMm: 101.6, part: 4, whole: 9, steps: [1, 3, 9] };
  const labelEvery = steps.find((step) => step * partMm >= apartMm) ?? whole;
  const first = Math.ceil(fromMm / partMm - 1e-9);
  const last = Math.floor(toMm / partMm + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => {
    const count = first + index;
    return {
      atMm: count * partMm,
      label: String(count * part),
      hasLabel: count % labelEvery === 0,
      isWhole: count % whole === 0,
    };
  });
}
