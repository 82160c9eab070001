/**
 * Trimmings: what is cut off quilted pieces when they are recut to their outline. It was laid, quilted and paid for, so
 * it is waste of its own beside what falls between the pieces.
 */
import { ringAreaMm2 } from '../../geometry/ring.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import type { Item } from '../../stash/stash.ts';
import { unwashedMm2 } from './first-wash.ts';
import type { ShapesNeed, ShapeToCut } from '../need.ts';

/** Of one copy: its area as laid, less what is kept of it. */
export function trimmedOfOneMm2({ areaMm2, keptRing, carries }: ShapeToCut): number {
  if (carries) {
    return carries.reduce(
      (rest, { shape, count, mirroredCount }) => rest - shape.areaMm2 * (count + mirroredCount),
      areaMm2,
    );
  }
  return keptRing ? areaMm2 - ringAreaMm2(keptRing) : 0;
}

/** Of all copies. */
export function trimmedMm2(shapes: readonly ShapeToCut[]): number {
  return shapes.reduce((sum, shape) => sum + trimmedOfOneMm2(shape) * (shape.count + shape.mirroredCount), 0);
}

export interface Trimmings {
  /** Of cloth as it was on the roll. */
  readonly areaMm2: number;
  /** Null where the weight of the item is not known. */
  readonly massG: number | null;
  /** Of all that is laid, 0 to 1. */
  readonly laidRatio: number;
}

/** Of a slot's need; null where nothing is trimmed. */
export function trimmingsOf(need: ShapesNeed, item: Item | undefined): Trimmings | null {
  const cutMm2 = trimmedMm2(need.shapes);
  if (cutMm2 <= 0) return null;
  const areaMm2 = unwashedMm2(need, cutMm2);
  return { areaMm2, massG: massOfAreaG(areaMm2, item), laidRatio: cutMm2 / need.areaMm2 };
}

/** Grams of an area of cloth or batting; null where its weight is not written down. */
export function massOfAreaG(areaMm2: number, item: Item | undefined): number | null {
  if (item?.kind !== 'cloth' && item?.kind !== 'batting') return null;
  const { arealMassGPerM2 } = item.facts;
  return arealMassGPerM2 === null ? null : (areaMm2 / 1e6) * arealMassGPerM2;
}

/** "0.84 m², 118 g"; the area alone where the weight is not known. */
export function trimmingsWords(
  { areaMm2, massG }: Pick<Trimmings, 'areaMm2' | 'massG'>,
  system: MeasureSystem,
): string {
  const area = showQuantity('area', areaMm2, { system, unit: { metric: 'm2', imperial: 'yd2' }, digits: 2 });
  return massG === null ? area : `${area}, ${showQuantity('mass', massG, { system })}`;
}
