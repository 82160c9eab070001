/** The maker's coat plans: open one, copy one, or begin a new one. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { z } from 'zod';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import { dayWords, localDate } from '../../../shared-core/measure/calendar-date.ts';
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
    const saved = await savePlan({
      plan,
      basedOn: null,
      said: say('coats.copied-from', { rowName: row.name }),
    });
    setProblems(saved.ok ? [] : saved.problems);
  };

  return (
    <div className={style.coats}>
      <header className={style.header}>
        <h1>{say('common.coats')}</h1>
        {rows.length > 0 && (
          <div className={style.actions}>
            <Button onClick={() => goTo({ kind: 'draft' })}>{say('common.draft-a-coat')}</Button>
            <Button look="main" onClick={() => setIsAdding(true)}>
              {say('coats.new-coat')}
            </Button>
          </div>
        )}
      </header>
      <ReadProblems read={read} />
      <Problems problems={problems} />
      {rows.length === 0 ? (
        <EmptyState
          title={say('coats.no-coat-planned-yet')}
          action={
            <div className={style.actions}>
              <Button look="main" onClick={() => setIsAdding(true)}>
                {say('coats.new-coat')}
              </Button>
              <Button onClick={() => goTo({ kind: 'draft' })}>{say('common.draft-a-coat')}</Button>
            </div>
          }
        >
          {say('coats.a-plan-holds-the-pieces-of')}
        </EmptyState>
      ) : (
        <DataTable
          rows={rows}
          keyOf={({ id }) => id}
          columns={[
            {
              head: say('common.coat'),
              cell: ({ id, name }) => (
                <a className={style.name} href={routeHash({ kind: 'coat', planId: id, step: 'plan' })}>
                  {name}
                </a>
              ),
            },
            { head: say('common.size'), cell: ({ size }) => size },
            { head: say('common.coats'), align: 'end', isNumber: true, cell: ({ coatCount }) => coatCount },
            {
              head: say('coats.last-changed'),
              isNumber: true,
              cell: ({ changedAt }) => dayWords(localDate(new Date(changedAt))),
            },
            {
              head: say('common.actions'),
              isHeadHidden: true,
              align: 'end',
              cell: (row) => (
                <Button
                  look="quiet"
                  aria-label={say('coats.copy-2', { rowName: row.name })}
                  onClick={() => void copy(row)}
                >
                  {say('coats.copy')}
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
    subject: say('common.the-coat'),
    save: async ({ name, size }): Promise<readonly Problem[]> => {
      if (names.includes(name.trim())) {
        return [
          {
            where: say('coats.a-coat-called', { name: name.trim() }),
            what: say('coats.is-planned-already'),
            fix: say('common.choose-another-name'),
          },
        ];
      }
      const plan = newPlan(crypto.randomUUID(), name.trim(), size.trim());
      const saved = await savePlan({ plan, basedOn: null, said: say('coats.begun') });
      if (!saved.ok) return saved.problems;
      goTo({ kind: 'coat', planId: saved.value.planId, step: 'plan' });
      return [];
    },
  });
  return (
    <FormSheet
      title={say('coats.new-coat')}
      saveLabel={say('coats.begin-the-plan')}
      onClose={onClose}
      {...sheet}
    >
      <FormText control={control} name="name" label={say('common.name')} />
      <FormText
        control={control}
        name="size"
        label={say('common.size')}
        hint={say('coats.as-you-write-it-on-the')}
      />
      <p className="quiet">{say('coats.it-begins-with-the-usual-slots')}</p>
    </FormSheet>
  );
}
