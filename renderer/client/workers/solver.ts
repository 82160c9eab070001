/** The basket's integer programme, solved in a worker of its own that starts with the first one. */
import type { Solve } from '../../../shared-core/to-buy/programme.ts';
import type { SolverAnswered, SolverAsked } from './solver-worker.ts';

interface Asked {
  readonly resolve: (numbers: readonly number[] | null) => void;
  readonly reject: (error: Error) => void;
}

let worker: Worker | undefined;
let lastId = 0;
const asked = new Map<number, Asked>();

function startWorker(): Worker {
  const started = new Worker(new URL('./solver-worker.ts', import.meta.url), {
    type: 'module',
    name: 'solver',
  });
  started.onmessage = ({ data }: MessageEvent<SolverAnswered>) => {
    const waiting = asked.get(data.id);
    asked.delete(data.id);
    if (data.ok) waiting?.resolve(data.numbers);
    else waiting?.reject(new Error(data.sentence));
  };
  started.onerror = (event) => {
    started.terminate();
    worker = undefined;
    const error = new Error(event.message || 'the solver could not be run');
    for (const { reject } of asked.values()) reject(error);
    asked.clear();
  };
  return started;
}

export const solveInWorker: Solve = (programme) =>
  new Promise((resolve, reject) => {
    const id = ++lastId;
    asked.set(id, { resolve, reject });
    worker ??= startWorker();
    worker.postMessage({ id, programme } satisfies SolverAsked);
  });
