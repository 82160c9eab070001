/** What is ticked on the open coat's list, kept in the workshop's file, and how the list is walked. */
import { useMemo, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { OfferId, PlanId } from '../../../shared-core/stash/stash.ts';
import type { Arrangement } from '../../../shared-core/to-buy/shopping-list.ts';
import { useChange } from '../../client/queries/changes.ts';
import { type Read, useRead } from '../../client/queries/reads.ts';

export interface ShoppingTrip {
  readonly ticked: ReadonlySet<OfferId>;
  readonly arrangement: Arrangement;
  readonly read: Read<unknown>;
  /** What was refused of the last change. */
  readonly problems: readonly Problem[];
  readonly tick: (offerId: OfferId, isTicked: boolean) => void;
  /** The state of some lines as a phone had it; gives what was refused. */
  readonly takeTicks: (ticks: {
    readonly ticked: readonly OfferId[];
    readonly open: readonly OfferId[];
  }) => Promise<readonly Problem[]>;
  readonly arrange: (arrangement: Arrangement) => void;
}

export function useShoppingTrip(planId: PlanId): ShoppingTrip {
  const read = useRead('readTicks', { planId });
  const { make: setTick } = useChange('setTick');
  const { make: setTicks } = useChange('setTicks');
  const [arrangement, arrange] = useState<Arrangement>('supplier');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  /** Shown at once; given up when the change is answered: what is kept then stands in what was read. */
  const [onTheWay, setOnTheWay] = useState<ReadonlyMap<OfferId, boolean>>(new Map());
  const kept = read.data?.offerIds;
  const ticked = useMemo(() => {
    const shown = new Set(kept);
    for (const [offerId, isTicked] of onTheWay) {
      if (isTicked) shown.add(offerId);
      else shown.delete(offerId);
    }
    return shown;
  }, [kept, onTheWay]);

  const tick = async (offerId: OfferId, isTicked: boolean) => {
    setOnTheWay((now) => new Map(now).set(offerId, isTicked));
    const answer = await setTick({ planId, offerId, isTicked });
    setProblems(answer.ok ? [] : answer.problems);
    setOnTheWay((now) => {
      // A later change of the same line is still on its way.
      if (now.get(offerId) !== isTicked) return now;
      const others = new Map(now);
      others.delete(offerId);
      return others;
    });
  };
  const takeTicks: ShoppingTrip['takeTicks'] = async ({ ticked, open }) => {
    const answer = await setTicks({ planId, ticked: [...ticked], open: [...open] });
    return answer.ok ? [] : answer.problems;
  };
  return {
    ticked,
    arrangement,
    read,
    problems,
    tick: (offerId, isTicked) => void tick(offerId, isTicked),
    takeTicks,
    arrange,
  };
}
