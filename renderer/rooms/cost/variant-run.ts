/** One run of the comparison: begun, watched, stopped; what was finished stays until the next one. */
import { say } from '../../../shared-core/wording/say.ts';
import { useEffect, useRef, useState } from 'react';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import { sideBySide, type Variant, type VariantResult } from '../../../shared-core/flow/variants.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureOf } from '../../client/failure.ts';
import { keptRun } from '../../client/workers/kept-run.ts';
import { thoroughSeconds } from '../../client/workers/lay-seconds.ts';
import { solveInWorker } from '../../client/workers/solver.ts';
import { useWorkshop } from '../../client/workshop.ts';

export interface VariantRun {
  readonly results: readonly VariantResult[];
  /** What the results were worked out from; a later input makes them old. */
  readonly from: FlowInput | null;
  /** Null while nothing runs. */
  readonly progress: { readonly doneCount: number; readonly allCount: number; readonly now: string } | null;
  readonly problems: readonly Problem[];
  readonly begin: (input: FlowInput, variants: readonly Variant[]) => Promise<void>;
  readonly stop: () => void;
}

export function useVariantRun(): VariantRun {
  const { workshop } = useWorkshop();
  const [results, setResults] = useState<readonly VariantResult[]>([]);
  const [from, setFrom] = useState<FlowInput | null>(null);
  const [progress, setProgress] = useState<VariantRun['progress']>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  const begin = async (input: FlowInput, variants: readonly Variant[]) => {
    running.current?.abort();
    const control = new AbortController();
    running.current = control;
    const { signal } = control;
    const nowAt = (doneCount: number) => ({
      doneCount,
      allCount: variants.length,
      now: variants[doneCount]?.name ?? '',
    });
    setResults([]);
    setProblems([]);
    setFrom(input);
    setProgress(nowAt(0));
    try {
      await sideBySide(
        input,
        variants,
        keptRun({ workshop, seconds: thoroughSeconds, signal }),
        solveInWorker,
        {
          signal,
          onDone: (result, doneCount) => {
            if (running.current !== control) return;
            setResults((before) => [...before, result]);
            setProgress(nowAt(doneCount));
          },
        },
      );
    } catch (error) {
      if (running.current === control)
        setProblems([
          failureOf(
            say('variant-run.the-comparison'),
            error,
            say('variant-run.work-them-out-again-or-choose'),
          ),
        ]);
    }
    if (running.current === control) setProgress(null);
  };

  return { results, from, progress, problems, begin, stop: () => running.current?.abort() };
}
