/** The season: coats in the order of their priority on one stash, what each lacks, and one list for all. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { readTogether, useRead } from '../../client/queries/reads.ts';
import { routeHash } from '../../client/route.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { CostsBySlot } from './CostsBySlot.tsx';
import { SeasonFigures } from './SeasonFigures.tsx';
import { SeasonOrder } from './SeasonOrder.tsx';
import { useSeasonRun } from './season-run.ts';
import style from './SeasonRoom.module.css';
import type { PutIn } from './put-in.ts';

const noRows: readonly PlanRow[] = [];

export function SeasonRoom() {
  const season = useRead('readSeason', {});
  const plans = useRead('listPlans', {});
  const { make: saveSeason } = useChange('saveSeason');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const input = season.data ?? null;
  const rows = plans.data?.rows ?? noRows;
  const run = useSeasonRun(input);
  const read = { ...readTogether([season, plans]), data: season.data };

  if (!input) return <ReadProblems read={read} />;
  const entries: readonly PutIn[] = input.entries.map(({ plan, coatCount }) => ({
    planId: plan.id,
    coatCount,
  }));
  const put = async (next: readonly PutIn[]) => {
    const answer = await saveSeason({ entries: [...next] });
    setProblems(answer.ok ? [] : answer.problems);
  };
  const others = rows.filter((row) => entries.every(({ planId }) => planId !== row.id));
  return (
    <div className={style.room}>
      <RoomHead title={say('common.season')} lead={say('season-room.coats-that-draw-on-one-stash')} />
      <ReadProblems read={read} />
      <Problems problems={problems} />
      {rows.length === 0 ? (
        <EmptyState
          title={say('season-room.no-coat-planned-yet')}
          action={<a href={routeHash({ kind: 'coats' })}>{say('season-room.go-to-your-coats')}</a>}
        >
          {say('season-room.a-season-puts-several-plans-in')}
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
          {run.figures ? say('season-room.look-for-better-lays') : say('season-room.work-it-out')}
        </Button>
      </div>
    );
  }
  return (
    <div className={style.progress} role="status">
      <span>
        {say('season-room.looking-for-better-lays-of-done', {
          ifQuick: progress.isQuick ? 'yes' : 'no',
          doneCount: progress.doneCount,
          allCount: progress.allCount,
          now: progress.now,
        })}
      </span>
      <Button look="quiet" onClick={run.stop}>
        {say('season-room.stop-here')}
      </Button>
    </div>
  );
}

function AddPlan({ rows, onAdd }: { rows: readonly PlanRow[]; onAdd: (planId: string) => void }) {
  const [planId, setPlanId] = useState('');
  if (rows.length === 0) return <p className="quiet small">{say('season-room.all-your-plans-are-in-the')}</p>;
  return (
    <div className={style.add}>
      <ChoiceField
        label={say('season-room.another-plan')}
        value={planId}
        options={rows.map((row) => ({
          value: row.id as string,
          label: row.size ? `${row.name}, ${row.size}` : row.name,
        }))}
        onChange={setPlanId}
        emptyLabel={say('season-room.choose-a-plan')}
      />
      <Button
        disabled={planId === ''}
        onClick={() => {
          onAdd(planId);
          setPlanId('');
        }}
      >
        {say('season-room.put-it-in-last')}
      </Button>
    </div>
  );
}
