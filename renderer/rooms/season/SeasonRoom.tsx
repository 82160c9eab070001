/** The season: coats in the order of their priority on one stash, what each lacks, and one list for all. */
import { useCallback, useEffect, useState } from 'react';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { CostsBySlot } from './CostsBySlot.tsx';
import { SeasonFigures } from './SeasonFigures.tsx';
import { SeasonOrder } from './SeasonOrder.tsx';
import { useSeasonRun } from './season-run.ts';
import style from './SeasonRoom.module.css';
import type { PutIn } from './put-in.ts';

export function SeasonRoom() {
  const { workshop } = useWorkshop();
  const [input, setInput] = useState<SeasonInput | null>(null);
  const [rows, setRows] = useState<readonly PlanRow[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const run = useSeasonRun(input);

  const read = useCallback(async () => {
    const [season, plans] = await Promise.all([
      call('readSeason', workshop, {}),
      call('listPlans', workshop, {}),
    ]);
    setProblems([season, plans].flatMap((answer) => (answer.ok ? [] : answer.problems)));
    if (season.ok) setInput(season.value);
    if (plans.ok) setRows(plans.value.rows);
  }, [workshop]);
  useEffect(() => void read(), [read]);

  if (!input) return <Problems problems={problems} />;
  const entries: readonly PutIn[] = input.entries.map(({ plan, coatCount }) => ({
    planId: plan.id,
    coatCount,
  }));
  const put = async (next: readonly PutIn[]) => {
    const answer = await call('saveSeason', workshop, { entries: [...next] });
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) setInput(answer.value);
  };
  const others = rows.filter((row) => entries.every(({ planId }) => planId !== row.id));
  return (
    <div className={style.room}>
      <RoomHead
        title="Season"
        lead="Coats that draw on one stash. The first has it to itself; each further one has what is left."
      />
      <Problems problems={problems} />
      {rows.length === 0 ? (
        <EmptyState
          title="No coat planned yet"
          action={<a href={routeHash({ kind: 'coats' })}>Go to your coats</a>}
        >
          A season puts several plans in order. Plan a coat first.
        </EmptyState>
      ) : (
        <>
          <SeasonOrder
            input={input}
            figures={run.figures}
            onChange={(next) => void put(next)}
            entries={entries}
          />
          <AddPlan rows={others} onAdd={(planId) => void put([...entries, { planId, coatCount: null }])} />
        </>
      )}
      <Problems problems={run.problems} />
      {entries.length > 0 && <Progress run={run} />}
      {run.figures && input.entries.length > 0 && <SeasonFigures input={input} figures={run.figures} />}
      {rows.length > 0 && <CostsBySlot rows={rows} planned={run.figures?.plans ?? null} />}
    </div>
  );
}

function Progress({ run }: { run: ReturnType<typeof useSeasonRun> }) {
  const { progress } = run;
  if (!progress) {
    return (
      <div className={style.progress}>
        <Button look="quiet" onClick={run.again}>
          {run.figures ? 'Look for better lays' : 'Work it out'}
        </Button>
      </div>
    );
  }
  return (
    <div className={style.progress} role="status">
      <span>
        {progress.isQuick ? 'Working it out' : 'Looking for better lays'}: {progress.doneCount} of{' '}
        {progress.allCount} done, now {progress.now}.
      </span>
      <Button look="quiet" onClick={run.stop}>
        Stop here
      </Button>
    </div>
  );
}

function AddPlan({ rows, onAdd }: { rows: readonly PlanRow[]; onAdd: (planId: string) => void }) {
  const [planId, setPlanId] = useState('');
  if (rows.length === 0) return <p className="quiet small">All your plans are in the season.</p>;
  return (
    <div className={style.add}>
      <ChoiceField
        label="Another plan"
        value={planId}
        options={rows.map((row) => ({
          value: row.id as string,
          label: row.size ? `${row.name}, ${row.size}` : row.name,
        }))}
        onChange={setPlanId}
        emptyLabel="Choose a plan"
      />
      <Button
        disabled={planId === ''}
        onClick={() => {
          onAdd(planId);
          setPlanId('');
        }}
      >
        Put it in last
      </Button>
    </div>
  );
}
