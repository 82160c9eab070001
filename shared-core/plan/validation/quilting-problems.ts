/** What is wrong with how a plan is quilted: its lines, its thread, and what was measured on swatches. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { CoatPlan, Piece, QuiltedMeasure } from '../model/coat-plan.ts';
import { outside, present } from './number-problem.ts';
import { layersWords } from '../model/quilted-layers.ts';
import { orderProblem } from '../model/quilting-order.ts';

/** Distance of quilting lines: null when it is well. where: of which. */
export function quiltingSpacingProblem(
  spacingMm: number,
  where = say('quilting-problems.distance-of-the-quilting-lines'),
): Problem | null {
  return outside(where, spacingMm, 5, 1000, 'mm');
}

export function ownSpacingProblems({ name, quiltingSpacingMm }: Piece): Problem[] {
  if (quiltingSpacingMm === undefined) return [];
  return present([
    quiltingSpacingProblem(quiltingSpacingMm, say('quilting-problems.distance-of-the-lines-of', { name })),
  ]);
}

export function quiltingProblems(plan: CoatPlan): Problem[] {
  const { quilting } = plan;
  if (quilting === null) return [];
  const problems = present([
    quiltingSpacingProblem(quilting.spacingMm),
    outside(say('quilting-problems.stitch-length-of-the-quilting'), quilting.stitchLengthMm, 0.5, 50, 'mm'),
  ]);
  const { measures = [] } = quilting;
  const twice = measures.find(
    ({ battingPlyCount }, index) =>
      measures.findIndex((other) => other.battingPlyCount === battingPlyCount) !== index,
  );
  if (twice) {
    problems.push({
      where: say('quilting-problems.measures-of', { layersWords: layersWords(twice.battingPlyCount) }),
      what: say('quilting-problems.are-in-the-plan-twice'),
      fix: say('quilting-problems.keep-one-swatch-of-each-number'),
    });
  }
  problems.push(...measures.flatMap(measureProblems), ...orderProblems(plan));
  return problems.concat(
    threadProblems(plan, quilting.threadSlotId, say('quilting-problems.thread-of-the-quilting')),
  );
}

/** Of the plan, its slots and its pieces, each once. */
function orderProblems(plan: CoatPlan): Problem[] {
  const chosen = [
    { name: say('quilting-problems.quilted-pieces'), quiltingOrder: plan.quilting?.order },
    ...plan.slots.map(({ name, quiltingOrder }) => ({
      name: say('quilting-problems.the', { name }),
      quiltingOrder,
    })),
    ...[plan, ...(plan.sizes ?? [])].flatMap(({ pieces }) => pieces),
  ];
  return chosen.flatMap(({ name, quiltingOrder }) =>
    quiltingOrder ? present([orderProblem(quiltingOrder, name)]) : [],
  );
}

function measureProblems(measure: QuiltedMeasure): Problem[] {
  const { spacingMm, riseMm, overLinesRatio, alongLinesRatio } = measure;
  const layers = layersWords(measure.battingPlyCount);
  const max = say('quilting-problems.mm-half-the-distance-of-the');
  const ratio = (way: string, value: number | null) =>
    value === null
      ? null
      : outside(
          say('quilting-problems.take-up-of-the-lines', { layers, way }),
          value,
          0,
          1,
          say('quilting-problems.1-is-100'),
        );
  return present([
    quiltingSpacingProblem(spacingMm, say('quilting-problems.distance-of-the-lines-of-the', { layers })),
    riseMm === null
      ? null
      : outside(say('quilting-problems.rise-of-the-quilting'), riseMm, 0, spacingMm / 2, max),
    ratio('over', overLinesRatio),
    ratio('along', alongLinesRatio),
  ]);
}

/** Why a slot that something is sewn from is no thread; empty where it is. where: of which thread. */
export function threadProblems(plan: CoatPlan, slotId: string, where: string): Problem[] {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot)
    return [
      {
        where,
        what: say('quilting-problems.is-a-slot-that-is-not', { slotId }),
        fix: say('quilting-problems.choose-a-slot-for-thread'),
      },
    ];
  return slot.kind === 'thread'
    ? []
    : [
        {
          where,
          what: say('quilting-problems.is-which-is-no-thread', { slotName: slot.name }),
          fix: say('quilting-problems.choose-a-slot-for-thread'),
        },
      ];
}
