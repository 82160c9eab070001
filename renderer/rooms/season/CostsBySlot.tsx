/** One coat of each plan side by side: what its material costs, slot by slot, and for which plans that is not known. */
import { useEffect, useState } from 'react';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import { costBySlot, type PlanCost } from '../../../shared-core/cost/cost-by-slot.ts';
import type { PlanInSeason } from '../../../shared-core/flow/season/season.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { listed } from '../../../shared-core/plan/edits/edited.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { standing } from '../../../shared-core/stash/cutting.ts';
import { call } from '../../client/api.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { BarPicture } from '../../parts/drawing/BarPicture.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './SeasonRoom.module.css';

export interface CostsBySlotProps {
  /** Every plan of the workshop. */
  readonly rows: readonly PlanRow[];
  /** Those that went through the season; null before they did. */
  readonly planned: readonly PlanInSeason[] | null;
}

export function CostsBySlot({ rows, planned }: CostsBySlotProps) {
  const { asCut, problems } = useCostsAsCut(rows);
  const costs = rows.flatMap((row): PlanCost[] => {
    const inSeason = planned?.find(({ plan }) => plan.id === row.id);
    const cost = inSeason ? plannedCost(inSeason) : asCut.find(({ planId }) => planId === row.id);
    return cost ? [cost] : [];
  });
  const bars = costBySlot(costs);
  const unknown = rows.filter(({ id }) => bars.bars.every(({ key }) => key !== id)).map(({ name }) => name);
  return (
    <section aria-labelledby="by-slot" className={style.bySlot}>
      <h2 id="by-slot">One coat by slot</h2>
      <Problems problems={problems} />
      {bars.bars.length > 0 && (
        <BarPicture
          bars={bars}
          label="What the material of one coat costs, plan by plan and slot by slot. The table below has the same figures."
          head="Slot"
          noteOf={(planId) => noteOf(costs.find((cost) => cost.planId === planId))}
        />
      )}
      {unknown.length > 0 && (
        <p className="quiet">
          Not known yet for {listed(unknown)}: put a plan into the season, or record its cutting.
        </p>
      )}
    </section>
  );
}

function noteOf(cost: PlanCost | undefined): string {
  if (!cost) return '';
  const from = cost.from === 'as cut' ? 'as it was cut' : 'as planned in the season';
  return cost.isIncomplete ? `${from}; a part of it has no price yet` : from;
}

function plannedCost({ plan, estimate: { cost } }: PlanInSeason): PlanCost {
  return {
    planId: plan.id,
    name: plan.name,
    coatCount: coatTotal(plan),
    slots: cost.lines.map(({ slotId, costMinor }) => ({ name: slotById(plan, slotId).name, costMinor })),
    from: 'planned',
    isIncomplete: cost.isIncomplete,
  };
}

/** Of all plans that have cuttings, by the ledger. */
function useCostsAsCut(rows: readonly PlanRow[]) {
  const { workshop } = useWorkshop();
  const [asCut, setAsCut] = useState<readonly PlanCost[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    let isCurrent = true;
    const read = async () => {
      const cuttings = await call('listCuttings', workshop, { planId: null });
      if (!cuttings.ok) return isCurrent && setProblems(cuttings.problems);
      const cutIds = new Set(standing(cuttings.value.rows).map(({ planId }) => planId));
      const found: PlanCost[] = [];
      for (const { id, name } of rows.filter((row) => cutIds.has(row.id))) {
        const answer = await call('readCutSheet', workshop, { planId: id });
        if (!isCurrent) return;
        if (!answer.ok) return setProblems(answer.problems);
        const { slots, coatCount } = answer.value.sheet;
        const costs = slots.map(({ slotName, costMinor }) => ({ name: slotName, costMinor }));
        found.push({ planId: id, name, coatCount, slots: costs, from: 'as cut', isIncomplete: false });
      }
      if (isCurrent) setAsCut(found);
    };
    void read();
    return () => {
      isCurrent = false;
    };
  }, [rows, workshop]);
  return { asCut, problems };
}
