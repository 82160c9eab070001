/** The season's flow in the window: a quick pass for figures at once, then one that looks for better lays. */
import { say } from '../../../shared-core/wording/say.ts';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import {
  type PlanInSeason,
  season,
  seasonBasket,
  type SeasonBasket,
} from '../../../shared-core/flow/season/season.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureOf } from '../../client/failure.ts';
import { keptRun } from '../../client/workers/kept-run.ts';
import { quickSeconds, thoroughSeconds } from '../../client/workers/lay-seconds.ts';
import { solveInWorker } from '../../client/workers/solver.ts';
import { useWorkshop } from '../../client/workshop.ts';

/** Figures of a whole pass. */
export interface SeasonFigures {
  readonly plans: readonly PlanInSeason[];
  readonly bought: SeasonBasket;
  readonly from: SeasonInput;
}

export interface SeasonRun {
  readonly figures: SeasonFigures | null;
  /** Null while nothing runs. */
  readonly progress: {
    readonly isQuick: boolean;
    readonly doneCount: number;
    readonly allCount: number;
    readonly now: string;
  } | null;
  readonly problems: readonly Problem[];
  readonly stop: () => void;
  /** Goes through the season once more, from the lays that were found. */
  readonly again: () => void;
}

/** Runs anew whenever another input is read; what runs for an older one is stopped. */
export function useSeasonRun(input: SeasonInput | null): SeasonRun {
  const { workshop } = useWorkshop();
  const [figures, setFigures] = useState<SeasonFigures | null>(null);
  const [progress, setProgress] = useState<SeasonRun['progress']>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const running = useRef<AbortController | null>(null);

  const run = useCallback(
    async (from: SeasonInput, signal: AbortSignal) => {
      const allCount = from.entries.length;
      for (const seconds of [quickSeconds, thoroughSeconds]) {
        const isQuick = seconds === quickSeconds;
        const at = (doneCount: number) =>
          setProgress({
            isQuick,
            doneCount,
            allCount,
            now: from.entries[doneCount]?.plan.name ?? say('season-run.what-is-to-be-bought'),
          });
        at(0);
        const runLay = keptRun({ workshop, seconds, signal });
        const plans = await season(from, runLay, solveInWorker, {
          signal,
          onDone: (_, doneCount) => !signal.aborted && at(doneCount),
        });
        if (signal.aborted) return;
        const bought = await seasonBasket(from, plans, runLay, solveInWorker);
        if (signal.aborted) return;
        setFigures({ plans, bought, from });
      }
    },
    [workshop],
  );

  const begin = useCallback(() => {
    running.current?.abort();
    setProblems([]);
    if (!input || input.entries.length === 0) return setProgress(null);
    const control = new AbortController();
    running.current = control;
    const isCurrent = () => running.current === control;
    run(input, control.signal)
      .catch((error: unknown) => {
        if (!isCurrent() || control.signal.aborted) return;
        setProblems([
          failureOf(say('common.the-season'), error, say('season-run.open-its-plans-one-by-one')),
        ]);
      })
      .finally(() => {
        if (isCurrent()) setProgress(null);
      });
  }, [input, run]);
  useEffect(() => {
    begin();
    return () => running.current?.abort();
  }, [begin]);

  return {
    // Figures of an older order are not shown for the new one.
    figures: figures?.from === input ? figures : null,
    progress,
    problems,
    stop: () => running.current?.abort(),
    again: begin,
  };
}
