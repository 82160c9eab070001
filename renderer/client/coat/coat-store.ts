/**
 * One open coat: its plan, what is on the shelf, and the estimate. A quick pass gives every figure within moments;
 * a thorough pass then looks for better lays. Every change of the plan is saved first and estimated anew. Parts of the
 * screen read it by name (coat-context.ts), so that a better lay draws anew only what shows lays.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import type { Estimate } from '../../../shared-core/flow/estimate.ts';
import { type EstimateChange, estimateChange } from '../../../shared-core/flow/estimate-change.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { withBandsRenewed } from '../../../shared-core/plan/edits/bands.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { quickSeconds, thoroughSeconds } from '../workers/lay-seconds.ts';

export type Phase = 'reading' | 'quick' | 'thorough' | 'settled' | 'stopped' | 'failed';

/** Are lays being looked for, so that figures may still change by themselves? */
export function isLookingForLays(phase: Phase): boolean {
  return phase === 'quick' || phase === 'thorough';
}

interface CoatFacts {
  readonly phase: Phase;
  readonly input: FlowInput | null;
  readonly estimate: Estimate | null;
  /** What the estimate was worked out from; a later input makes it old. */
  readonly estimatedFrom: FlowInput | null;
  readonly problems: readonly Problem[];
  /** Better lays than the estimate's own, as they are found, by job. */
  readonly live: ReadonlyMap<LayJob, LayResult>;
  /** What is being laid now, in the maker's words. */
  readonly laying: readonly string[];
  /** The last edit's sentence and what it changed, once the estimate after it has settled. */
  readonly lastEdit: { readonly said: string; readonly change: EstimateChange | null } | null;
  readonly canUndo: boolean;
}

export interface CoatState extends CoatFacts {
  /** Begins a visit: everything is read afresh. Gives what ends the visit; nothing of it is heard afterwards. */
  readonly open: () => () => void;
  readonly edit: (change: (plan: CoatPlan) => Result<Edited>) => Promise<Result<string>>;
  readonly undo: () => Promise<Result<string>>;
  readonly stop: () => void;
  /** Looks for better lays again, for this many seconds each. */
  readonly lookLonger: (secondsPerLay: number) => void;
  /** Reads stash and plan again, after a receipt, a new offer, or what went wrong before. */
  readonly reload: () => Promise<void>;
}

export type CoatStore = StoreApi<CoatState>;

/** What is told of lays while an estimate is worked out. */
export interface LayEvents {
  readonly onBegin: (what: string) => void;
  readonly onEnd: (what: string) => void;
  readonly onBetter: (job: LayJob, better: LayResult) => void;
}

/** What the store asks of the program around it. */
export interface CoatServices {
  readonly read: () => Promise<Result<{ readonly input: FlowInput; readonly canUndo: boolean }>>;
  readonly save: (plan: CoatPlan, basedOn: number, said: string) => Promise<Result<unknown>>;
  readonly undo: () => Promise<Result<unknown>>;
  /** One pass over the road. Aborting takes the best lays so far; it rejects where there are none yet. */
  readonly estimate: (
    input: FlowInput,
    pass: { readonly seconds: number; readonly signal: AbortSignal } & LayEvents,
  ) => Promise<Estimate>;
  /** What threw while an estimate was worked out, in words. */
  readonly failure: (thrown: unknown) => Problem;
}

const notOpen: Problem = {
  where: say('common.the-coat'),
  what: say('coat-store.could-not-be-read-so-nothing'),
  fix: say('coat-store.open-it-again'),
};

const unread: CoatFacts = {
  phase: 'reading',
  input: null,
  estimate: null,
  estimatedFrom: null,
  problems: [],
  live: new Map(),
  laying: [],
  lastEdit: null,
  canUndo: false,
};

export function createCoatStore(services: CoatServices): CoatStore {
  return createStore<CoatState>((set, get) => {
    // Aborted when the coat is left.
    let visit = new AbortController();
    let running: AbortController | null = null;
    // The last estimate that no better lays were looked for.
    let settled: Estimate | null = null;
    let lastTurn: Promise<unknown> = Promise.resolve();

    /** Changes and readings go one after another, each when the one before it has been saved and read. */
    function inTurn<Value>(task: () => Promise<Value>): Promise<Value> {
      const done = lastTurn.then(task);
      lastTurn = done.catch(() => undefined);
      return done;
    }

    /** What an edit changed is told against the estimate that had settled before it. */
    function settle(): void {
      const before = settled;
      const { estimate: after, lastEdit } = get();
      settled = after;
      const isAwaited = before && after && before !== after && lastEdit?.change === null;
      set({
        phase: 'settled',
        ...(isAwaited && { lastEdit: { ...lastEdit, change: estimateChange(before, after) } }),
      });
    }

    async function run(input: FlowInput, seconds: readonly number[]): Promise<void> {
      running?.abort();
      const control = new AbortController();
      const { signal } = control;
      running = control;
      const isCurrent = () => running === control;
      // A run that another has followed is not heard any more.
      const tell = (change: (state: CoatState) => Partial<CoatState>) => isCurrent() && set(change);
      const events: LayEvents = {
        onBegin: (what) => tell(({ laying }) => ({ laying: [...laying, what] })),
        onEnd: (what) => tell(({ laying }) => ({ laying: withoutFirst(laying, what) })),
        onBetter: (job, better) => tell(({ live }) => ({ live: new Map(live).set(job, better) })),
      };
      set({ laying: [] });
      try {
        for (const [index, secondsPerLay] of seconds.entries()) {
          set({ phase: index === 0 && secondsPerLay <= quickSeconds ? 'quick' : 'thorough' });
          const estimate = await services.estimate(input, { seconds: secondsPerLay, signal, ...events });
          if (!isCurrent()) return;
          set({ estimate, estimatedFrom: input, live: new Map() });
          if (signal.aborted) break;
        }
        if (signal.aborted) set({ phase: 'stopped' });
        else settle();
      } catch (error) {
        if (!isCurrent()) return;
        if (signal.aborted) set({ phase: 'stopped' });
        else set({ phase: 'failed', problems: [services.failure(error)] });
      }
    }

    /** For a visit. Null where it was refused, or where the coat was left meanwhile: then nothing is begun for it. */
    async function read({ signal }: AbortController): Promise<FlowInput | null> {
      if (signal.aborted) return null;
      const answer = await services.read();
      if (signal.aborted) return null;
      if (!answer.ok) {
        set({ phase: 'failed', problems: answer.problems });
        return null;
      }
      set({ ...answer.value, problems: [] });
      return answer.value.input;
    }

    async function estimateAnew(input: FlowInput | null): Promise<void> {
      if (input) await run(input, [quickSeconds, thoroughSeconds]);
    }

    return {
      ...unread,
      open: () => {
        const here = new AbortController();
        visit = here;
        settled = null;
        set(unread);
        void get().reload();
        return () => {
          here.abort();
          running?.abort();
          running = null;
        };
      },
      edit: (change) => {
        const here = visit;
        return inTurn(async () => {
          const { input: on } = get();
          if (!on) return err(notOpen);
          const edited = change(on.plan);
          if (!edited.ok) return edited;
          const { said } = edited.value;
          const plan = withBandsRenewed(edited.value.plan);
          // What was typed back to where it stood is nothing to undo.
          if (JSON.stringify(plan) === JSON.stringify(on.plan)) return ok(said);
          const saved = await services.save(plan, on.revision, said);
          if (!saved.ok) return saved;
          set({ lastEdit: { said, change: null } });
          void estimateAnew(await read(here));
          return ok(said);
        });
      },
      undo: () => {
        const here = visit;
        return inTurn(async () => {
          const answer = await services.undo();
          set({ problems: answer.ok ? [] : answer.problems });
          if (!answer.ok) return answer;
          const said = say('coat-store.the-last-change-was-taken-back');
          set({ lastEdit: { said, change: null } });
          void estimateAnew(await read(here));
          return ok(said);
        });
      },
      stop: () => running?.abort(),
      lookLonger: (secondsPerLay) => {
        const { input } = get();
        if (input) void run(input, [secondsPerLay]);
      },
      reload: async () => {
        const here = visit;
        await estimateAnew(await inTurn(() => read(here)));
      },
    };
  });
}

function withoutFirst(names: readonly string[], gone: string): string[] {
  const at = names.indexOf(gone);
  return names.filter((_, index) => index !== at);
}
