/** What an open coat asks of the program: calls to the workshop file, lays and the solver in workers. */
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { ok } from '../../../shared-core/measure/problem.ts';
import { call } from '../api.ts';
import { failureOf } from '../failure.ts';
import { keptRun } from '../workers/kept-run.ts';
import { solveInWorker } from '../workers/solver.ts';
import type { CoatServices } from './coat-store.ts';

export function coatServices(workshop: Workshop, planId: string): CoatServices {
  return {
    async read() {
      const [input, plan] = await Promise.all([
        call('flowInput', workshop, { planId }),
        call('readPlan', workshop, { planId }),
      ]);
      if (!input.ok) return input;
      if (!plan.ok) return plan;
      return ok({ input: input.value, canUndo: plan.value.canUndo });
    },
    save: (plan, basedOn, said) => call('savePlan', workshop, { plan, basedOn, said }),
    undo: () => call('undoPlan', workshop, { planId }),
    estimate: (input, pass) => estimate(input, keptRun({ workshop, ...pass }), solveInWorker),
    failure: (thrown) =>
      failureOf('The estimate', thrown, 'Try again; if it fails again, undo the last change.'),
  };
}
