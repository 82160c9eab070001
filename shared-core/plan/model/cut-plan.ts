/** The plan as far as it was cut: as many coats of each size as are on the table. */
import type { CutCoats } from '../../stash/cutting.ts';
import type { CoatPlan } from './coat-plan.ts';

/** null where no coat of any of its sizes was cut. */
export function planOfCoats(plan: CoatPlan, coats: readonly CutCoats[]): CoatPlan | null {
  const { sizes, ...own } = plan;
  const cut = [{ size: own.size, pieces: own.pieces }, ...(sizes ?? [])].flatMap(({ size, pieces }) => {
    const coatCount = coats.find((each) => each.size === size)?.coatCount ?? 0;
    return coatCount > 0 ? [{ size, coatCount, pieces }] : [];
  });
  const [first, ...rest] = cut;
  if (!first) return null;
  return { ...own, ...first, ...(rest.length > 0 && { sizes: rest }) };
}
