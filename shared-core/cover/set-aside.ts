/** Whether what a coat has set aside is still what its cover takes. */
import { say } from '../wording/say.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { listed } from '../wording/listed.ts';
import type { SetAside } from '../stash/cutting.ts';
import { toMilli } from '../stash/stash.ts';
import { amountWords, type WordsContext } from './cover-words.ts';
import type { SlotCover } from './slot-cover.ts';
import { keptOf } from './held-back.ts';

export interface SetAsideStand {
  readonly state: 'nothing' | 'fits' | 'changed';
  /** What the cover takes beyond what is set aside there, by slot, in the kind's unit. */
  readonly missing: readonly { readonly slotId: string; readonly amount: number }[];
}

/** Two lays of the same pieces differ by that much without anybody having changed the plan, mm. */
const layToleranceMm = 1;

/** What to set aside so that nobody else uses it: all that the cover takes with its margins, each place once. */
export function usesToSetAside(covers: readonly SlotCover[]): SetAside[] {
  const places = new Map<string, SetAside>();
  for (const use of covers.flatMap((slotCover) => slotCover.uses)) {
    const { lotId, lengthId, free } = use;
    const amount = keptOf(use);
    if (toMilli(amount) < 1) continue;
    const key = `${lotId} ${lengthId ?? ''}`;
    const before = places.get(key);
    // Rounded up to what the ledger counts, but never beyond what is there.
    const milli = Math.min(Math.ceil(amount * 1000 - 1e-6), Math.floor(free * 1000 + 1e-6));
    places.set(key, { lotId, lengthId, amount: (before?.amount ?? 0) + milli / 1000 });
  }
  return [...places.values()];
}

export function setAsideStand(setAside: readonly SetAside[], covers: readonly SlotCover[]): SetAsideStand {
  if (setAside.length === 0) return { state: 'nothing', missing: [] };
  const left = new Map(setAside.map((each) => [`${each.lotId} ${each.lengthId ?? ''}`, each.amount]));
  const missing = covers.flatMap((slotCover) => {
    const amount = slotCover.uses.reduce((sum, use) => {
      const key = `${use.lotId} ${use.lengthId ?? ''}`;
      const here = Math.min(keptOf(use), left.get(key) ?? 0);
      left.set(key, (left.get(key) ?? 0) - here);
      return sum + keptOf(use) - here;
    }, 0);
    const tolerance = slotCover.lay ? layToleranceMm : 0.001;
    return amount > tolerance ? [{ slotId: slotCover.slotId, amount }] : [];
  });
  return { state: missing.length > 0 ? 'changed' : 'fits', missing };
}

/** "What was set aside no longer fits the plan: the shell takes 0.42 m more, the batting 1.2 m." */
export function setAsideSentence(stand: SetAsideStand, plan: CoatPlan, context: WordsContext): string {
  switch (stand.state) {
    case 'nothing':
      return say('set-aside.nothing-is-set-aside-for-this');
    case 'fits':
      return say('set-aside.what-the-cover-takes-is-set');
    case 'changed':
      return say('set-aside.what-was-set-aside-no-longer', {
        missing: listed(
          stand.missing.map(({ slotId, amount }) =>
            say('set-aside.for-the', {
              amountWords: amountWords({ slotId }, amount, context),
              slotByIdName: slotById(plan, slotId).name,
            }),
          ),
        ),
      });
    default:
      return stand.state satisfies never;
  }
}
