/** What was cut for the open coat, read from the ledger, and the estimate made again as of before the first cutting. */
import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../shared-core/contract/contract.ts';
import { type Estimate, estimate } from '../../../shared-core/flow/estimate.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { failureOf } from '../../client/failure.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { keptRun } from '../../client/workers/kept-run.ts';
import { thoroughSeconds } from '../../client/workers/lay-seconds.ts';
import { solveInWorker } from '../../client/workers/solver.ts';
import { useWorkshop } from '../../client/workshop.ts';

export interface CutSession {
  readonly read: CallOutput<'readCutSheet'> | null;
  /** null while it is being worked out, or where there is none. */
  readonly before: Estimate | null;
  readonly problems: readonly Problem[];
}

export function useCutSheet(): CutSession {
  const { input } = useCoat('input');
  const { workshop } = useWorkshop();
  const [session, setSession] = useState<CutSession>({ read: null, before: null, problems: [] });
  useEffect(() => {
    if (!input) return;
    const control = new AbortController();
    const { signal } = control;
    const work = async () => {
      const answer = await call('readCutSheet', workshop, { planId: input.plan.id });
      if (signal.aborted) return;
      if (!answer.ok) return setSession({ read: null, before: null, problems: answer.problems });
      const read = answer.value;
      setSession({ read, before: null, problems: [] });
      if (!read.before) return;
      try {
        const runLay = keptRun({ workshop, seconds: thoroughSeconds, signal });
        const before = await estimate(read.before, runLay, solveInWorker);
        if (!signal.aborted) setSession({ read, before, problems: [] });
      } catch (error) {
        if (signal.aborted) return;
        const fix = 'What was cut is shown all the same.';
        const problem = failureOf('The estimate from before', error, fix, 'could not be made again');
        setSession({ read, before: null, problems: [problem] });
      }
    };
    void work();
    return () => control.abort();
  }, [input, workshop]);
  return session;
}
