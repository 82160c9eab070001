/** Several sizes of one file brought in at once: one to hand, the others beside it. */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan, PlanSize } from '../../plan/model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import type { Edited } from '../../plan/edits/edited.ts';
import { bringIn, type BroughtPiece } from './bring-in.ts';
import type { FoundPiece } from './pattern.ts';

/** The pieces of one further size of the file; those of no size belong to each. */
export interface FoundSize {
  readonly size: string;
  readonly pieces: readonly FoundPiece[];
}

/**
 * Brings the pieces in as bringIn does, and puts the same pieces of each further size, known by their names, into that
 * size of the plan. A size that the plan did not have begins with its other pieces as they are at hand, and none of it
 * is made yet. size: of the pieces at hand; a plan of no size takes it. Refused, with nothing changed, where any size is.
 */
export function bringInSizes(
  plan: CoatPlan,
  size: string,
  brought: readonly BroughtPiece[],
  further: readonly FoundSize[],
): Result<Edited> {
  const named = plan.size === '' ? { ...plan, size } : plan;
  const own = bringIn(named, brought);
  if (!own.ok) return own;
  const { sizes: known = [], ...atHand } = named;
  const others = further
    .filter((each) => each.size !== named.size)
    .flatMap((each) => {
      const before = known.find((waiting) => waiting.size === each.size);
      const same = brought.flatMap((piece) => {
        const match = each.pieces.find((candidate) => candidate.name === piece.found.name);
        return match ? [{ ...piece, found: match }] : [];
      });
      if (same.length === 0) return [];
      const outcome = bringIn({ ...atHand, pieces: before?.pieces ?? named.pieces }, same);
      return [{ size: each.size, before, outcome }];
    });
  const problems = others.flatMap(({ size: name, outcome }) =>
    outcome.ok
      ? []
      : outcome.problems.map((problem) => ({
          ...problem,
          where: say('bring-in-sizes.size', { name, where: problem.where }),
        })),
  );
  if (problems.length > 0) return err(...problems);
  const sizes = others.flatMap(({ size: name, before, outcome }): PlanSize[] =>
    outcome.ok ? [{ coatCount: 0, ...before, size: name, pieces: outcome.value.plan.pieces }] : [],
  );
  if (sizes.length === 0) return own;
  const changed = sizes.map((each) => each.size);
  return ok({
    plan: {
      ...own.value.plan,
      sizes: [
        ...known.map((each) => sizes.find((fresh) => fresh.size === each.size) ?? each),
        ...sizes.filter((each) => !known.some((waiting) => waiting.size === each.size)),
      ],
    },
    said: say('bring-in-sizes.sizes-of-the-file-stand-beside', {
      said: own.value.said,
      changedCount: changed.length,
      changed: listed(changed),
    }),
  });
}
