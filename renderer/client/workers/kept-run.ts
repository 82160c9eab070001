/** Runs the lays of a flow in the workers, each at most once: a kept lay that was looked for as long is taken as it is. */
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { type RunLay, totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import { jobHash, keepLay, keptLay } from './kept-lays.ts';
import { layInWorker } from './lay-pool.ts';
import { quickSeconds } from './lay-seconds.ts';

export interface KeptRunOptions {
  readonly workshop: Workshop;
  readonly seconds: number;
  readonly signal: AbortSignal;
  readonly onBegin?: (what: string) => void;
  readonly onEnd?: (what: string) => void;
  readonly onBetter?: (job: LayJob, better: LayResult) => void;
}

export function keptRun({ workshop, seconds, signal, onBegin, onEnd, onBetter }: KeptRunOptions): RunLay {
  return async (job, what) => {
    const hash = await jobHash(job);
    const kept = await keptLay(workshop, hash);
    if (
      kept &&
      (kept.seconds >= seconds * 0.9 ||
        kept.stoppedBy === 'floor' ||
        kept.stoppedBy === 'nothing left to try' ||
        kept.stoppedBy === 'by hand')
    )
      return kept;
    onBegin?.(what);
    try {
      const laid = await layInWorker({
        job,
        seconds,
        isThorough: seconds > quickSeconds,
        signal,
        onBetter: (better) => {
          if (kept && totalUsedMm(kept) <= totalUsedMm(better)) return;
          onBetter?.(job, better);
        },
      });
      const best = kept && totalUsedMm(kept) < totalUsedMm(laid) ? { ...kept, seconds: laid.seconds } : laid;
      if (!signal.aborted) await keepLay(workshop, hash, best);
      return best;
    } catch (error) {
      if (signal.aborted) throw error;
      throw new Error(`${error instanceof Error ? error.message : String(error)} (${what})`);
    } finally {
      onEnd?.(what);
    }
  };
}
