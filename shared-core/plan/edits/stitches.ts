/** Edits of how seams are sewn: the type of stitch by ISO 4915, topstitching, overcasting, basting, and from which thread. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { say } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { type Edited, inMm, notInPlan } from './edited.ts';
import type { Seam, StitchType } from '../model/outline.ts';

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

const maxRows = 20;
const minStitchMm = 0.5;
const maxStitchMm = 50;

/** What may be changed of how a seam is sewn. Length of a stitch in mm; null: the usual of its stitch. */
export type SeamChange = Partial<Pick<Seam, 'stitch' | 'overcast' | 'topstitchRowCount' | 'threadSlotId'>> & {
  readonly stitchLengthMm?: number | null;
};

/** How a seam is sewn; what is left out stays as it was. Rows: whole, 0 to 20. */
export function setSeamStitches(
  plan: CoatPlan,
  seamId: string,
  change: SeamChange,
  text = inMm,
): Result<Edited> {
  const seam = plan.seams.find((candidate) => candidate.id === seamId);
  if (!seam) return err(notInPlan('seam', seamId));
  const { stitchLengthMm: before, ...kept } = seam;
  const { stitchLengthMm: asked = before ?? null, ...others } = change;
  const changed: Seam = { ...kept, ...others, ...(asked !== null && { stitchLengthMm: asked }) };
  const noThread = notThread(
    plan,
    changed.threadSlotId,
    say('stitches.thread-of', { seamLabel: seam.label }),
  );
  const problems = [...(noThread ? [noThread] : []), ...stitchProblems(changed)];
  if (problems.length > 0) return err(...problems);
  return ok({
    plan: { ...plan, seams: plan.seams.map((each) => (each === seam ? changed : each)) },
    said: `${seam.label}: ${sewnWords(changed, text)}.`,
  });
}

/** What is wrong with how a seam is stitched, its thread aside; empty when all is well. */
export function stitchProblems({ label, topstitchRowCount: rows, stitchLengthMm }: Seam): Problem[] {
  const problems: Problem[] = [];
  if (!(Number.isInteger(rows) && rows >= 0 && rows <= maxRows)) {
    problems.push({
      where: say('stitches.rows-of-topstitching-at', { label }),
      what: say('stitches.are', { rows }),
      fix: say('stitches.type-a-whole-number-from-0', { maxRows }),
    });
  }
  if (stitchLengthMm !== undefined && !(stitchLengthMm >= minStitchMm && stitchLengthMm <= maxStitchMm)) {
    problems.push({
      where: say('stitches.stitch-length-of', { label }),
      what: say('stitches.is-no-length-of-a-stitch'),
      fix: say('stitches.type-a-value-from-to-mm', { minStitchMm, maxStitchMm }),
    });
  }
  return problems;
}

/** Seams that a closed lining hides with its own: those of pieces cut from a lining or a pocketing, by the slot's name. */
export function liningSeams(plan: CoatPlan): readonly Seam[] {
  const hidden = new Set(
    plan.slots.filter(({ name }) => speaksOf('lining or pocketing', name)).map(({ id }) => id),
  );
  const seamIds = new Set(
    plan.pieces
      .filter(({ cutFrom }) => cutFrom.some(({ slotId, plyCount }) => plyCount > 0 && hidden.has(slotId)))
      .flatMap(({ outline }) => outline.edges.map(({ seam }) => seam)),
  );
  return plan.seams.filter(({ id }) => seamIds.has(id));
}

/** Raw edges of all seams of the lining at once: overcast with a stitch, or null: left as they are. */
export function setLiningOvercast(plan: CoatPlan, overcast: Seam['overcast']): Result<Edited> {
  const hidden = liningSeams(plan);
  if (hidden.length === 0) {
    return err({
      where: plan.name,
      what: say('stitches.has-no-seam-in-a-lining'),
      fix: say('stitches.overcast-seam-by-seam'),
    });
  }
  return ok({
    plan: {
      ...plan,
      seams: plan.seams.map((each) => (hidden.includes(each) ? { ...each, overcast } : each)),
    },
    said:
      overcast === null
        ? say('stitches.raw-edges-of-the-lining-are')
        : say('stitches.raw-edges-of-the-lining-are-2', { overcast }),
  });
}

/** "lockstitch 301, 2 mm long, 2 rows of topstitching, overcast 504". */
function sewnWords({ stitch, stitchLengthMm, topstitchRowCount, overcast }: Seam, text: typeof inMm): string {
  return [
    stitch === 'hand' ? say('stitches.sewn-by-hand') : say('stitches.stitch', { stitch }),
    ...(stitchLengthMm === undefined ? [] : [say('stitches.long', { text: text(stitchLengthMm) })]),
    ...(topstitchRowCount > 0 ? [say('stitches.rows-of-topstitching', { topstitchRowCount })] : []),
    ...(overcast === null ? [] : [say('stitches.overcast', { overcast })]),
  ].join(', ');
}

/** Quilted pieces are basted by hand round their edge before the lines are sewn, from this slot; null: they are not. */
export function setBasting(plan: CoatPlan, threadSlotId: string | null): Result<Edited> {
  const { bastingThreadSlotId: _, ...rest } = plan;
  if (threadSlotId === null) return ok({ plan: rest, said: say('stitches.quilted-pieces-are-not-basted') });
  const problem = notThread(plan, threadSlotId, say('stitches.thread-for-basting'));
  if (problem) return err(problem);
  const name = plan.slots.find((slot) => slot.id === threadSlotId)?.name ?? '';
  return ok({
    plan: { ...rest, bastingThreadSlotId: threadSlotId },
    said: say('stitches.quilted-pieces-are-basted-with', { name }),
  });
}

function notThread(plan: CoatPlan, slotId: string, where: string) {
  if (plan.slots.some((slot) => slot.id === slotId && slot.kind === 'thread')) return null;
  return {
    where,
    what: say('stitches.is-no-thread-of-the-plan'),
    fix: say('stitches.choose-a-slot-for-thread'),
  };
}
