/** Several sizes of a style at once, for a pattern that is published in more sizes than are sewn. */
import { say, sayInEvery } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import type { Edited } from './edited.ts';
import { addSize } from '../model/sizes.ts';

/** Adds the sizes of other plans without a coat to be made of them: what is bought and what it costs stay as they are. All, or none. */
export function addSizesUnmade(plan: CoatPlan, others: readonly CoatPlan[]): Result<Edited> {
  if (others.length === 0) {
    return err({
      where: say('common.sizes'),
      what: say('add-sizes.are-none'),
      fix: say('add-sizes.choose-at-least-one-plan'),
    });
  }
  const problems: Problem[] = [];
  let grown = plan;
  for (const other of others) {
    const added = addSize(grown, other, 1);
    if (added.ok) grown = added.value.plan;
    else problems.push(...added.problems);
  }
  if (problems.length > 0) return err(...problems);
  const known = plan.sizes?.length ?? 0;
  const sizes = (grown.sizes ?? []).map((size, index) => (index < known ? size : { ...size, coatCount: 0 }));
  const names = listed(others.map(({ size }) => size.trim()));
  return ok({
    plan: { ...grown, sizes },
    said: say('add-sizes.sizes-added-none-is-made', { othersCount: others.length, names }),
  });
}

/** Name of the style that a plan of one size belongs to: "Fenwalk" of "Fenwalk, size 42", named so in any language. */
export function styleName({ name, size }: { readonly name: string; readonly size: string }): string {
  const ending = sayInEvery('add-sizes.size', { size }).find((each) => name.endsWith(each));
  return size !== '' && ending !== undefined ? name.slice(0, -ending.length) : name;
}
