/** Lays found earlier, in memory and in the workshop file, under the hash of their job. */
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { jobText } from '../../../shared-core/lay/job-text.ts';
import { queryClient, readOptions } from '../queries/query-client.ts';
import { ask } from '../queries/reads.ts';
import { change } from '../queries/changes.ts';

export async function jobHash(job: LayJob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(jobText(job)));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The best lay kept for a job, or null. One that cannot be read is looked for again, so a refusal is no matter. */
export async function keptLay(workshop: Workshop, hash: string): Promise<LayResult | null> {
  const { queryKey } = readOptions(workshop, 'readLay', { jobHash: hash });
  // A lay of this window is at least as good as the one in the file.
  const known = queryClient.getQueryState<{ readonly result: LayResult | null }>(queryKey);
  if (known?.data?.result && !known.isInvalidated) return known.data.result;
  const answer = await ask(workshop, 'readLay', { jobHash: hash });
  return answer.ok ? answer.value.result : null;
}

/** Keeps a lay. One that the file cannot take is looked for again another time, so a refusal is no matter. */
export async function keepLay(workshop: Workshop, hash: string, result: LayResult): Promise<void> {
  queryClient.setQueryData(readOptions(workshop, 'readLay', { jobHash: hash }).queryKey, { result });
  await change(workshop, 'keepLay', { jobHash: hash, result });
}
