/** One coat of each plan side by side: what its material costs, slot by slot, and for which plans that is not known. */
import { say } from '../../../shared-core/wording/say.ts';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import { costBySlot, type PlanCost } from '../../../shared-core/cost/cost-by-slot.ts';
import type { PlanInSeason } from '../../../shared-core/flow/season/season.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { standing } from '../../../shared-core/stash/cutting.ts';
import { readTogether, useRead, useReads } from '../../client/queries/reads.ts';
import { BarPicture } from '../../parts/drawing/BarPicture.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './SeasonRoom.module.css';

export interface CostsBySlotProps {
  /** Every plan of the workshop. */
  readonly rows: readonly PlanRow[];
  /** Those that went through the season; null before they did. */
  readonly planned: readonly PlanInSeason[] | null;
}

export function CostsBySlot({ rows, planned }: CostsBySlotProps) {
  const { asCut, read } = useCostsAsCut(rows);
  const costs = rows.flatMap((row): PlanCost[] => {
    const inSeason = planned?.find(({ plan }) => plan.id === row.id);
    const cost = inSeason ? plannedCost(inSeason) : asCut.find(({ planId }) => planId === row.id);
    return cost ? [cost] : [];
  });
  const bars = costBySlot(costs);
  const unknown = rows.filter(({ id }) => bars.bars.every(({ key }) => key !== id)).map(({ name }) => name);
  return (
    <section aria-labelledby="by-slot" className={style.bySlot}>
      <h2 id="by-slot">{say('costs-by-slot.one-coat-by-slot')}</h2>
      <ReadProblems read={read} />
      {bars.bars.length > 0 && (
        <BarPicture
          bars={bars}
          label={say('costs-by-slot.what-the-material-of-one-coat')}
          head={say('common.slot')}
          noteOf={(planId) => noteOf(costs.find((cost) => cost.planId === planId))}
        />
      )}
      {unknown.length > 0 && (
        <p className="quiet">{say('costs-by-slot.not-known-yet-for-put-a', { unknown: listed(unknown) })}</p>
      )}
    </section>
  );
}

function noteOf(cost: PlanCost | undefined): string {
  if (!cost) return '';
  const from =
    cost.from === 'as cut'
      ? say('costs-by-slot.as-it-was-cut')
      : say('costs-by-slot.as-planned-in-the-season');
  return cost.isIncomplete ? say('costs-by-slot.a-part-of-it-has-no', { from }) : from;
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
  const cuttings = useRead('listCuttings', { planId: null });
  const cutIds = new Set(standing(cuttings.data?.rows ?? []).map(({ planId }) => planId));
  const cut = rows.filter(({ id }) => cutIds.has(id));
  const sheets = useReads(
    'readCutSheet',
    cut.map(({ id }) => ({ planId: id })),
  );
  const asCut = cut.flatMap(({ id, name }, index): PlanCost[] => {
    const sheet = sheets[index]?.data?.sheet;
    if (!sheet) return [];
    const slots = sheet.slots.map(({ slotName, costMinor }) => ({ name: slotName, costMinor }));
    return [{ planId: id, name, coatCount: sheet.coatCount, slots, from: 'as cut', isIncomplete: false }];
  });
  return { asCut, read: readTogether([cuttings, ...sheets]) };
}
