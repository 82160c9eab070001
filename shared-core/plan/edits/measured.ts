/** Edits that put a maker's own figure in the place of an estimate, and take it away again. */
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { showQuantity } from '../../measure/show.ts';
import type { CoatPlan, MeasuredCoat } from '../model/coat-plan.ts';
import { type Edited, inMm, notInPlan } from './edited.ts';

const notMeasured: MeasuredCoat = { massG: null, packedCm3: null, clo: null };

interface MeasureWords {
  readonly where: string;
  readonly isMeasured: string;
  readonly isEstimated: string;
  readonly max: number;
}

/** The most is where a slip of the hand is likelier than the coat: 100 kg, 1,000 L, 20 clo. */
const words: Readonly<Record<keyof MeasuredCoat, MeasureWords>> = {
  massG: {
    where: 'Weight of the coat',
    isMeasured: 'The coat weighs what you weighed.',
    isEstimated: 'The weight follows from the materials again.',
    max: 1e5,
  },
  packedCm3: {
    where: 'Packed size of the coat',
    isMeasured: 'The packed size is as you measured it.',
    isEstimated: 'The packed size follows from the weight again.',
    max: 1e6,
  },
  clo: {
    where: 'Warmth of the coat',
    isMeasured: 'The warmth is as it was measured.',
    isEstimated: 'The warmth is estimated from the padding again.',
    max: 20,
  },
};

/** A measure of a finished coat of the size at hand, in g, cm3 or clo, above 0; null goes back to the estimate. */
export function setMeasured(plan: CoatPlan, what: keyof MeasuredCoat, value: number | null): Result<Edited> {
  const { where, isMeasured, isEstimated, max } = words[what];
  const problem = value === null ? null : outside(where, value, max);
  if (problem) return err(problem);
  const measured: MeasuredCoat = { ...notMeasured, ...plan.measured, [what]: value };
  const { measured: _, ...rest } = plan;
  const isEmpty = Object.values(measured).every((each) => each === null);
  return ok({
    plan: isEmpty ? rest : { ...rest, measured },
    said: value === null ? isEstimated : isMeasured,
  });
}

function outside(where: string, value: number, max: number): Problem | null {
  if (value > 0 && value <= max) return null;
  return {
    where,
    what: value > max ? 'is too large to be true' : 'is not above 0',
    fix: 'Check the number and its unit.',
  };
}

/**
 * What one coat takes of a slot that is not cut, in the kind's unit (g, m of thread, pieces), 0 or more;
 * null goes back to the estimate.
 */
export function setAmountPerCoat(plan: CoatPlan, slotId: string, amount: number | null): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  if (slot.kind === 'cloth' || slot.kind === 'batting') {
    return err({
      where: slot.name,
      what: 'is cut, so its lay says what a coat takes',
      fix: 'Look at its lay.',
    });
  }
  if (amount !== null && !(amount >= 0 && amount <= 1_000_000)) {
    return err({
      where: `Amount of ${slot.name} for one coat`,
      what: `is ${amount}`,
      fix: 'Type 0 or more.',
    });
  }
  return ok({
    plan: {
      ...plan,
      slots: plan.slots.map((each) => (each === slot ? { ...slot, amountPerCoat: amount } : each)),
    },
    said:
      amount === null
        ? `What a coat takes of ${slot.name} is estimated again.`
        : `What a coat takes of ${slot.name} is as you gave it.`,
  });
}

/** For a child or not, as the maker says; null leaves it to name and size. */
export function setForChild(plan: CoatPlan, isForChild: boolean | null): Result<Edited> {
  const { isForChild: _, ...rest } = plan;
  return ok({
    plan: isForChild === null ? rest : { ...rest, isForChild },
    said:
      isForChild === null
        ? 'Whether it is for a child is guessed from its name and size.'
        : isForChild
          ? 'This coat is for a child.'
          : 'This coat is not for a child.',
  });
}

/** Thread that is lost over what is sewn, 0.15 is 15 %; 0 to 2. */
export function setThreadWastage(plan: CoatPlan, ratio: number): Result<Edited> {
  if (!(ratio >= 0 && ratio <= 2)) {
    return err({
      where: 'Wastage of thread',
      what: 'is below nothing or above 200 %',
      fix: 'Type 0 to 200 %.',
    });
  }
  return ok({
    plan: { ...plan, threadWastageRatio: ratio },
    said: `Wastage of thread is ${Number((ratio * 100).toFixed(1))} %.`,
  });
}

const minFootLiftMm = 2;
const maxFootLiftMm = 40;

/** How far the foot of the machine lifts; null goes back to that of a usual domestic one. */
export function setFootLift(plan: CoatPlan, footLiftMm: number | null, text = inMm): Result<Edited> {
  const { footLiftMm: _, ...rest } = plan;
  if (footLiftMm === null)
    return ok({ plan: rest, said: 'The foot lifts as that of a usual domestic machine.' });
  if (!(footLiftMm >= minFootLiftMm && footLiftMm <= maxFootLiftMm)) {
    return err({
      where: 'Lift of the foot',
      what: Number.isFinite(footLiftMm) ? `is ${text(footLiftMm)}` : 'is not a number',
      fix: `Type ${text(minFootLiftMm)} to ${text(maxFootLiftMm)}: the height under the raised foot.`,
    });
  }
  return ok({ plan: { ...rest, footLiftMm }, said: `The foot of the machine lifts ${text(footLiftMm)}.` });
}

/** Minutes at the machine for one coat, by which needles wear out; 0 to 100,000. */
export function setSewingMinutes(plan: CoatPlan, minutes: number): Result<Edited> {
  if (!(minutes >= 0 && minutes <= 100_000)) {
    return err({
      where: 'Sewing time of one coat',
      what: 'is no time that a coat takes',
      fix: 'Give it as 45 min, 1.5 h or 1:30.',
    });
  }
  return ok({
    plan: { ...plan, sewingMinutesPerCoat: minutes },
    said: `The sewing time of one coat is ${showQuantity('duration', minutes, { system: 'metric' })}.`,
  });
}
