/** Workers that read files with a deadline and so much memory. One that dies or hangs is replaced. */
import { once } from 'node:events';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { FuzzFile, Judged } from './fuzz-file.ts';

export interface PoolOptions {
  readonly size: number;
  /** The module with the readers, as a URL. */
  readonly module: string;
  /** Each worker makes a folder in it. */
  readonly folder: string;
  /** Of the worker's own time, so that a busy machine makes no difference. */
  readonly deadlineMs: number;
  readonly memoryMb: number;
}

export interface Pool {
  read(file: FuzzFile): Promise<Judged>;
  close(): Promise<void>;
}

/** A worker that is kept from running so long hangs, whatever time it used. */
const waitsAtMost = 30;

export async function openPool(options: PoolOptions): Promise<Pool> {
  let workerCount = 0;
  const start = async (): Promise<Worker> => {
    const folder = join(options.folder, `worker ${workerCount++}`);
    const worker = new Worker(new URL('./fuzz-worker.ts', import.meta.url), {
      workerData: { module: options.module, folder },
      resourceLimits: { maxOldGenerationSizeMb: options.memoryMb },
    });
    await once(worker, 'message');
    return worker;
  };
  const idle = await Promise.all(Array.from({ length: options.size }, start));
  const waiting: ((worker: Worker) => void)[] = [];
  const release = (worker: Worker): void => {
    const next = waiting.shift();
    if (next) next(worker);
    else idle.push(worker);
  };
  return {
    async read(file) {
      const worker = idle.pop() ?? (await new Promise<Worker>((free) => waiting.push(free)));
      const answer = await readIn(worker, file, options.deadlineMs);
      const isOver = ['hung', 'over memory'].includes(answer.verdict) || answer.isDead;
      if (isOver) await worker.terminate();
      release(isOver ? await start() : worker);
      return answer;
    },
    async close() {
      await Promise.all(idle.map((worker) => worker.terminate()));
    },
  };
}

async function readIn(
  worker: Worker,
  file: FuzzFile,
  deadlineMs: number,
): Promise<Judged & { readonly isDead?: boolean }> {
  const ended = new AbortController();
  const { signal } = ended;
  const begun = await usedMs(worker);
  worker.postMessage(file);
  const answer = once(worker, 'message', { signal }).then(([judged]) => judged as Judged);
  const death = new Promise<Judged & { readonly isDead: true }>((tell) => {
    const died = (error: NodeJS.ErrnoException) => {
      const isMemory = error.code === 'ERR_WORKER_OUT_OF_MEMORY';
      tell({ verdict: isMemory ? 'over memory' : 'crashed', why: error.message, isDead: true });
    };
    const exited = (code: number) => tell({ verdict: 'crashed', why: `ended with ${code}`, isDead: true });
    worker.once('error', died);
    worker.once('exit', exited);
    signal.addEventListener('abort', () => worker.off('error', died).off('exit', exited));
  });
  const deadline = (async (): Promise<Judged> => {
    for (let waited = 0; waited < waitsAtMost && !signal.aborted; waited++) {
      await new Promise<void>((later) => {
        const timer = setTimeout(later, deadlineMs);
        signal.addEventListener('abort', () => {
          clearTimeout(timer);
          later();
        });
      });
      if ((await usedMs(worker)) - begun >= deadlineMs) break;
    }
    return { verdict: 'hung', why: `took more than ${deadlineMs} ms of its own time` };
  })();
  try {
    return await Promise.race([answer, death, deadline]);
  } finally {
    answer.catch(() => {});
    ended.abort();
  }
}

/** How long a worker may take to say what it used; one in the midst of foreign code does not hear the question. */
const answersWithinMs = 1000;

/** Time that the worker's own thread has run; 0 where it does not say. */
async function usedMs(worker: Worker): Promise<number> {
  let timer: NodeJS.Timeout | undefined;
  const silence = new Promise<number>((tell) => {
    timer = setTimeout(() => tell(0), answersWithinMs);
  });
  const told = worker.cpuUsage().then(
    ({ user, system }) => (user + system) / 1000,
    () => 0,
  );
  try {
    return await Promise.race([told, silence]);
  } finally {
    clearTimeout(timer);
  }
}
