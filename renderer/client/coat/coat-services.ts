/** What an open coat asks of the program: calls to the workshop file, lays and the solver in workers. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { ok } from '../../../shared-core/measure/problem.ts';
import { failureOf } from '../failure.ts';
import { change } from '../queries/changes.ts';
import { ask } from '../queries/reads.ts';
import { keptRun } from '../workers/kept-run.ts';
import { solveInWorker } from '../workers/solver.ts';
import type { CoatServices } from './coat-store.ts';

export function coatServices(workshop: Workshop, planId: string): CoatServices {
  return {
    async read() {
      const [input, plan] = await Promise.all([
        ask(workshop, 'flowInput', { planId }),
        ask(workshop, 'readPlan', { planId }),
      ]);
      if (!input.ok) return input;
      if (!plan.ok) return plan;
      return ok({ input: input.value, canUndo: plan.value.canUndo });
    },
    save: (plan, basedOn, said) => change(workshop, 'savePlan', { plan, basedOn, said }),
    undo: () => change(workshop, 'undoPlan', { planId }),
    estimate: (input, pass) => estimate(input, keptRun({ workshop, ...pass }), solveInWorker),
    failure: (thrown) =>
      failureOf(say('coat-services.the-estimate'), thrown, say('coat-services.try-again-if-it-fails-again')),
  };
}
