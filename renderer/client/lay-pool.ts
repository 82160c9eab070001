/** A worker for each core: the window itself is idle while lays are looked for. Lays wait their turn, and one that is stopped gives its best so far. A worker that dies is replaced and its lay begun once more. */
import type { LayJob, LayResult } from '../../shared-core/lay/job.ts';
import { totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import type { LayAnswer, LayAsked } from './lay-worker.ts';

export interface LayOrder {
  readonly job: LayJob;
  /** A function is asked when a worker begins the lay. */
  readonly seconds: number | (() => number);
  readonly isThorough: boolean;
  readonly onBetter?: (result: LayResult) => void;
  /** Aborting takes the best lay so far; a lay that has none yet rejects. */
  readonly signal?: AbortSignal;
}

interface Waiting extends LayOrder {
  /** What a worker had found before it died at this lay; null where it had nothing yet, undefined where none has died. */
  readonly before?: LayResult | null;
  readonly resolve: (result: LayResult) => void;
  readonly reject: (error: Error) => void;
}

export const workerCount = Math.max(1, Math.min(8, navigator.hardwareConcurrency || 2));
const idle: Worker[] = [];
let startedCount = 0;
const waiting: Waiting[] = [];
let lastId = 0;

function takeWorker(): Worker | null {
  const ready = idle.pop();
  if (ready) return ready;
  if (startedCount >= workerCount) return null;
  startedCount++;
  return new Worker(new URL('./lay-worker.ts', import.meta.url), { type: 'module', name: 'lay' });
}

function serve(): void {
  while (waiting.length > 0) {
    if (waiting[0]!.signal?.aborted) {
      waiting.shift()!.reject(new Error('stopped before it began'));
      continue;
    }
    const worker = takeWorker();
    if (!worker) return;
    run(worker, waiting.shift()!);
  }
}

function run(worker: Worker, order: Waiting): void {
  const id = ++lastId;
  const before = order.before ?? null;
  let best = before;
  const finish = (give: () => void, workerIsFree: boolean) => {
    order.signal?.removeEventListener('abort', stop);
    worker.onmessage = null;
    worker.onerror = null;
    worker.onmessageerror = null;
    if (workerIsFree) idle.push(worker);
    else {
      worker.terminate();
      startedCount--;
    }
    give();
    serve();
  };
  const stop = () => {
    const found = best;
    finish(
      () =>
        found
          ? order.resolve({ ...found, stoppedBy: 'maker' })
          : order.reject(new Error('stopped before a first lay was found')),
      false,
    );
  };
  worker.onmessage = (event: MessageEvent<LayAnswer>) => {
    const message = event.data;
    if (message.id !== id) return;
    switch (message.kind) {
      case 'better':
        if (before && !isBetter(message.result, before)) return;
        best = message.result;
        order.onBetter?.(message.result);
        return;
      case 'done':
        return finish(
          () => order.resolve(before && isBetter(before, message.result) ? before : message.result),
          true,
        );
      case 'failed':
        return finish(() => order.reject(new Error(message.sentence)), true);
      default:
        message satisfies never;
    }
  };
  const died = (cause: string) =>
    finish(() => {
      if (order.before === undefined) waiting.unshift({ ...order, before: best });
      else order.reject(new Error(diedTwice(cause)));
    }, false);
  worker.onerror = (event) => died(event.message || 'it gave no reason');
  worker.onmessageerror = () => died('its answer could not be read');
  if (order.signal?.aborted) {
    stop();
    return;
  }
  order.signal?.addEventListener('abort', stop, { once: true });
  const { job, isThorough } = order;
  const seconds = typeof order.seconds === 'function' ? order.seconds() : order.seconds;
  worker.postMessage({ id, job, seconds, isThorough } satisfies LayAsked);
}

/** More pieces placed, or as many on less cloth. */
function isBetter(a: LayResult, b: LayResult): boolean {
  const fewer = unplacedCount(b) - unplacedCount(a);
  return fewer === 0 ? totalUsedMm(a) < totalUsedMm(b) : fewer > 0;
}

function unplacedCount({ unplaced }: LayResult): number {
  return unplaced.reduce((sum, { count }) => sum + count, 0);
}

function diedTwice(cause: string): string {
  return `the lay could not be finished: what looks for it stopped twice (${cause}); close other programs and try again`;
}

/** Lays a job on the next free worker. Rejects where two workers have died at it. */
export function layInWorker(order: LayOrder): Promise<LayResult> {
  return new Promise((resolve, reject) => {
    waiting.push({ ...order, resolve, reject });
    serve();
  });
}
