/** Edits of how seams are sewn: the type of stitch by ISO 4915, topstitching, overcasting, basting, and from which thread. */
import { found, type Outcome, refused } from '../measure/problem.ts';
import type { CoatPlan } from './coat-plan.ts';
import { type Edited, notInPlan } from './edited.ts';
import type { Seam, StitchType } from './outline.ts';

export const stitchTypes = [
  '301',
  '304',
  '401',
  '503',
  '504',
  '516',
  '605',
  'hand',
] as const satisfies readonly StitchType[];

const mostRows = 20;

/** How a seam is sewn; what is left out stays as it was. Rows: whole, 0 to 20. */
export function setSeamStitches(
  plan: CoatPlan,
  seamId: string,
  change: Partial<Pick<Seam, 'stitch' | 'overcast' | 'topstitchRowCount' | 'threadSlotId'>>,
): Outcome<Edited> {
  const seam = plan.seams.find((candidate) => candidate.id === seamId);
  if (!seam) return refused(notInPlan('seam', seamId));
  const rows = change.topstitchRowCount ?? seam.topstitchRowCount;
  if (!(Number.isInteger(rows) && rows >= 0 && rows <= mostRows)) {
    return refused({
      where: `Rows of topstitching at ${seam.label}`,
      what: `are ${rows}`,
      mend: `Type a whole number from 0 to ${mostRows}.`,
    });
  }
  const changed: Seam = { ...seam, ...change };
  const problem = notThread(plan, changed.threadSlotId, `Thread of ${seam.label}`);
  if (problem) return refused(problem);
  return found({
    plan: { ...plan, seams: plan.seams.map((each) => (each === seam ? changed : each)) },
    said: `${seam.label}: ${sewnWords(changed)}.`,
  });
}

/** "lockstitch 301, 2 rows of topstitching, overcast 504". */
function sewnWords({ stitch, topstitchRowCount, overcast }: Seam): string {
  return [
    stitch === 'hand' ? 'sewn by hand' : `stitch ${stitch}`,
    ...(topstitchRowCount > 0
      ? [`${topstitchRowCount} ${topstitchRowCount === 1 ? 'row' : 'rows'} of topstitching`]
      : []),
    ...(overcast === null ? [] : [`overcast ${overcast}`]),
  ].join(', ');
}

/** Quilted pieces are basted by hand round their edge before the lines are sewn, from this slot; null: they are not. */
export function setBasting(plan: CoatPlan, threadSlotId: string | null): Outcome<Edited> {
  const { bastingThreadSlotId: _, ...rest } = plan;
  if (threadSlotId === null) return found({ plan: rest, said: 'Quilted pieces are not basted.' });
  const problem = notThread(plan, threadSlotId, 'Thread for basting');
  if (problem) return refused(problem);
  const name = plan.slots.find((slot) => slot.id === threadSlotId)?.name ?? '';
  return found({
    plan: { ...rest, bastingThreadSlotId: threadSlotId },
    said: `Quilted pieces are basted with ${name}.`,
  });
}

function notThread(plan: CoatPlan, slotId: string, where: string) {
  if (plan.slots.some((slot) => slot.id === slotId && slot.kind === 'thread')) return null;
  return { where, what: 'is no thread of the plan', mend: 'Choose a slot for thread.' };
}
