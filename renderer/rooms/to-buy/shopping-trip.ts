/** What is ticked on the open coat's list, kept in the workshop's file, and how the list is walked. */
import { useCallback, useEffect, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { OfferId, PlanId } from '../../../shared-core/stash/stash.ts';
import type { Arrangement } from '../../../shared-core/to-buy/shopping-list.ts';
import { call } from '../../client/api.ts';
import { useWorkshop } from '../../client/workshop.ts';

export interface ShoppingTrip {
  readonly ticked: ReadonlySet<OfferId>;
  readonly arrangement: Arrangement;
  readonly problems: readonly Problem[];
  readonly tick: (offerId: OfferId, isTicked: boolean) => void;
  /** The state of some lines as a phone had it; gives what was refused. */
  readonly takeTicks: (ticks: {
    readonly ticked: readonly OfferId[];
    readonly open: readonly OfferId[];
  }) => Promise<readonly Problem[]>;
  readonly arrange: (arrangement: Arrangement) => void;
  /** Reads the ticks again, after a purchase came in. */
  readonly reload: () => Promise<void>;
}

export function useShoppingTrip(planId: PlanId): ShoppingTrip {
  const { workshop } = useWorkshop();
  const [ticked, setTicked] = useState<ReadonlySet<OfferId>>(new Set());
  const [arrangement, arrange] = useState<Arrangement>('supplier');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const reload = useCallback(async () => {
    const answer = await call('readTicks', workshop, { planId });
    if (answer.ok) setTicked(new Set(answer.value.offerIds));
    else setProblems(answer.problems);
  }, [workshop, planId]);
  useEffect(() => void reload(), [reload]);

  const tick = useCallback(
    (offerId: OfferId, isTicked: boolean) => {
      // Shown at once; what is refused is taken back.
      setTicked((now) => {
        const next = new Set(now);
        if (isTicked) next.add(offerId);
        else next.delete(offerId);
        return next;
      });
      void call('setTick', workshop, { planId, offerId, isTicked }).then((answer) => {
        setProblems(answer.ok ? [] : answer.problems);
        if (!answer.ok) void reload();
      });
    },
    [workshop, planId, reload],
  );
  const takeTicks = useCallback<ShoppingTrip['takeTicks']>(
    async (ticks) => {
      const answer = await call('setTicks', workshop, {
        planId,
        ticked: [...ticks.ticked],
        open: [...ticks.open],
      });
      if (answer.ok) setTicked(new Set(answer.value.offerIds));
      return answer.ok ? [] : answer.problems;
    },
    [workshop, planId],
  );
  return { ticked, arrangement, problems, tick, takeTicks, arrange, reload };
}
