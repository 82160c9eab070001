/** A change of one piece, and what the form of each change is given. */
import type { Result } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import type { StraightLine } from '../../../shared-core/plan/geometry/outline-cut.ts';

export type Change = (plan: CoatPlan) => Result<Edited>;

/** What each change is given. */
export interface ChangeProps {
  readonly plan: CoatPlan;
  readonly piece: Piece;
  /** Makes the change and stays; what is refused stands at the head of the sheet. */
  readonly make: (change: Change) => Promise<boolean>;
  /** Makes the change and closes the sheet, so that what it did is seen. */
  readonly finish: (change: Change) => Promise<void>;
  /** Draws a line on the piece while it is being chosen. */
  readonly onLine: (line: StraightLine | null) => void;
}
