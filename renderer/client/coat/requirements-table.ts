/** The table of requirements of the open coat: lays kept from before stand at once, the others are looked for on the workers. */
import { say } from '../../../shared-core/wording/say.ts';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { FlowInput, Workshop } from '../../../shared-core/contract/contract.ts';
import {
  type FilledCell,
  filledCells,
  sharedTime,
  type TableAsked,
  tableCells,
  tableJobs,
} from '../../../shared-core/flow/requirements-table/requirements-table.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { failureOf } from '../failure.ts';
import { jobHash, keepLay, keptLay } from '../workers/kept-lays.ts';
import { layInWorker, workerCount } from '../workers/lay-pool.ts';

export interface RequirementsTable {
  readonly cells: readonly FilledCell[];
  /** Lays looked for in this run: how many of them are done; null while none is under way. */
  readonly running: { readonly doneCount: number; readonly jobCount: number } | null;
  readonly problems: readonly Problem[];
  /** How many lays could still become shorter; 0 once every one is proven. */
  readonly openCount: number;
  readonly start: (totalSeconds: number) => void;
  readonly stop: () => void;
}

export function useRequirementsTable(
  workshop: Workshop,
  sources: FlowInput,
  asked: TableAsked,
): RequirementsTable {
  const cells = useMemo(() => tableCells(sources, asked), [sources, asked]);
  const [found, setFound] = useState<ReadonlyMap<LayJob, LayResult>>(new Map());
  const [running, setRunning] = useState<RequirementsTable['running']>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const control = useRef<AbortController | null>(null);

  useEffect(() => {
    let isCurrent = true;
    setFound(new Map());
    setProblems([]);
    setRunning(null);
    void Promise.all(
      tableJobs(cells).map(async ([job]) => [job, await keptLay(workshop, await jobHash(job))] as const),
    ).then((kept) => {
      if (!isCurrent) return;
      const known = kept.flatMap(([job, result]) => (result ? [[job, result] as const] : []));
      setFound((now) => new Map([...known, ...now]));
    });
    return () => {
      isCurrent = false;
      control.current?.abort();
    };
  }, [workshop, cells]);

  const open = useMemo(() => tableJobs(cells).filter(([job]) => !isProven(found.get(job))), [cells, found]);

  const start = useCallback(
    (totalSeconds: number) => {
      control.current?.abort();
      const mine = new AbortController();
      control.current = mine;
      setProblems([]);
      setRunning({ doneCount: 0, jobCount: open.length });
      const seconds = sharedTime(totalSeconds, open.length, workerCount, () => performance.now() / 1000);
      const look = async (job: LayJob): Promise<void> => {
        const hash = await jobHash(job);
        const kept = await keptLay(workshop, hash);
        const laid = await layInWorker({ job, seconds, isThorough: false, signal: mine.signal });
        const best = kept && totalUsedMm(kept) <= totalUsedMm(laid) ? kept : laid;
        await keepLay(workshop, hash, best);
        if (mine !== control.current) return;
        setFound((now) => new Map(now).set(job, best));
        setRunning((now) => now && { ...now, doneCount: now.doneCount + 1 });
      };
      void Promise.allSettled(open.map(([job]) => look(job))).then((outcomes) => {
        if (mine !== control.current) return;
        setRunning(null);
        // What was stopped before its first lay stays open; anything else that failed is told.
        const failed = outcomes.find((outcome) => outcome.status === 'rejected');
        if (failed && !mine.signal.aborted) setProblems([failure(failed.reason)]);
      });
    },
    [open, workshop],
  );
  const stop = useCallback(() => control.current?.abort(), []);
  const filled = useMemo(() => filledCells(cells, found), [cells, found]);
  return { cells: filled, running, problems, openCount: open.length, start, stop };
}

function isProven(result: LayResult | undefined): boolean {
  return ['floor', 'nothing left to try', 'by hand'].includes(result?.stoppedBy ?? '');
}

function failure(reason: unknown): Problem {
  const fix = say('requirements-table.look-again-if-it-fails-again');
  return failureOf(
    say('requirements-table.a-lay-of-the-table'),
    reason,
    fix,
    say('requirements-table.could-not-be-found'),
  );
}
