/**
 * Changes in every size of a plan. One that adds, parts or renames pieces is always made in all (inEverySize), so that
 * they are sewn alike; one of a piece's measures or cut may be made in all (editEverySize) or in the size at hand.
 */
import { codeWords } from '../../wording/code-words.ts';
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan, Piece } from '../model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import { type Edited, unfitted } from './edited.ts';
import { pieceProblems } from '../validation/outline-problems.ts';

/**
 * The pieces of each size changed, the size at hand among them. A problem in any of them refuses all; one of another
 * size says which. A size that does not have the piece (`change` gives back what it was given) stays as it is.
 */
export function inEverySize(
  plan: CoatPlan,
  change: (pieces: readonly Piece[]) => Result<readonly Piece[]>,
): Result<CoatPlan> {
  const own = sound(plan.pieces, change);
  if (!own.ok) return own;
  if (!plan.sizes) return ok({ ...plan, pieces: own.value });
  const sizes = plan.sizes.map((size) => ({ size, outcome: sound(size.pieces, change) }));
  const problems = sizes.flatMap(({ size, outcome }) =>
    outcome.ok
      ? []
      : outcome.problems.map((problem) => ({
          ...problem,
          where: say('every-size.size', { sizeCount: size.size, where: problem.where }),
        })),
  );
  if (problems.length > 0) return err(...problems);
  return ok({
    ...plan,
    pieces: own.value,
    sizes: sizes.map(({ size, outcome }) => (outcome.ok ? { ...size, pieces: outcome.value } : size)),
  });
}

/** The change, refused where a piece that it made is not sound. */
function sound(
  pieces: readonly Piece[],
  change: (pieces: readonly Piece[]) => Result<readonly Piece[]>,
): Result<readonly Piece[]> {
  const outcome = change(pieces);
  if (!outcome.ok) return outcome;
  const problems = outcome.value.filter((piece) => !pieces.includes(piece)).flatMap(pieceProblems);
  return problems.length > 0 ? err(...problems) : outcome;
}

/**
 * An edit of the piece made in the size at hand and in each other size that has it. A problem in any of them refuses
 * all; one of another size says which, and so do seams that no longer fit there.
 */
export function editEverySize(
  plan: CoatPlan,
  pieceId: string,
  change: (plan: CoatPlan) => Result<Edited>,
): Result<Edited> {
  const { sizes = [], ...own } = plan;
  const edited = change(own);
  if (!edited.ok || sizes.length === 0) return edited;
  const others = sizes.map((size) => {
    const before = { ...own, ...size };
    const hasPiece = size.pieces.some((piece) => piece.id === pieceId);
    return { size, before, outcome: hasPiece ? change(before) : null };
  });
  const problems = others.flatMap(({ size, outcome }) =>
    outcome === null || outcome.ok
      ? []
      : outcome.problems.map((problem) => ({
          ...problem,
          where: say('every-size.size', { sizeCount: size.size, where: problem.where }),
        })),
  );
  if (problems.length > 0) return err(...problems);
  const changed = others.flatMap(({ size, before, outcome }) =>
    outcome?.ok ? [{ size, before, after: outcome.value.plan }] : [],
  );
  const names = changed.map(({ size }) => size.size);
  const also =
    names.length === 0
      ? []
      : [say('every-size.in-sizes-as-well', { namesCount: names.length, names: listed(names) })];
  const parted = changed.flatMap(({ size, before, after }) =>
    unfitted(before, after).map((sentence) => say('every-size.size-2', { sizeCount: size.size, sentence })),
  );
  return ok({
    plan: {
      ...edited.value.plan,
      sizes: sizes.map((size) => ({
        ...size,
        pieces: changed.find((each) => each.size === size)?.after.pieces ?? size.pieces,
      })),
    },
    said: [edited.value.said, ...also, ...parted].join(' '),
  });
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
  if (name === '')
    return {
      where: say('every-size.name-of-the', { what: codeWords(what) }),
      what: say('common.is-missing'),
      fix: say('common.type-a-name'),
    };
  if (!allPieces(plan).some((piece) => piece.name.toLowerCase() === name.toLowerCase())) return null;
  return {
    where: say('every-size.the-piece', { name }),
    what: say('common.is-in-the-plan-already'),
    fix: say('common.choose-another-name'),
  };
}

function allPieces(plan: CoatPlan): readonly Piece[] {
  return [...plan.pieces, ...(plan.sizes ?? []).flatMap((size) => size.pieces)];
}
