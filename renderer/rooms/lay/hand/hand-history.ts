/** Steps of a lay by hand, to be undone and redone. Kept while the window is open, so that leaving the room loses none. */
import type { HandLay } from '../../../../shared-core/lay/by-hand.ts';

export interface HandHistory {
  readonly past: readonly HandLay[];
  readonly now: HandLay;
  readonly future: readonly HandLay[];
}

/** So many steps can be undone. */
const maxSteps = 200;

export function historyOf(now: HandLay): HandHistory {
  return { past: [], now, future: [] };
}

/** After a step; one that changed nothing is none. */
export function stepped(history: HandHistory, next: HandLay): HandHistory {
  if (next === history.now) return history;
  return { past: [...history.past, history.now].slice(-maxSteps), now: next, future: [] };
}

export function undone({ past, now, future }: HandHistory): HandHistory {
  const before = past.at(-1);
  return before ? { past: past.slice(0, -1), now: before, future: [now, ...future] } : { past, now, future };
}

export function redone({ past, now, future }: HandHistory): HandHistory {
  const [next, ...later] = future;
  return next ? { past: [...past, now], now: next, future: later } : { past, now, future };
}

const kept = new Map<string, HandHistory>();

/** key: names the job, so that a changed plan begins anew. */
export function keptHistory(key: string): HandHistory | undefined {
  return kept.get(key);
}

export function keepHistory(key: string, history: HandHistory | null): void {
  if (history === null) kept.delete(key);
  else kept.set(key, history);
}
