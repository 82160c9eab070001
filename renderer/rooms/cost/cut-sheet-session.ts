/** What was cut for the open coat, read from the ledger, and the estimate made again as of before the first cutting. */
import { say } from '../../../shared-core/wording/say.ts';
import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../shared-core/contract/contract.ts';
import { type Estimate, estimate } from '../../../shared-core/flow/estimate.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureOf } from '../../client/failure.ts';
import { useCoatValue } from '../../client/coat/coat-context.ts';
import { type Read, useRead } from '../../client/queries/reads.ts';
import { keptRun } from '../../client/workers/kept-run.ts';
import { thoroughSeconds } from '../../client/workers/lay-seconds.ts';
import { solveInWorker } from '../../client/workers/solver.ts';
import { useWorkshop } from '../../client/workshop.ts';

type CutSheetRead = CallOutput<'readCutSheet'>;

export interface CutSession {
  readonly read: Read<CutSheetRead>;
  /** null while it is being worked out, or where there is none. */
  readonly before: Estimate | null;
  /** Why it could not be worked out. */
  readonly problems: readonly Problem[];
}

/** The estimate from before, of what it was made. */
interface Worked {
  readonly of: CutSheetRead['before'];
  readonly before: Estimate | null;
  readonly problems: readonly Problem[];
}

export function useCutSheet(): CutSession {
  const { workshop } = useWorkshop();
  const planId = useCoatValue(({ input }) => input?.plan.id);
  const read = useRead('readCutSheet', planId === undefined ? null : { planId });
  const [worked, setWorked] = useState<Worked | null>(null);
  const of = read.data?.before ?? null;
  useEffect(() => {
    if (!of) return;
    const control = new AbortController();
    const { signal } = control;
    const runLay = keptRun({ workshop, seconds: thoroughSeconds, signal });
    estimate(of, runLay, solveInWorker).then(
      (before) => !signal.aborted && setWorked({ of, before, problems: [] }),
      (error: unknown) => {
        if (signal.aborted) return;
        const fix = say('cut-sheet-session.what-was-cut-is-shown-all');
        const problem = failureOf(
          say('cut-sheet-session.the-estimate-from-before'),
          error,
          fix,
          say('cut-sheet-session.could-not-be-made-again'),
        );
        setWorked({ of, before: null, problems: [problem] });
      },
    );
    return () => control.abort();
  }, [of, workshop]);
  const own = of && worked?.of === of ? worked : null;
  return { read, before: own?.before ?? null, problems: own?.problems ?? [] };
}
