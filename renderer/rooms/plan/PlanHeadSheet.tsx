/** What the plan is called, its size, and the maker's notes. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import { describePlan } from '../../../shared-core/plan/edits/edit.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';

const schema = z.object({ name: z.string(), size: z.string(), notes: z.string() });

export function PlanHeadSheet({ plan, onClose }: { plan: CoatPlan; onClose: () => void }) {
  const { edit } = useCoat('edit');
  const { name, size, notes } = plan;
  const { control, sheet } = useTypedForm({
    start: { name, size, notes },
    schema: () => schema,
    subject: name,
    save: async (head) => {
      const isAsBefore = head.name === name && head.size === size && head.notes === notes;
      if (isAsBefore) return [];
      const answer = await edit((current) => describePlan(current, head));
      return answer.ok ? [] : answer.problems;
    },
  });
  return (
    <FormSheet
      title={say('plan-head-sheet.name-size-and-notes')}
      saveLabel={say('plan-head-sheet.save')}
      onClose={onClose}
      {...sheet}
    >
      <FormText control={control} name="name" label={say('common.name')} />
      <FormText
        control={control}
        name="size"
        label={say('common.size')}
        hint={say('plan-head-sheet.as-you-call-it-such-as')}
      />
      <FormText control={control} name="notes" label={say('plan-head-sheet.notes')} isLong />
    </FormSheet>
  );
}
