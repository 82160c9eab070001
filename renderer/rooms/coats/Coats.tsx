/** The maker's coat plans: open one, copy one, or begin a new one. */
import { useState } from 'react';
import { z } from 'zod';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import { localDate } from '../../../shared-core/measure/calendar-date.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { copiedPlan, newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { useChange } from '../../client/queries/changes.ts';
import { ask, useRead } from '../../client/queries/reads.ts';
import { goTo, routeHash } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './Coats.module.css';

export function Coats() {
  const { workshop } = useWorkshop();
  const read = useRead('listPlans', {});
  const { make: savePlan } = useChange('savePlan');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isAdding, setIsAdding] = useState(false);
  const rows = read.data?.rows;
  if (!rows) return <ReadProblems read={read} />;

  const copy = async (row: PlanRow) => {
    const answer = await ask(workshop, 'readPlan', { planId: row.id });
    if (!answer.ok) return setProblems(answer.problems);
    const names = rows.map((each) => each.name);
    const plan = copiedPlan(answer.value.plan, crypto.randomUUID(), names);
    const saved = await savePlan({ plan, basedOn: null, said: `Copied from ${row.name}.` });
    setProblems(saved.ok ? [] : saved.problems);
  };

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
      <ReadProblems read={read} />
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
        <DataTable
          rows={rows}
          keyOf={({ id }) => id}
          columns={[
            {
              head: 'Coat',
              cell: ({ id, name }) => (
                <a className={style.name} href={routeHash({ kind: 'coat', planId: id, step: 'plan' })}>
                  {name}
                </a>
              ),
            },
            { head: 'Size', cell: ({ size }) => size },
            { head: 'Coats', align: 'end', isNumber: true, cell: ({ coatCount }) => coatCount },
            {
              head: 'Last changed',
              isNumber: true,
              cell: ({ changedAt }) => localDate(new Date(changedAt)),
            },
            {
              head: 'Actions',
              isHeadHidden: true,
              align: 'end',
              cell: (row) => (
                <Button look="quiet" aria-label={`Copy ${row.name}`} onClick={() => void copy(row)}>
                  Copy
                </Button>
              ),
            },
          ]}
        />
      )}
      {isAdding && <NewCoat names={rows.map((row) => row.name)} onClose={() => setIsAdding(false)} />}
    </div>
  );
}

const newCoat = {
  start: { name: '', size: '' },
  schema: () => z.object({ name: z.string(), size: z.string() }),
};

function NewCoat({ names, onClose }: { names: readonly string[]; onClose: () => void }) {
  const { make: savePlan } = useChange('savePlan');
  const { control, sheet } = useTypedForm({
    ...newCoat,
    subject: 'The coat',
    save: async ({ name, size }): Promise<readonly Problem[]> => {
      if (names.includes(name.trim())) {
        return [
          { where: `A coat called ${name.trim()}`, what: 'is planned already', fix: 'Choose another name.' },
        ];
      }
      const plan = newPlan(crypto.randomUUID(), name.trim(), size.trim());
      const saved = await savePlan({ plan, basedOn: null, said: 'Begun.' });
      if (!saved.ok) return saved.problems;
      goTo({ kind: 'coat', planId: saved.value.planId, step: 'plan' });
      return [];
    },
  });
  return (
    <FormSheet title="New coat" saveLabel="Begin the plan" onClose={onClose} {...sheet}>
      <FormText control={control} name="name" label="Name" />
      <FormText control={control} name="size" label="Size" hint="as you write it on the pattern" />
      <p className="quiet">
        It begins with the usual slots of a quilted coat: shell, lining, batting, threads, needles and a zip.
        Add pieces next.
      </p>
    </FormSheet>
  );
}
