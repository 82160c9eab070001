/** Leads a real workshop and the book through the same history; `differences` says where they part. */
import { join } from 'node:path';
import { openServicesAt } from '../../../main/services/calls/services.ts';
import type { CallInput, CallName, CallOutput } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { freshFile } from '../asking.ts';
import { besideDatabase, besideFile } from '../beside.ts';
import { compare, learnWritten, nothingWritten, rewritten } from './compare.ts';
import type { Step } from './step.ts';
import { take } from './take-step.ts';
import { begin } from './workshop.ts';

export interface Led {
  readonly differences: string[];
  /** What was refused on both sides, and what was done. */
  readonly done: Record<string, number>;
}

/** address: of a fresh workshop in a database; absent: the workshop is a file in the folder. */
export async function lead(
  folder: string,
  steps: readonly Step[],
  address?: string,
): Promise<Led & { readonly stepCount: number }> {
  const dataFile = address ?? freshFile(folder);
  const logged: unknown[] = [];
  const opened = await openServicesAt({
    dataFile,
    demoFile: join(folder, 'demo.sqlite'),
    log: (error) => logged.push(error),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const ask = <Name extends CallName>(call: Name, input: CallInput<Name>) =>
    opened.value.answer({ call, workshop: 'own', input }) as Promise<Result<CallOutput<Name>>>;
  const beside = address === undefined ? besideFile(dataFile) : besideDatabase(address);
  try {
    const workshop = await begin(ask, beside);
    const written = nothingWritten();
    const done: Record<string, number> = {};
    let stepCount = 0;
    for (const step of steps) {
      const answer = await take(workshop, step);
      stepCount += 1;
      done[`${step.kind}: ${answer.what}`] = (done[`${step.kind}: ${answer.what}`] ?? 0) + 1;
      await learnWritten(beside, written);
      // One plan in turn, which is what takes long; in the end all.
      const inTurn = [stepCount % workshop.plans.length];
      const isLast = stepCount === steps.length;
      const differences = [
        ...answer.differences,
        ...(await compare(workshop, isLast ? workshop.plans.keys() : inTurn)),
        ...logged.map((error) => `the program tells of a mistake of its own: ${error}`),
      ];
      if (differences.length > 0)
        return {
          differences: differences.map((each) => `step ${stepCount}, ${step.kind}: ${each}`),
          done,
          stepCount,
        };
    }
    return { differences: await rewritten(beside, written), done, stepCount };
  } finally {
    await beside.close();
    await opened.value.close();
  }
}
