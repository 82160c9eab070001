/** The work on one coat, as its maker estimates it. */
import { ok, type Result, err } from '../../measure/problem.ts';
import { showQuantity } from '../../measure/show.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import type { Edited } from './edited.ts';

/** Most minutes that a plan takes: ten weeks without sleep, so a slip of the hand. */
const maxMinutes = 100_000;

/** null: the sewing time of the plan, as before it was ever said. */
export function setLabourMinutes(plan: CoatPlan, minutes: number | null): Result<Edited> {
  if (minutes !== null && !(minutes >= 0 && minutes <= maxMinutes)) {
    return err({
      where: 'The work on one coat',
      what: 'is no time that a coat takes',
      fix: 'Give it as 45 min, 1.5 h or 1:30.',
    });
  }
  const { labourMinutesPerCoat: _, ...rest } = plan;
  if (minutes === null) return ok({ plan: rest, said: 'The work on one coat is its sewing time.' });
  return ok({
    plan: { ...rest, labourMinutesPerCoat: minutes },
    said: `The work on one coat is estimated at ${showQuantity('duration', minutes, { system: 'metric' })}.`,
  });
}
