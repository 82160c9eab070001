/** One text for one job, so that a lay found earlier can be found again by the hash of it. */
import type { LayJob } from './job.ts';

/** Raised when the engine changes so much that lays kept before it should be looked for anew. */
const engineVersion = 8;

/** Everything a lay depends on but its budget, numbers at full precision. */
export function jobText(job: LayJob): string {
  return JSON.stringify([engineVersion, job], (_, value: unknown) =>
    value instanceof Float64Array ? Array.from(value) : value,
  );
}
