/** The plans in their order: moved up and down, counted, taken out; each with how it stands. */
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import { shortSentences } from '../../../shared-core/flow/season/season-report.ts';
import { coatTotal, plansBySize } from '../../../shared-core/plan/model/sizes.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import table from '../../parts/tables/table.module.css';
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
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">Order</th>
          <th scope="col">Plan</th>
          <th scope="col">Coats</th>
          <th scope="col">Stash</th>
          <th scope="col" className={table.amount}>
            Material
          </th>
          <th scope="col">
            <span className="only-read-aloud">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {input.entries.map(({ plan, coatCount }, index) => {
          const done = figures?.plans.find((each) => each.plan.id === plan.id);
          const lacks = done ? shortSentences(done, system) : [];
          return (
            <tr key={plan.id}>
              <td className="number">{index + 1}</td>
              <td>
                <a href={routeHash({ kind: 'coat', planId: plan.id, step: 'plan' })}>{plan.name}</a>{' '}
                <span className="quiet small">{plan.size}</span>
              </td>
              <td className={style.count}>
                {plansBySize(plan).length > 1 ? (
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
                )}
              </td>
              <td>
                {done ? (
                  lacks.length === 0 ? (
                    <strong className={style.good}>Covered</strong>
                  ) : (
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
                  )
                ) : (
                  <span className="quiet">…</span>
                )}
              </td>
              <td className={table.amount}>
                {done ? <Money amountMinor={done.estimate.cost.batchMinor} /> : '…'}
                {done?.estimate.cost.isIncomplete && <span className="quiet small"> not complete</span>}
              </td>
              <td className={`${table.amount} ${style.actions}`}>
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
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
