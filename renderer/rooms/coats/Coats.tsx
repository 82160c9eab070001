/** The maker's coat plans: open one, copy one, or begin a new one. */
import { useCallback, useEffect, useState } from 'react';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import { localDate } from '../../../shared-core/measure/calendar-date.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { copiedPlan, newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { call } from '../../client/api.ts';
import { goTo, routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import table from '../../parts/tables/table.module.css';
import style from './Coats.module.css';

export function Coats() {
  const { workshop, refresh } = useWorkshop();
  const [rows, setRows] = useState<readonly PlanRow[] | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isAdding, setIsAdding] = useState(false);

  const read = useCallback(async () => {
    const answer = await call('listPlans', workshop, {});
    if (answer.ok) setRows(answer.value.rows);
    else setProblems(answer.problems);
  }, [workshop]);
  useEffect(() => void read(), [read]);

  const copy = async (row: PlanRow) => {
    const answer = await call('readPlan', workshop, { planId: row.id });
    if (!answer.ok) return setProblems(answer.problems);
    const names = (rows ?? []).map((each) => each.name);
    const plan = copiedPlan(answer.value.plan, crypto.randomUUID(), names);
    const saved = await call('savePlan', workshop, { plan, basedOn: null, said: `Copied from ${row.name}.` });
    if (!saved.ok) return setProblems(saved.problems);
    await Promise.all([read(), refresh()]);
  };

  if (!rows) return <Problems problems={problems} />;
  return (
    <div className={style.coats}>
      <header className={style.header}>
        <h1>Coats</h1>
        {rows.length > 0 && (
          <div className={style.actions}>
            <Button onClick={() => goTo({ kind: 'draft' })}>Draft a coat</Button>
            <Button look="main" onClick={() => setIsAdding(true)}>
              New coat
            </Button>
          </div>
        )}
      </header>
      <Problems problems={problems} />
      {rows.length === 0 ? (
        <EmptyState
          title="No coat planned yet"
          action={
            <div className={style.actions}>
              <Button look="main" onClick={() => setIsAdding(true)}>
                New coat
              </Button>
              <Button onClick={() => goTo({ kind: 'draft' })}>Draft a coat</Button>
            </div>
          }
        >
          A plan holds the pieces of a coat, what each is cut from, and how many coats you make. From it come
          the needs, the lay, what is missing and the cost.
        </EmptyState>
      ) : (
        <table className={table.table}>
          <thead>
            <tr>
              <th>Coat</th>
              <th>Size</th>
              <th className={table.amount}>Coats</th>
              <th>Last changed</th>
              <th>
                <span className="only-read-aloud">Actions</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <td>
                  <a className={style.name} href={routeHash({ kind: 'coat', planId: row.id, step: 'plan' })}>
                    {row.name}
                  </a>
                </td>
                <td>{row.size}</td>
                <td className={`${table.amount} number`}>{row.coatCount}</td>
                <td className="number">{localDate(new Date(row.changedAt))}</td>
                <td className={table.amount}>
                  <Button look="quiet" aria-label={`Copy ${row.name}`} onClick={() => void copy(row)}>
                    Copy
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {isAdding && <NewCoat names={rows.map((row) => row.name)} onClose={() => setIsAdding(false)} />}
    </div>
  );
}

function NewCoat({ names, onClose }: { names: readonly string[]; onClose: () => void }) {
  const { workshop, refresh } = useWorkshop();
  const [name, setName] = useState('');
  const [size, setSize] = useState('');
  const save = async (): Promise<readonly Problem[]> => {
    if (names.includes(name.trim())) {
      return [
        { where: `A coat called ${name.trim()}`, what: 'is planned already', fix: 'Choose another name.' },
      ];
    }
    const plan = newPlan(crypto.randomUUID(), name.trim(), size.trim());
    const saved = await call('savePlan', workshop, { plan, basedOn: null, said: 'Begun.' });
    if (!saved.ok) return saved.problems;
    await refresh();
    goTo({ kind: 'coat', planId: saved.value.planId, step: 'plan' });
    return [];
  };
  return (
    <FormSheet title="New coat" saveLabel="Begin the plan" onClose={onClose} onSave={save}>
      <TextField label="Name" value={name} onChange={setName} />
      <TextField label="Size" value={size} onChange={setSize} hint="as you write it on the pattern" />
      <p className="quiet">
        It begins with the usual slots of a quilted coat: shell, lining, batting, threads, needles and a zip.
        Add pieces next.
      </p>
    </FormSheet>
  );
}
