/** How a plan begins: with the usual slots of a quilted coat and no pieces, or as a copy of another. */
import { givenName } from '../../wording/given-names.ts';
import type { PlanId } from '../../stash/stash.ts';
import { type CoatPlan, emptySlot, type QuiltingOrder } from './coat-plan.ts';

/** Distance of quilting lines that a new plan begins with: about 3 in (common practice, no source). */
export const defaultSpacingMm = 76.2;

/**
 * How a new plan is quilted: cut with about 1 in to spare, quilted, and recut. Quilting shrinks and skews a piece by more
 * or less than any estimate says, so makers leave 1/2 to 1 in to trim (common practice, no source).
 */
export const defaultOrder: QuiltingOrder = { kind: 'rough', marginMm: 25 };

/** A panel that is quilted before pieces are cut from it begins with the same edge, and one for each coat. */
export const defaultPanel: QuiltingOrder = { kind: 'panel', marginMm: 25, widthMm: null, coats: 'each' };

export function newPlan(id: PlanId, name: string, size: string): CoatPlan {
  return {
    id,
    name,
    size,
    coatCount: 1,
    slots: [
      { ...emptySlot('shell', givenName('slot', 'shell'), 'cloth'), isQuilted: true },
      emptySlot('lining', givenName('slot', 'lining'), 'cloth'),
      emptySlot('batting', givenName('slot', 'batting'), 'batting'),
      emptySlot('sewing-thread', givenName('slot', 'sewing thread'), 'thread'),
      emptySlot('quilting-thread', givenName('slot', 'quilting thread'), 'thread'),
      emptySlot('needles', givenName('slot', 'needles'), 'needle'),
      { ...emptySlot('zip', givenName('slot', 'front zip'), 'fastening'), amountPerCoat: 1 },
    ],
    pieces: [],
    seams: [],
    quilting: {
      spacingMm: defaultSpacingMm,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'quilting-thread',
      order: defaultOrder,
    },
    clearanceMm: 2,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: 600,
    notes: '',
  };
}

/** The same plan under a new id and a name that is not among `names`: "Fenwalk 2", "Fenwalk 3". */
export function copiedPlan(plan: CoatPlan, id: PlanId, names: readonly string[]): CoatPlan {
  const stem = plan.name.replace(/ \d+$/, '');
  let number = 2;
  while (names.includes(`${stem} ${number}`)) number++;
  return { ...plan, id, name: `${stem} ${number}` };
}
