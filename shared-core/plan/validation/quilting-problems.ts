/** What is wrong with how a plan is quilted: its lines, its thread, and what was measured on swatches. */
import type { Problem } from '../../measure/problem.ts';
import type { CoatPlan, Piece, QuiltedMeasure } from '../model/coat-plan.ts';
import { outside, present } from './number-problem.ts';
import { layersWords } from '../model/quilted-layers.ts';
import { orderProblem } from '../model/quilting-order.ts';

/** Distance of quilting lines: null when it is well. where: of which. */
export function quiltingSpacingProblem(
  spacingMm: number,
  where = 'Distance of the quilting lines',
): Problem | null {
  return outside(where, spacingMm, 5, 1000, 'mm');
}

export function ownSpacingProblems({ name, quiltingSpacingMm }: Piece): Problem[] {
  if (quiltingSpacingMm === undefined) return [];
  return present([quiltingSpacingProblem(quiltingSpacingMm, `Distance of the lines of ${name}`)]);
}

export function quiltingProblems(plan: CoatPlan): Problem[] {
  const { quilting } = plan;
  if (quilting === null) return [];
  const problems = present([
    quiltingSpacingProblem(quilting.spacingMm),
    outside('Stitch length of the quilting', quilting.stitchLengthMm, 0.5, 50, 'mm'),
  ]);
  const { measures = [] } = quilting;
  const twice = measures.find(
    ({ battingPlyCount }, index) =>
      measures.findIndex((other) => other.battingPlyCount === battingPlyCount) !== index,
  );
  if (twice) {
    problems.push({
      where: `Measures of ${layersWords(twice.battingPlyCount)}`,
      what: 'are in the plan twice',
      fix: 'Keep one swatch of each number of layers.',
    });
  }
  problems.push(...measures.flatMap(measureProblems), ...orderProblems(plan));
  return problems.concat(threadProblems(plan, quilting.threadSlotId, 'Thread of the quilting'));
}

/** Of the plan, its slots and its pieces, each once. */
function orderProblems(plan: CoatPlan): Problem[] {
  const chosen = [
    { name: 'Quilted pieces', quiltingOrder: plan.quilting?.order },
    ...plan.slots.map(({ name, quiltingOrder }) => ({ name: `The ${name}`, quiltingOrder })),
    ...[plan, ...(plan.sizes ?? [])].flatMap(({ pieces }) => pieces),
  ];
  return chosen.flatMap(({ name, quiltingOrder }) =>
    quiltingOrder ? present([orderProblem(quiltingOrder, name)]) : [],
  );
}

function measureProblems(measure: QuiltedMeasure): Problem[] {
  const { spacingMm, riseMm, overLinesRatio, alongLinesRatio } = measure;
  const layers = layersWords(measure.battingPlyCount);
  const max = 'mm: half the distance of the lines at most';
  const ratio = (way: string, value: number | null) =>
    value === null ? null : outside(`Take-up of ${layers} ${way} the lines`, value, 0, 1, '(1 is 100 %)');
  return present([
    quiltingSpacingProblem(spacingMm, `Distance of the lines of the swatch of ${layers}`),
    riseMm === null ? null : outside('Rise of the quilting', riseMm, 0, spacingMm / 2, max),
    ratio('over', overLinesRatio),
    ratio('along', alongLinesRatio),
  ]);
}

/** Why a slot that something is sewn from is no thread; empty where it is. where: of which thread. */
export function threadProblems(plan: CoatPlan, slotId: string, where: string): Problem[] {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot)
    return [
      { where, what: `is a slot that is not in the plan: ${slotId}`, fix: 'Choose a slot for thread.' },
    ];
  return slot.kind === 'thread'
    ? []
    : [{ where, what: `is ${slot.name}, which is no thread`, fix: 'Choose a slot for thread.' }];
}
