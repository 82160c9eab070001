/** The same coat drawn larger for its padding: by the girth that the padding takes, or on the body of a larger size. */
import type { Body } from './body.ts';
import type { BodyRow } from './body-tables.ts';
import type { DraftInput } from './draft-input.ts';

/** Girth that padding takes from the wearer: 2 pi x its thickness as worn (requirement/finished/padding.ts). 0 or more. */
export interface TakenGirth {
  readonly bodyMm: number;
  readonly sleeveMm: number;
}

/** Drafts what the padding takes in beyond the ease, at bust, waist and hip and at the upper arm. Throws below 0. */
export function widenedForPadding(input: DraftInput, taken: TakenGirth): DraftInput {
  if (!(taken.bodyMm >= 0 && taken.sleeveMm >= 0))
    throw new RangeError(`girths of ${taken.bodyMm} and ${taken.sleeveMm} mm`);
  return { ...input, paddingGirthMm: { body: taken.bodyMm, sleeve: taken.sleeveMm } };
}

/**
 * Drafts the coat on a larger size's girths and with nothing added for the padding. Lengths stay the wearer's;
 * girths that the row does not give grow with the bust.
 */
export function goneUpToSize(input: DraftInput, row: BodyRow): DraftInput {
  const { body } = input;
  const growth = row.bustMm / body.bustMm;
  const grown = (mm: number | null): number | null => (mm === null ? null : mm * growth);
  const larger: Body = {
    ...body,
    bustMm: row.bustMm,
    waistMm: Math.max(row.waistMm, body.waistMm),
    hipMm: row.hipMm ?? grown(body.hipMm),
    upperArmMm: grown(body.upperArmMm),
    wristMm: grown(body.wristMm),
  };
  return { ...input, size: row.size, body: larger, paddingGirthMm: { body: 0, sleeve: 0 } };
}
