/** Edits that put a maker's own figure in the place of an estimate, and take it away again. */
import { found, type Outcome, type Problem, refused } from '../../measure/problem.ts';
import { showQuantity } from '../../measure/show.ts';
import type { CoatPlan, MeasuredCoat } from '../model/coat-plan.ts';
import { type Edited, inMm, notInPlan } from './edited.ts';

const notMeasured: MeasuredCoat = { massG: null, packedCm3: null, clo: null };

interface MeasureWords {
  readonly where: string;
  readonly isMeasured: string;
  readonly isEstimated: string;
  readonly most: number;
}

/** The most is where a slip of the hand is likelier than the coat: 100 kg, 1,000 L, 20 clo. */
const words: Readonly<Record<keyof MeasuredCoat, MeasureWords>> = {
  massG: {
    where: 'Weight of the coat',
    isMeasured: 'The coat weighs what you weighed.',
    isEstimated: 'The weight follows from the materials again.',
    most: 1e5,
  },
  packedCm3: {
    where: 'Packed size of the coat',
    isMeasured: 'The packed size is as you measured it.',
    isEstimated: 'The packed size follows from the weight again.',
    most: 1e6,
  },
  clo: {
    where: 'Warmth of the coat',
    isMeasured: 'The warmth is as it was measured.',
    isEstimated: 'The warmth is estimated from the padding again.',
    most: 20,
  },
};

/** A measure of a finished coat of the size at hand, in g, cm3 or clo, above 0; null goes back to the estimate. */
export function setMeasured(plan: CoatPlan, what: keyof MeasuredCoat, value: number | null): Outcome<Edited> {
  const { where, isMeasured, isEstimated, most } = words[what];
  const problem = value === null ? null : outside(where, value, most);
  if (problem) return refused(problem);
  const measured: MeasuredCoat = { ...notMeasured, ...plan.measured, [what]: value };
  const { measured: _, ...rest } = plan;
  const isEmpty = Object.values(measured).every((each) => each === null);
  return found({
    plan: isEmpty ? rest : { ...rest, measured },
    said: value === null ? isEstimated : isMeasured,
  });
}

function outside(where: string, value: number, most: number): Problem | null {
  if (value > 0 && value <= most) return null;
  return {
    where,
    what: value > most ? 'is too large to be true' : 'is not above 0',
    mend: 'Check the number and its unit.',
  };
}

/**
 * What one coat takes of a slot that is not cut, in the kind's unit (g, m of thread, pieces), 0 or more;
 * null goes back to the estimate.
 */
export function setAmountPerCoat(plan: CoatPlan, slotId: string, amount: number | null): Outcome<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return refused(notInPlan('slot', slotId));
  if (slot.kind === 'cloth' || slot.kind === 'batting') {
    return refused({
      where: slot.name,
      what: 'is cut, so its lay says what a coat takes',
      mend: 'Look at its lay.',
    });
  }
  if (amount !== null && !(amount >= 0 && amount <= 1_000_000)) {
    return refused({
      where: `Amount of ${slot.name} for one coat`,
      what: `is ${amount}`,
      mend: 'Type 0 or more.',
    });
  }
  return found({
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
export function setForChild(plan: CoatPlan, isForChild: boolean | null): Outcome<Edited> {
  const { isForChild: _, ...rest } = plan;
  return found({
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
export function setThreadWastage(plan: CoatPlan, ratio: number): Outcome<Edited> {
  if (!(ratio >= 0 && ratio <= 2)) {
    return refused({
      where: 'Wastage of thread',
      what: 'is below nothing or above 200 %',
      mend: 'Type 0 to 200 %.',
    });
  }
  return found({
    plan: { ...plan, threadWastageRatio: ratio },
    said: `Wastage of thread is ${Number((ratio * 100).toFixed(1))} %.`,
  });
}

const leastFootLiftMm = 2;
const mostFootLiftMm = 40;

/** How far the foot of the machine lifts; null goes back to that of a usual domestic one. */
export function setFootLift(plan: CoatPlan, footLiftMm: number | null, text = inMm): Outcome<Edited> {
  const { footLiftMm: _, ...rest } = plan;
  if (footLiftMm === null)
    return found({ plan: rest, said: 'The foot lifts as that of a usual domestic machine.' });
  if (!(footLiftMm >= leastFootLiftMm && footLiftMm <= mostFootLiftMm)) {
    return refused({
      where: 'Lift of the foot',
      what: Number.isFinite(footLiftMm) ? `is ${text(footLiftMm)}` : 'is not a number',
      mend: `Type ${text(leastFootLiftMm)} to ${text(mostFootLiftMm)}: the height under the raised foot.`,
    });
  }
  return found({ plan: { ...rest, footLiftMm }, said: `The foot of the machine lifts ${text(footLiftMm)}.` });
}

/** Minutes at the machine for one coat, by which needles wear out; 0 to 100,000. */
export function setSewingMinutes(plan: CoatPlan, minutes: number): Outcome<Edited> {
  if (!(minutes >= 0 && minutes <= 100_000)) {
    return refused({
      where: 'Sewing time of one coat',
      what: 'is no time that a coat takes',
      mend: 'Give it as 45 min, 1.5 h or 1:30.',
    });
  }
  return found({
    plan: { ...plan, sewingMinutesPerCoat: minutes },
    said: `The sewing time of one coat is ${showQuantity('duration', minutes, { system: 'metric' })}.`,
  });
}
