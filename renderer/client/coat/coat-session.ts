/**
 * One open coat: its plan, what is on the shelf, and the estimate. A quick pass gives every figure within moments;
 * a thorough pass then looks for better lays. Every change of the plan is saved first and estimated anew.
 */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { FlowInput, Workshop } from '../../../shared-core/contract/contract.ts';
import { type Estimate, estimate } from '../../../shared-core/flow/estimate.ts';
import { type EstimateChange, estimateChange } from '../../../shared-core/flow/estimate-change.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { found, type Outcome, type Problem, refused } from '../../../shared-core/measure/problem.ts';
import { withBandsRenewed } from '../../../shared-core/plan/edits/bands.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { call } from '../api.ts';
import { failureOf } from '../failure.ts';
import { keptRun, quickSeconds, thoroughSeconds } from '../workers/kept-run.ts';
import { solveInWorker } from '../workers/solver.ts';

export type Phase = 'reading' | 'quick' | 'thorough' | 'settled' | 'stopped' | 'failed';

/** Are lays being looked for, so that figures may still change by themselves? */
export function isLookingForLays(phase: Phase): boolean {
  return phase === 'quick' || phase === 'thorough';
}

export interface CoatSession {
  readonly phase: Phase;
  readonly input: FlowInput | null;
  readonly estimate: Estimate | null;
  /** What the estimate was worked out from; a later input makes it old. */
  readonly estimatedFrom: FlowInput | null;
  readonly problems: readonly Problem[];
  /** Better lays than the estimate's own, as they are found, by job. */
  readonly live: ReadonlyMap<LayJob, LayResult>;
  /** What is being laid now, in the maker's words, and how many lays are still to come. */
  readonly laying: readonly string[];
  /** The last edit's sentence and what it changed, once the estimate after it has settled. */
  readonly lastEdit: { readonly said: string; readonly change: EstimateChange | null } | null;
  readonly canUndo: boolean;
  readonly edit: (change: (plan: CoatPlan) => Outcome<Edited>) => Promise<Outcome<string>>;
  readonly undo: () => Promise<Outcome<string>>;
  readonly stop: () => void;
  /** Looks for better lays again, for this many seconds each. */
  readonly lookLonger: (secondsPerLay: number) => void;
  /** Reads stash and plan again, after a receipt, a new offer, or what went wrong before. */
  readonly reload: () => Promise<void>;
}

const notOpen: Problem = {
  where: 'The coat',
  what: 'could not be read, so nothing was changed',
  mend: 'Open it again.',
};

export function useCoatSession(workshop: Workshop, planId: string): CoatSession {
  const [input, setInput] = useState<FlowInput | null>(null);
  const [result, setResult] = useState<{ estimate: Estimate; from: FlowInput } | null>(null);
  const [phase, setPhase] = useState<Phase>('reading');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [live, setLive] = useState<ReadonlyMap<LayJob, LayResult>>(new Map());
  const [laying, setLaying] = useState<readonly string[]>([]);
  const [lastEdit, setLastEdit] = useState<CoatSession['lastEdit']>(null);
  const [canUndo, setCanUndo] = useState(false);
  const running = useRef<AbortController | null>(null);
  // Aborted when the coat is left.
  const visit = useRef(new AbortController());
  const settled = useRef<Estimate | null>(null);
  // What was read last: a change builds on it, whatever the screen still shows.
  const newest = useRef<FlowInput | null>(null);
  const lastTurn = useRef<Promise<unknown>>(Promise.resolve());

  /** Changes and readings go one after another, each when the one before it has been saved and read. */
  const inTurn = useCallback(<Value>(task: () => Promise<Value>): Promise<Value> => {
    const done = lastTurn.current.then(task);
    lastTurn.current = done.catch(() => undefined);
    return done;
  }, []);

  /** One pass over the flow. */
  const pass = useCallback(
    (sources: FlowInput, seconds: number, signal: AbortSignal): Promise<Estimate> =>
      estimate(
        sources,
        keptRun({
          workshop,
          seconds,
          signal,
          onBegin: (what) => setLaying((names) => [...names, what]),
          onEnd: (what) =>
            setLaying((names) => {
              const at = names.indexOf(what);
              return names.filter((_, index) => index !== at);
            }),
          onBetter: (job, better) => setLive((now) => new Map(now).set(job, better)),
        }),
        solveInWorker,
      ),
    [workshop],
  );

  const run = useCallback(
    async (sources: FlowInput, seconds: readonly number[]) => {
      running.current?.abort();
      const control = new AbortController();
      running.current = control;
      const isCurrent = () => running.current === control;
      try {
        for (const [index, secondsPerLay] of seconds.entries()) {
          setPhase(index === 0 && secondsPerLay <= quickSeconds ? 'quick' : 'thorough');
          const next = await pass(sources, secondsPerLay, control.signal);
          if (!isCurrent()) return;
          setResult({ estimate: next, from: sources });
          setLive(new Map());
          if (control.signal.aborted) break;
        }
        setPhase(control.signal.aborted ? 'stopped' : 'settled');
      } catch (error) {
        if (!isCurrent()) return;
        if (control.signal.aborted) return setPhase('stopped');
        setPhase('failed');
        setProblems([
          failureOf('The estimate', error, 'Try again; if it fails again, undo the last change.'),
        ]);
      }
    },
    [pass],
  );

  /** Null where it was refused, or where the coat was left meanwhile: then nothing is begun for it. */
  const read = useCallback(async (): Promise<FlowInput | null> => {
    const { signal } = visit.current;
    const [flowAnswer, planAnswer] = await Promise.all([
      call('flowInput', workshop, { planId }),
      call('readPlan', workshop, { planId }),
    ]);
    if (signal.aborted) return null;
    if (!flowAnswer.ok || !planAnswer.ok) {
      const refusal = flowAnswer.ok ? planAnswer : flowAnswer;
      setProblems(refusal.ok ? [] : refusal.problems);
      setPhase('failed');
      return null;
    }
    setCanUndo(planAnswer.value.canUndo);
    setProblems([]);
    newest.current = flowAnswer.value;
    setInput(flowAnswer.value);
    return flowAnswer.value;
  }, [workshop, planId]);

  const estimateAnew = useCallback(
    async (sources: FlowInput | null) => {
      if (sources) await run(sources, [quickSeconds, thoroughSeconds]);
    },
    [run],
  );

  const reload = useCallback(async () => estimateAnew(await inTurn(read)), [estimateAnew, inTurn, read]);

  useEffect(() => {
    settled.current = null;
    newest.current = null;
    setResult(null);
    setLastEdit(null);
    setPhase('reading');
    const here = new AbortController();
    visit.current = here;
    void reload();
    return () => {
      here.abort();
      running.current?.abort();
    };
  }, [reload]);

  // The change is worked out when the estimate after an edit has settled, against the one that had settled before.
  useEffect(() => {
    if (phase !== 'settled' || !result) return;
    const before = settled.current;
    const after = result.estimate;
    settled.current = after;
    if (before && before !== after)
      setLastEdit((edit) =>
        edit && edit.change === null ? { ...edit, change: estimateChange(before, after) } : edit,
      );
  }, [phase, result]);

  const edit = useCallback<CoatSession['edit']>(
    (change) =>
      inTurn(async () => {
        const on = newest.current;
        if (!on) return refused(notOpen);
        const edited = change(on.plan);
        if (!edited.ok) return edited;
        const { said } = edited.value;
        const plan = withBandsRenewed(edited.value.plan);
        // What was typed back to where it stood is nothing to undo.
        if (JSON.stringify(plan) === JSON.stringify(on.plan)) return found(said);
        const saved = await call('savePlan', workshop, { plan, basedOn: on.revision, said });
        if (!saved.ok) return saved;
        setLastEdit({ said, change: null });
        void estimateAnew(await read());
        return found(said);
      }),
    [estimateAnew, inTurn, read, workshop],
  );

  const undo = useCallback<CoatSession['undo']>(
    () =>
      inTurn(async () => {
        const answer = await call('undoPlan', workshop, { planId });
        setProblems(answer.ok ? [] : answer.problems);
        if (!answer.ok) return answer;
        const said = 'The last change was taken back.';
        setLastEdit({ said, change: null });
        void estimateAnew(await read());
        return found(said);
      }),
    [estimateAnew, inTurn, planId, read, workshop],
  );

  const stop = useCallback(() => running.current?.abort(), []);
  const lookLonger = useCallback(
    (secondsPerLay: number) => {
      if (input) void run(input, [secondsPerLay]);
    },
    [input, run],
  );

  return useMemo(
    () => ({
      phase,
      input,
      estimate: result?.estimate ?? null,
      estimatedFrom: result?.from ?? null,
      problems,
      live,
      laying,
      lastEdit,
      canUndo,
      edit,
      undo,
      stop,
      lookLonger,
      reload,
    }),
    [phase, input, result, problems, live, laying, lastEdit, canUndo, edit, undo, stop, lookLonger, reload],
  );
}
