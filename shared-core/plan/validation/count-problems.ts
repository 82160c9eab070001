/** How many coats and plies a plan may ask for. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';

export const maxCoats = 1000;
const maxPlies = 20;

/** How many coats a plan may make: null when `count` is well. */
export function coatCountProblem(count: number): Problem | null {
  if (Number.isInteger(count) && count >= 1 && count <= maxCoats) return null;
  return {
    where: say('plan-problems.number-of-coats'),
    what: say('plan-problems.is', { count }),
    fix: say('plan-problems.type-a-whole-number-from-1', { maxCoats }),
  };
}

/** How many plies a piece may be cut in: null when `count` is well; 0 is. */
export function plyCountProblem(pieceName: string, slotName: string, count: number): Problem | null {
  if (Number.isInteger(count) && count >= 0 && count <= maxPlies) return null;
  return {
    where: say('plan-problems.plies-of-in', { pieceName, slotName }),
    what: say('plan-problems.are', { count }),
    fix: say('plan-problems.type-a-whole-number-from-0', { maxPlies }),
  };
}
