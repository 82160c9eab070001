/** Sizes that stand in plans of their own come into the table, without a coat more to be made. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { addSizesUnmade, styleName } from '../../../shared-core/plan/edits/add-sizes.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { PlanId } from '../../../shared-core/stash/stash.ts';
import { ask, useRead } from '../../client/queries/reads.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { FlagField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';

export function AddSizes({ plan, onClose }: { plan: CoatPlan; onClose: () => void }) {
  const { workshop } = useWorkshop();
  const { edit } = useCoat('edit');
  const read = useRead('listPlans', {});
  const sizes = new Set([plan.size, ...(plan.sizes ?? []).map(({ size }) => size)]);
  const rows = read.data?.rows.filter(({ size }) => size.trim() !== '' && !sizes.has(size.trim()));
  /** Null until the maker chooses. Plans of the same style are meant more often than not. */
  const [own, setChosen] = useState<ReadonlySet<PlanId> | null>(null);
  const chosen =
    own ?? new Set((rows ?? []).filter((row) => styleName(row) === styleName(plan)).map(({ id }) => id));

  const save = async (): Promise<readonly Problem[]> => {
    const plans: CoatPlan[] = [];
    for (const { id } of (rows ?? []).filter((row) => chosen.has(row.id))) {
      const answer = await ask(workshop, 'readPlan', { planId: id });
      if (!answer.ok) return answer.problems;
      plans.push(answer.value.plan);
    }
    const edited = await edit((current) => addSizesUnmade(current, plans));
    return edited.ok ? [] : edited.problems;
  };
  return (
    <FormSheet
      title={say('add-sizes.add-sizes')}
      saveLabel={say('add-sizes.add-to-the-table')}
      onClose={onClose}
      onSave={save}
    >
      <ReadProblems read={read} />
      {rows?.length === 0 ? (
        <p>{say('add-sizes.no-other-plan-names-a-size')}</p>
      ) : (
        <>
          <p className="quiet">{say('add-sizes.from-plans-of-the-same-style')}</p>
          {(rows ?? []).map((row) => (
            <FlagField
              key={row.id}
              label={say('add-sizes.size-2', { rowCount: row.size })}
              hint={row.name}
              value={chosen.has(row.id)}
              onChange={(isIn) => {
                const next = new Set(chosen);
                if (isIn) next.add(row.id);
                else next.delete(row.id);
                setChosen(next);
              }}
            />
          ))}
        </>
      )}
    </FormSheet>
  );
}
