/** A change of the open coat's plan from one field, with the sentence that stands under it where it was refused. */
import { useCallback, useState } from 'react';
import { type Result, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { useCoat } from './coat-context.ts';

export function usePlanChange() {
  const { edit } = useCoat('edit');
  const [problem, setProblem] = useState<string | null>(null);
  const change = useCallback(
    async (make: (plan: CoatPlan) => Result<Edited>): Promise<void> => {
      const answer = await edit(make);
      setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
    },
    [edit],
  );
  return { problem, change };
}
