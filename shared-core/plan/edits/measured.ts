/** Edits that put a maker's own figure in the place of an estimate, and take it away again. */
import { say } from '../../wording/say.ts';
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
    get where() {
      return say('measured.weight-of-the-coat');
    },
    get isMeasured() {
      return say('measured.the-coat-weighs-what-you-weighed');
    },
    get isEstimated() {
      return say('measured.the-weight-follows-from-the-materials');
    },
    max: 1e5,
  },
  packedCm3: {
    get where() {
      return say('measured.packed-size-of-the-coat');
    },
    get isMeasured() {
      return say('measured.the-packed-size-is-as-you');
    },
    get isEstimated() {
      return say('measured.the-packed-size-follows-from-the');
    },
    max: 1e6,
  },
  clo: {
    get where() {
      return say('measured.warmth-of-the-coat');
    },
    get isMeasured() {
      return say('measured.the-warmth-is-as-it-was');
    },
    get isEstimated() {
      return say('measured.the-warmth-is-estimated-from-the');
    },
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
    what: value > max ? say('common.is-too-large-to-be-true') : say('measured.is-not-above-0'),
    fix: say('common.check-the-number-and-its-unit'),
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
      what: say('measured.is-cut-so-its-lay-says'),
      fix: say('measured.look-at-its-lay'),
    });
  }
  if (amount !== null && !(amount >= 0 && amount <= 1_000_000)) {
    return err({
      where: say('measured.amount-of-for-one-coat', { slotName: slot.name }),
      what: say('measured.is', { amount }),
      fix: say('measured.type-0-or-more'),
    });
  }
  return ok({
    plan: {
      ...plan,
      slots: plan.slots.map((each) => (each === slot ? { ...slot, amountPerCoat: amount } : each)),
    },
    said:
      amount === null
        ? say('measured.what-a-coat-takes-of-is', { slotName: slot.name })
        : say('measured.what-a-coat-takes-of-is-2', { slotName: slot.name }),
  });
}

/** For a child or not, as the maker says; null leaves it to name and size. */
export function setForChild(plan: CoatPlan, isForChild: boolean | null): Result<Edited> {
  const { isForChild: _, ...rest } = plan;
  return ok({
    plan: isForChild === null ? rest : { ...rest, isForChild },
    said:
      isForChild === null
        ? say('measured.whether-it-is-for-a-child')
        : isForChild
          ? say('measured.this-coat-is-for-a-child')
          : say('measured.this-coat-is-not-for-a'),
  });
}

/** Thread that is lost over what is sewn, 0.15 is 15 %; 0 to 2. */
export function setThreadWastage(plan: CoatPlan, ratio: number): Result<Edited> {
  if (!(ratio >= 0 && ratio <= 2)) {
    return err({
      where: say('common.wastage-of-thread'),
      what: say('measured.is-below-nothing-or-above-200'),
      fix: say('measured.type-0-to-200'),
    });
  }
  return ok({
    plan: { ...plan, threadWastageRatio: ratio },
    said: say('measured.wastage-of-thread-is', { ratio: Number((ratio * 100).toFixed(1)) }),
  });
}

const minFootLiftMm = 2;
const maxFootLiftMm = 40;

/** How far the foot of the machine lifts; null goes back to that of a usual domestic one. */
export function setFootLift(plan: CoatPlan, footLiftMm: number | null, text = inMm): Result<Edited> {
  const { footLiftMm: _, ...rest } = plan;
  if (footLiftMm === null) return ok({ plan: rest, said: say('measured.the-foot-lifts-as-that-of') });
  if (!(footLiftMm >= minFootLiftMm && footLiftMm <= maxFootLiftMm)) {
    return err({
      where: say('measured.lift-of-the-foot'),
      what: Number.isFinite(footLiftMm)
        ? say('measured.is-2', { text: text(footLiftMm) })
        : say('common.is-not-a-number'),
      fix: say('measured.type-to-the-height-under-the', {
        text: text(minFootLiftMm),
        text2: text(maxFootLiftMm),
      }),
    });
  }
  return ok({
    plan: { ...rest, footLiftMm },
    said: say('measured.the-foot-of-the-machine-lifts', { text: text(footLiftMm) }),
  });
}

/** Minutes at the machine for one coat, by which needles wear out; 0 to 100,000. */
export function setSewingMinutes(plan: CoatPlan, minutes: number): Result<Edited> {
  if (!(minutes >= 0 && minutes <= 100_000)) {
    return err({
      where: say('common.sewing-time-of-one-coat'),
      what: say('measured.is-no-time-that-a-coat'),
      fix: say('measured.give-it-as-45-min-1'),
    });
  }
  return ok({
    plan: { ...plan, sewingMinutesPerCoat: minutes },
    said: say('measured.the-sewing-time-of-one-coat', {
      minutes: showQuantity('duration', minutes, { system: 'metric' }),
    }),
  });
}
