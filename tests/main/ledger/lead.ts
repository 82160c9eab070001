/** Leads a real workshop and the book through the same history; `differences` says where they part. */
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { openServices } from '../../../main/services/calls/services.ts';
import type { CallInput, CallName, CallOutput } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { compare, learnWritten, nothingWritten, rewritten } from './compare.ts';
import type { Step } from './step.ts';
import { take } from './take-step.ts';
import { begin } from './workshop.ts';

export interface Led {
  readonly differences: string[];
  /** What was refused on both sides, and what was done. */
  readonly done: Record<string, number>;
}

export async function lead(
  folder: string,
  steps: readonly Step[],
): Promise<Led & { readonly stepCount: number }> {
  const dataFile = join(folder, 'own.sqlite');
  const logged: unknown[] = [];
  const opened = openServices({
    dataFile,
    demoFile: join(folder, 'demo.sqlite'),
    log: (error) => logged.push(error),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const ask = <Name extends CallName>(call: Name, input: CallInput<Name>) =>
    opened.value.answer({ call, workshop: 'own', input }) as Promise<Result<CallOutput<Name>>>;
  const beside = new SqliteDatabase(dataFile, { readonly: true });
  try {
    const workshop = await begin(ask, beside);
    const written = nothingWritten();
    const done: Record<string, number> = {};
    let stepCount = 0;
    for (const step of steps) {
      const answer = await take(workshop, step);
      stepCount += 1;
      done[`${step.kind}: ${answer.what}`] = (done[`${step.kind}: ${answer.what}`] ?? 0) + 1;
      learnWritten(beside, written);
      const differences = [
        ...answer.differences,
        ...(await compare(workshop, stepCount % workshop.plans.length)),
        ...logged.map((error) => `the program tells of a mistake of its own: ${error}`),
      ];
      if (differences.length > 0)
        return {
          differences: differences.map((each) => `step ${stepCount}, ${step.kind}: ${each}`),
          done,
          stepCount,
        };
    }
    return { differences: rewritten(beside, written), done, stepCount };
  } finally {
    beside.close();
    opened.value.close();
  }
}
