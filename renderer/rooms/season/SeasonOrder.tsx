/** The plans in their order: moved up and down, counted, taken out; each with how it stands. */
import { say } from '../../../shared-core/wording/say.ts';
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import { shortSentences } from '../../../shared-core/flow/season/season-report.ts';
import { coatTotal, plansBySize } from '../../../shared-core/plan/model/sizes.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import type { PutIn } from './put-in.ts';
import type { SeasonFigures } from './season-run.ts';
import style from './SeasonRoom.module.css';

export interface SeasonOrderProps {
  readonly input: SeasonInput;
  readonly entries: readonly PutIn[];
  readonly figures: SeasonFigures | null;
  readonly onChange: (next: readonly PutIn[]) => void;
}

export function SeasonOrder({ input, entries, figures, onChange }: SeasonOrderProps) {
  const system = useSystem();
  if (entries.length === 0) {
    return <p className="quiet">{say('season-order.nothing-is-in-the-season-yet')}</p>;
  }
  const moved = (from: number, to: number) => {
    const next = [...entries];
    next.splice(to, 0, ...next.splice(from, 1));
    onChange(next);
  };
  return (
    <DataTable
      rows={input.entries.map((entry) => ({
        ...entry,
        done: figures?.plans.find((each) => each.plan.id === entry.plan.id),
      }))}
      keyOf={({ plan }) => plan.id}
      columns={[
        { head: say('season-order.order'), isNumber: true, cell: (_, index) => index + 1 },
        {
          head: say('season-order.plan'),
          cell: ({ plan }) => (
            <>
              <a href={routeHash({ kind: 'coat', planId: plan.id, step: 'plan' })}>{plan.name}</a>{' '}
              <span className="quiet small">{plan.size}</span>
            </>
          ),
        },
        {
          head: say('common.coats'),
          cellClass: style.count,
          cell: ({ plan, coatCount }) =>
            plansBySize(plan).length > 1 ? (
              <span>
                {coatTotal(plan)} <span className="quiet small">{say('season-order.in-its-sizes')}</span>
              </span>
            ) : (
              <SettledField
                label={say('season-order.coats-of', { planName: plan.name })}
                isLabelHidden
                quantity="count"
                value={coatCount ?? plan.coatCount}
                aboveZero
                max={1000}
                onSet={(count) =>
                  onChange(
                    entries.map((entry) =>
                      entry.planId === plan.id ? { ...entry, coatCount: count } : entry,
                    ),
                  )
                }
              />
            ),
        },
        {
          head: say('common.stash'),
          cell: ({ done }) =>
            done ? <Stands lacks={shortSentences(done, system)} /> : <span className="quiet">…</span>,
        },
        {
          head: say('common.material'),
          align: 'end',
          cell: ({ done }) => (
            <>
              {done ? <Money amountMinor={done.estimate.cost.batchMinor} /> : '…'}
              {done?.estimate.cost.isIncomplete && (
                <span className="quiet small">{` ${say('season-order.not-complete')}`}</span>
              )}
            </>
          ),
        },
        {
          head: say('common.actions'),
          isHeadHidden: true,
          align: 'end',
          cellClass: style.actions,
          cell: ({ plan }, index) => (
            <>
              <Button
                look="quiet"
                aria-label={say('season-order.earlier', { planName: plan.name })}
                disabled={index === 0}
                onClick={() => moved(index, index - 1)}
              >
                ↑
              </Button>
              <Button
                look="quiet"
                aria-label={say('season-order.later', { planName: plan.name })}
                disabled={index === entries.length - 1}
                onClick={() => moved(index, index + 1)}
              >
                ↓
              </Button>
              <Button
                look="quiet"
                aria-label={say('season-order.take-out-2', { planName: plan.name })}
                onClick={() => onChange(entries.filter(({ planId }) => planId !== plan.id))}
              >
                {say('season-order.take-out')}
              </Button>
            </>
          ),
        },
      ]}
    />
  );
}

/** Whether the stash covers a plan, or what it lacks, slot by slot. */
function Stands({ lacks }: { lacks: readonly string[] }) {
  if (lacks.length === 0) return <strong className={style.good}>{say('season-order.covered')}</strong>;
  return (
    <details>
      <summary className={style.short}>
        {say('season-order.short-in-slots', { lacksCount: lacks.length })}
      </summary>
      <ul className={`${style.lacks} small`}>
        {lacks.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}
