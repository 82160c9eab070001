/** The plans in their order: moved up and down, counted, taken out; each with how it stands. */
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
    return <p className="quiet">Nothing is in the season yet. Put in the coat that must be made first.</p>;
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
        { head: 'Order', isNumber: true, cell: (_, index) => index + 1 },
        {
          head: 'Plan',
          cell: ({ plan }) => (
            <>
              <a href={routeHash({ kind: 'coat', planId: plan.id, step: 'plan' })}>{plan.name}</a>{' '}
              <span className="quiet small">{plan.size}</span>
            </>
          ),
        },
        {
          head: 'Coats',
          cellClass: style.count,
          cell: ({ plan, coatCount }) =>
            plansBySize(plan).length > 1 ? (
              <span>
                {coatTotal(plan)} <span className="quiet small">in its sizes</span>
              </span>
            ) : (
              <SettledField
                label={`Coats of ${plan.name}`}
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
          head: 'Stash',
          cell: ({ done }) =>
            done ? <Stands lacks={shortSentences(done, system)} /> : <span className="quiet">…</span>,
        },
        {
          head: 'Material',
          align: 'end',
          cell: ({ done }) => (
            <>
              {done ? <Money amountMinor={done.estimate.cost.batchMinor} /> : '…'}
              {done?.estimate.cost.isIncomplete && <span className="quiet small"> not complete</span>}
            </>
          ),
        },
        {
          head: 'Actions',
          isHeadHidden: true,
          align: 'end',
          cellClass: style.actions,
          cell: ({ plan }, index) => (
            <>
              <Button
                look="quiet"
                aria-label={`${plan.name} earlier`}
                disabled={index === 0}
                onClick={() => moved(index, index - 1)}
              >
                ↑
              </Button>
              <Button
                look="quiet"
                aria-label={`${plan.name} later`}
                disabled={index === entries.length - 1}
                onClick={() => moved(index, index + 1)}
              >
                ↓
              </Button>
              <Button
                look="quiet"
                aria-label={`Take out ${plan.name}`}
                onClick={() => onChange(entries.filter(({ planId }) => planId !== plan.id))}
              >
                Take out
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
  if (lacks.length === 0) return <strong className={style.good}>Covered</strong>;
  return (
    <details>
      <summary className={style.short}>
        Short in {lacks.length} {lacks.length === 1 ? 'slot' : 'slots'}
      </summary>
      <ul className={`${style.lacks} small`}>
        {lacks.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}
