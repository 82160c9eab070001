/** What the plan is called, its size, and the maker's notes. */
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { describePlan } from '../../../shared-core/plan/edits/edit.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';

export function PlanHeadSheet({ plan, onClose }: { plan: CoatPlan; onClose: () => void }) {
  const { edit } = useCoat('edit');
  const [head, setHead] = useState({ name: plan.name, size: plan.size, notes: plan.notes });
  const save = async (): Promise<readonly Problem[]> => {
    const isAsBefore = head.name === plan.name && head.size === plan.size && head.notes === plan.notes;
    if (isAsBefore) return [];
    const answer = await edit((current) => describePlan(current, head));
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet title="Name, size and notes" saveLabel="Save" onClose={onClose} onSave={save}>
      <TextField label="Name" value={head.name} onChange={(name) => setHead({ ...head, name })} />
      <TextField
        label="Size"
        value={head.size}
        onChange={(size) => setHead({ ...head, size })}
        hint="as you call it, such as 42 or M"
      />
      <TextField label="Notes" value={head.notes} onChange={(notes) => setHead({ ...head, notes })} isLong />
    </FormSheet>
  );
}
