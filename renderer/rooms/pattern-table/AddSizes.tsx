/** Sizes that stand in plans of their own come into the table, without a coat more to be made. */
import { useEffect, useState } from 'react';
import type { PlanRow } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { addSizesUnmade, styleName } from '../../../shared-core/plan/edits/add-sizes.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { PlanId } from '../../../shared-core/stash/stash.ts';
import { call } from '../../client/api.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { FlagField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';

export function AddSizes({ plan, onClose }: { plan: CoatPlan; onClose: () => void }) {
  const { workshop } = useWorkshop();
  const { edit } = useCoat('edit');
  const [rows, setRows] = useState<readonly PlanRow[] | null>(null);
  const [chosen, setChosen] = useState<ReadonlySet<PlanId>>(new Set());
  const [unread, setUnread] = useState<readonly Problem[]>([]);
  useEffect(() => {
    void call('listPlans', workshop, {}).then((answer) => {
      setUnread(answer.ok ? [] : answer.problems);
      if (!answer.ok) return;
      const sizes = new Set([plan.size, ...(plan.sizes ?? []).map(({ size }) => size)]);
      const others = answer.value.rows.filter(({ size }) => size.trim() !== '' && !sizes.has(size.trim()));
      setRows(others);
      // Plans of the same style are meant more often than not.
      setChosen(new Set(others.filter((row) => styleName(row) === styleName(plan)).map(({ id }) => id)));
    });
  }, [workshop, plan]);

  const save = async (): Promise<readonly Problem[]> => {
    const plans: CoatPlan[] = [];
    for (const { id } of (rows ?? []).filter((row) => chosen.has(row.id))) {
      const answer = await call('readPlan', workshop, { planId: id });
      if (!answer.ok) return answer.problems;
      plans.push(answer.value.plan);
    }
    const edited = await edit((current) => addSizesUnmade(current, plans));
    return edited.ok ? [] : edited.problems;
  };
  return (
    <FormSheet title="Add sizes" saveLabel="Add to the table" onClose={onClose} onSave={save}>
      <Problems problems={unread} />
      {rows?.length === 0 ? (
        <p>
          No other plan names a size that this one lacks. Draft the coat in several sizes, copy it, or bring
          in a pattern file that holds them.
        </p>
      ) : (
        <>
          <p className="quiet">
            From plans of the same style. The sizes come into this plan, and none of them is made: what you
            buy and what it costs stay as they are.
          </p>
          {(rows ?? []).map((row) => (
            <FlagField
              key={row.id}
              label={`Size ${row.size}`}
              hint={row.name}
              value={chosen.has(row.id)}
              onChange={(isIn) =>
                setChosen((now) => {
                  const next = new Set(now);
                  if (isIn) next.add(row.id);
                  else next.delete(row.id);
                  return next;
                })
              }
            />
          ))}
        </>
      )}
    </FormSheet>
  );
}
