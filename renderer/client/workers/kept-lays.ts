/** Lays found earlier, in memory and in the workshop file, under the hash of their job. */
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { jobText } from '../../../shared-core/lay/job-text.ts';
import { call } from '../api.ts';

const inMemory = new Map<string, LayResult>();

export async function jobHash(job: LayJob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(jobText(job)));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The best lay kept for a job, or null. One that cannot be read is looked for again, so a refusal is no matter. */
export async function keptLay(workshop: Workshop, hash: string): Promise<LayResult | null> {
  const known = inMemory.get(hash);
  if (known) return known;
  const answer = await call('readLay', workshop, { jobHash: hash });
  const result = answer.ok ? answer.value.result : null;
  if (result) inMemory.set(hash, result);
  return result;
}

/** Keeps a lay. One that the file cannot take is looked for again another time, so a refusal is no matter. */
export async function keepLay(workshop: Workshop, hash: string, result: LayResult): Promise<void> {
  inMemory.set(hash, result);
  await call('keepLay', workshop, { jobHash: hash, result });
}
