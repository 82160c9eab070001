/**
 * The lays of the demo's coat and the baskets that they lead to, looked for once before all specs: most of them begin
 * with the demo, and would look for the same each for itself. Prints them as JSON, the lays as the call keepLay takes
 * them. The clock goes on by looks at it alone, as in the window of a spec, so they are the same on every machine.
 */
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openServices } from '../../main/services/calls/services.ts';
import { solveHere } from '../../main/services/threads/solver.ts';
import { thoroughSeconds } from '../../renderer/client/workers/lay-seconds.ts';
import type { FlowInput } from '../../shared-core/contract/contract.ts';
import { estimate } from '../../shared-core/flow/estimate.ts';
import { type LayJob, sensibleIterations } from '../../shared-core/lay/job.ts';
import { jobText } from '../../shared-core/lay/job-text.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import type { Found, KeptLay } from './found.ts';
import { soonMs } from './lay-clock.ts';

if (import.meta.main) process.stdout.write(JSON.stringify(await findForDemo()));

async function findForDemo(): Promise<Found> {
  const kept = new Map<string, KeptLay>();
  const solved: Record<string, readonly number[] | null> = {};
  const sources = await demoCoat();
  await estimate(
    sources,
    async (job) => {
      const hash = jobHash(job);
      const found = kept.get(hash) ?? { jobHash: hash, result: laidSoon(job) };
      kept.set(hash, found);
      return found.result;
    },
    async (programme) => {
      const numbers = await solveHere(programme);
      solved[JSON.stringify(programme)] = numbers;
      return numbers;
    },
  );
  return { lays: [...kept.values()], solved };
}

/** As the window names it (renderer/client/workers/kept-lays.ts); found-lays.spec.ts asks that it finds them. */
function jobHash(job: LayJob): string {
  return createHash('sha256').update(jobText(job)).digest('hex');
}

function laidSoon(job: LayJob): KeptLay['result'] {
  let ms = 0;
  const budget = { seconds: thoroughSeconds, iterations: null, minIterations: sensibleIterations(job) };
  return lay(job, budget, { clock: () => (ms += soonMs) });
}

/** What the flow reads of the coat that the demo opens with. */
async function demoCoat(): Promise<FlowInput> {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-demo-'));
  const opened = openServices({
    dataFile: join(folder, 'own.sqlite'),
    demoFile: join(folder, 'demo.sqlite'),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const ask = async (call: string, input: unknown) => {
    const answer = await opened.value.answer({ call, workshop: 'demo', input });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    return answer.value;
  };
  try {
    await ask('openDemo', {});
    return (await ask('flowInput', { planId: 'plan-fenwalk-40' })) as FlowInput;
  } finally {
    opened.value.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
