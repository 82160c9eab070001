/**
 * A spec as a person's time: each click and each field is done in the page and counted by the operators of the
 * keystroke-level model. Card, Moran & Newell, "The keystroke-level model for user performance time with interactive
 * systems", Communications of the ACM 23 (7), 1980, pp. 396-410, doi:10.1145/358886.358895: it foretells how long one
 * who knows the way takes without a slip.
 */
import type { Locator } from '@playwright/test';

/** Seconds. K: a key or a press of the mouse, by an average typist who is no secretary (40 words a minute). */
export const operatorSeconds = { K: 0.28, P: 1.1, H: 0.4, M: 1.35 } as const;

type Operator = keyof typeof operatorSeconds;
type Counts = Readonly<Record<Operator, number>>;

export interface TimedStep {
  readonly name: string;
  /** Things done: a click, a field filled in. */
  readonly actCount: number;
  readonly counts: Counts;
  /** By the model, without what the machine takes. */
  readonly seconds: number;
  /** What the machine took meanwhile, by its clock. */
  readonly responseSeconds: number;
}

export interface Stopwatch {
  /** Ends the step before, and begins another. */
  begin(name: string): void;
  /** Decides, points and presses. */
  click(target: Locator): Promise<void>;
  /** Decides on a field and its text together, points at it, presses, and types. */
  fill(field: Locator, text: string): Promise<void>;
  /** Waits as the person does, for the machine. */
  wait(until: () => Promise<unknown>): Promise<void>;
  steps(): readonly TimedStep[];
}

export function keystrokeLevel(): Stopwatch {
  interface Open {
    readonly name: string;
    actCount: number;
    counts: Record<Operator, number>;
    responseMs: number;
  }
  const steps: Open[] = [];
  let hand: 'mouse' | 'keys' = 'mouse';
  const now = (): Open => {
    const step = steps.at(-1);
    if (!step) throw new Error('no step has begun');
    return step;
  };
  const count = (operator: Operator, times = 1) => {
    now().counts[operator] += times;
  };
  const toHand = (next: typeof hand) => {
    if (hand !== next) count('H');
    hand = next;
  };
  const point = () => {
    count('M');
    toHand('mouse');
    count('P');
    count('K');
  };
  const timed = async (work: () => Promise<unknown>) => {
    const step = now();
    const fromMs = performance.now();
    await work();
    step.responseMs += performance.now() - fromMs;
  };
  return {
    begin(name) {
      steps.push({ name, actCount: 0, counts: { K: 0, P: 0, H: 0, M: 0 }, responseMs: 0 });
    },
    async click(target) {
      now().actCount++;
      point();
      await timed(() => target.click());
    },
    async fill(field, text) {
      now().actCount++;
      point();
      toHand('keys');
      // A capital takes the shift key too.
      count('K', text.length + [...text].filter((letter) => /\p{Lu}/u.test(letter)).length);
      await timed(() => field.fill(text));
    },
    wait: timed,
    steps: () =>
      steps.map(({ name, actCount, counts, responseMs }) => ({
        name,
        actCount,
        counts: { ...counts },
        seconds: (Object.keys(operatorSeconds) as Operator[]).reduce(
          (sum, operator) => sum + counts[operator] * operatorSeconds[operator],
          0,
        ),
        responseSeconds: responseMs / 1000,
      })),
  };
}

/** "| Draft a coat | 3 | 26 | 12 s |": what is done, keys and presses, and the person's time. */
export function stopwatchRow({ name, actCount, counts, seconds }: TimedStep): string {
  return `| ${name} | ${actCount} | ${counts.K} | ${Math.round(seconds)} s |`;
}
