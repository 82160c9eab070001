/** An open coat whose workshop file and lays are led by the test: a pass over the road ends when the test ends it. */
import { solveHere } from '../../../../main/services/threads/solver.ts';
import {
  type CoatServices,
  type CoatStore,
  createCoatStore,
  type LayEvents,
} from '../../../../renderer/client/coat/coat-store.ts';
import type { FlowInput } from '../../../../shared-core/contract/contract.ts';
import { type Estimate, estimate } from '../../../../shared-core/flow/estimate.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import {
  clothLot,
  item,
  layHere,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../../fixtures/small-workshop.ts';

/** A pass that is under way, or was. */
export interface Pass extends LayEvents {
  readonly input: FlowInput;
  readonly seconds: number;
  readonly signal: AbortSignal;
  /** Ends it with these figures. */
  readonly end: (estimate: Estimate) => Promise<void>;
  readonly fail: (message: string) => Promise<void>;
}

export interface CoatByHand {
  readonly store: CoatStore;
  readonly passes: readonly Pass[];
  /** The pass that began last. */
  readonly last: () => Pass;
  /** What the workshop file holds, oldest first. */
  readonly saved: readonly CoatPlan[];
  /** The next readings wait until the function given back is called. */
  readonly holdReadings: () => () => Promise<void>;
  readonly refuseReadings: (problem: Problem | null) => void;
}

/** Two clothes, two pieces; the shell is on the shelf, the lining must be bought. */
export const lapwing = plan({
  slots: [slot('shell', 'cloth'), slot('lining', 'cloth')],
  pieces: [
    piece('front', rectangle(700, 500)),
    piece('body lining', rectangle(640, 480), { cutFrom: [{ slotId: 'lining', plyCount: 1 }] }),
  ],
});

function inputOf(coat: CoatPlan, revision: number): FlowInput {
  return {
    plan: coat,
    revision,
    shelf: [
      onShelf(
        item('cloth', 'shell item', { widthMm: 1400 }),
        clothLot('shell item', 'autumn', 1400, [2100], 4200),
      ),
      onShelf(item('cloth', 'lining item', { widthMm: 1400 })),
    ],
    offers: [
      offer(
        'lining item',
        'lining by the 10 cm',
        { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 },
        230,
      ),
    ],
    suppliers: [],
    today: '2026-10-14',
    settings: { workshopName: 'Fennmoor coats', system: 'metric', currency: 'EUR' },
    setAside: [],
    cuttings: [],
  };
}

/** The true estimate of what a pass was asked. */
export function estimated({ input }: Pass): Promise<Estimate> {
  return estimate(input, layHere, solveHere);
}

/** Lets everything happen that waits for nothing but its turn. */
export const quiet = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

export function coatByHand(): CoatByHand {
  const saved: CoatPlan[] = [lapwing];
  const passes: Pass[] = [];
  let held: Promise<void> = Promise.resolve();
  let refusal: Problem | null = null;
  const services: CoatServices = {
    async read() {
      const answer: Result<{ input: FlowInput; canUndo: boolean }> = refusal
        ? err(refusal)
        : ok({ input: inputOf(saved.at(-1)!, saved.length), canUndo: saved.length > 1 });
      await held;
      return answer;
    },
    async save(changed, basedOn) {
      if (basedOn !== saved.length) return err({ where: 'The plan', what: 'was changed', fix: 'Open it.' });
      saved.push(changed);
      return ok({});
    },
    async undo() {
      if (saved.length === 1) return err({ where: 'The plan', what: 'is as it began', fix: 'Go on.' });
      saved.pop();
      return ok({});
    },
    estimate: (input, pass) =>
      new Promise((resolve, reject) => {
        passes.push({
          ...pass,
          input,
          async end(figures) {
            resolve(figures);
            await quiet();
          },
          async fail(message) {
            reject(new Error(message));
            await quiet();
          },
        });
      }),
    failure: (thrown) => ({ where: 'The estimate', what: String(thrown), fix: 'Try again.' }),
  };
  return {
    store: createCoatStore(services),
    passes,
    last: () => passes.at(-1)!,
    saved,
    holdReadings() {
      let release = () => {};
      held = new Promise((resolve) => {
        release = resolve;
      });
      return async () => {
        release();
        held = Promise.resolve();
        await quiet();
      };
    },
    refuseReadings: (problem) => {
      refusal = problem;
    },
  };
}

/** Ends the quick and the thorough pass that are under way with their true figures. */
export async function settle(coat: CoatByHand): Promise<Estimate> {
  await coat.last().end(await estimated(coat.last()));
  const figures = await estimated(coat.last());
  await coat.last().end(figures);
  return figures;
}
