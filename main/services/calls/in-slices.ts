/** Long work in slices, between which the program answers what else it is asked. */
import type { InSteps } from '../../../shared-core/measure/in-steps.ts';

const sliceMs = 15;

/** Resolves once everything has had its turn that waits for the program. */
function breath(): Promise<void> {
  return new Promise((done) => setImmediate(done));
}

/** To be awaited again and again in the midst of long work: pauses when a slice is over, and else goes on at once. */
export function slices(): () => Promise<void> {
  let begun = performance.now();
  return async () => {
    if (performance.now() - begun < sliceMs) return;
    await breath();
    begun = performance.now();
  };
}

export async function inSlices<Value>(work: InSteps<Value>): Promise<Value> {
  const pause = slices();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    await pause();
  }
}
