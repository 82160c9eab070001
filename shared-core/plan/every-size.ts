/** A change that adds, parts or renames pieces is made in every size of the plan, so that all are sewn alike. */
import { found, type Outcome, refused } from '../measure/problem.ts';
import type { CoatPlan, Piece } from './coat-plan.ts';
import { pieceProblems } from './outline-problems.ts';

/**
 * The pieces of each size changed, the size at hand among them. A problem in any of them refuses all; one of another
 * size says which. A size that does not have the piece (`change` gives back what it was given) stays as it is.
 */
export function inEverySize(
  plan: CoatPlan,
  change: (pieces: readonly Piece[]) => Outcome<readonly Piece[]>,
): Outcome<CoatPlan> {
  const own = sound(plan.pieces, change);
  if (!own.ok) return own;
  if (!plan.sizes) return found({ ...plan, pieces: own.value });
  const sizes = plan.sizes.map((size) => ({ size, outcome: sound(size.pieces, change) }));
  const problems = sizes.flatMap(({ size, outcome }) =>
    outcome.ok
      ? []
      : outcome.problems.map((problem) => ({ ...problem, where: `Size ${size.size}: ${problem.where}` })),
  );
  if (problems.length > 0) return refused(...problems);
  return found({
    ...plan,
    pieces: own.value,
    sizes: sizes.map(({ size, outcome }) => (outcome.ok ? { ...size, pieces: outcome.value } : size)),
  });
}

/** The change, refused where a piece that it made is not sound. */
function sound(
  pieces: readonly Piece[],
  change: (pieces: readonly Piece[]) => Outcome<readonly Piece[]>,
): Outcome<readonly Piece[]> {
  const outcome = change(pieces);
  if (!outcome.ok) return outcome;
  const problems = outcome.value.filter((piece) => !pieces.includes(piece)).flatMap(pieceProblems);
  return problems.length > 0 ? refused(...problems) : outcome;
}

/** Id made of a name that no piece of any size has. */
export function freePieceId(plan: CoatPlan, name: string): string {
  const stem =
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'piece';
  const taken = new Set(allPieces(plan).map((piece) => piece.id));
  for (let number = 1; ; number++) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
}

/** Why a new piece cannot have the name, or null. `what`: the piece, as in "Name of the strip". */
export function pieceNameProblem(plan: CoatPlan, name: string, what: string) {
  if (name === '') return { where: `Name of the ${what}`, what: 'is missing', mend: 'Type a name.' };
  if (!allPieces(plan).some((piece) => piece.name.toLowerCase() === name.toLowerCase())) return null;
  return { where: `The piece ${name}`, what: 'is in the plan already', mend: 'Choose another name.' };
}

function allPieces(plan: CoatPlan): readonly Piece[] {
  return [...plan.pieces, ...(plan.sizes ?? []).flatMap((size) => size.pieces)];
}
