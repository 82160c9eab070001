/** The work on one coat, as its maker estimates it. */
import { say } from '../../wording/say.ts';
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
      where: say('labour.the-work-on-one-coat'),
      what: say('labour.is-no-time-that-a-coat'),
      fix: say('labour.give-it-as-45-min-1'),
    });
  }
  const { labourMinutesPerCoat: _, ...rest } = plan;
  if (minutes === null) return ok({ plan: rest, said: say('labour.the-work-on-one-coat-is') });
  return ok({
    plan: { ...rest, labourMinutesPerCoat: minutes },
    said: say('labour.the-work-on-one-coat-is-2', {
      minutes: showQuantity('duration', minutes, { system: 'metric' }),
    }),
  });
}
