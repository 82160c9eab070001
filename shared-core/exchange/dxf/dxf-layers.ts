/**
 * Layers of the open DXF standard for apparel patterns.
 * Source: ASTM D6673-10 (after ANSI/AAMA-292), withdrawn 2019, by a written description of its layers; 84 to 87 from memory.
 */
import type { MessageId } from '../../wording/say.ts';

export const layers = {
  boundary: 1,
  turnPoints: 2,
  curvePoints: 3,
  notch: 4,
  gradeReference: 5,
  mirrorLine: 6,
  grainLine: 7,
  internalLine: 8,
  stripeReference: 9,
  plaidReference: 10,
  internalCutOut: 11,
  blank: 12,
  drillHole: 13,
  sewLine: 14,
  annotation: 15,
  tNotch: 80,
  castleNotch: 81,
  checkNotch: 82,
  uNotch: 83,
  boundaryCheck: 84,
  internalLineCheck: 85,
  internalCutOutCheck: 86,
  sewLineCheck: 87,
} as const;

export const notchLayers: readonly number[] = [
  layers.notch,
  layers.tNotch,
  layers.castleNotch,
  layers.checkNotch,
  layers.uNotch,
];

/** What a plan's piece has no place for: how it is called, by its count. */
export const unkept: ReadonlyMap<number, MessageId> = new Map<number, MessageId>([
  [layers.gradeReference, 'dxf-layers.grade-reference-lines'],
  [layers.internalLine, 'dxf-layers.internal-lines'],
  [layers.stripeReference, 'dxf-layers.stripe-references'],
  [layers.plaidReference, 'dxf-layers.plaid-references'],
  [layers.internalCutOut, 'dxf-layers.internal-cut-outs'],
  [layers.drillHole, 'dxf-layers.drill-holes'],
]);

/** The number of a layer named "1" or "01"; null for any other name. */
export function layerNumber(name: string): number | null {
  return /^\d{1,4}$/.test(name) ? Number(name) : null;
}
