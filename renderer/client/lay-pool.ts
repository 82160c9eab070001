/** A worker for each core: the window itself is idle while lays are looked for. Lays wait their turn, and one that is stopped gives its best so far. */
import type { LayJob, LayResult } from '../../shared-core/lay/job.ts';
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
  let best: LayResult | null = null;
  const finish = (give: () => void, workerIsFree: boolean) => {
    order.signal?.removeEventListener('abort', stop);
    worker.onmessage = null;
    worker.onerror = null;
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
        best = message.result;
        order.onBetter?.(message.result);
        return;
      case 'done':
        return finish(() => order.resolve(message.result), true);
      case 'failed':
        return finish(() => order.reject(new Error(message.sentence)), true);
      default:
        message satisfies never;
    }
  };
  worker.onerror = (event) =>
    finish(() => order.reject(new Error(event.message || 'the lay could not be run')), false);
  if (order.signal?.aborted) {
    stop();
    return;
  }
  order.signal?.addEventListener('abort', stop, { once: true });
  const { job, isThorough } = order;
  const seconds = typeof order.seconds === 'function' ? order.seconds() : order.seconds;
  worker.postMessage({ id, job, seconds, isThorough } satisfies LayAsked);
}

/** Lays a job on the next free worker. */
export function layInWorker(order: LayOrder): Promise<LayResult> {
  return new Promise((resolve, reject) => {
    waiting.push({ ...order, resolve, reject });
    serve();
  });
}
