/** Pattern files read in a worker that is given up when it takes too long. */
import { say } from '../../../shared-core/wording/say.ts';
import { nothingFound, type ReadPattern } from '../../../shared-core/exchange/pattern/pattern.ts';
import type { PatternAsked } from './pattern-worker.ts';
import { workerName } from './worker-name.ts';

/** Far more than the limits of the readers leave to any file on a slow machine. */
const maxSeconds = 20;

let idle: Worker | undefined;

/** What the file holds; problems where it took too long or could not be read. Aborting ends the work, and nothing comes. */
export function readPatternInWorker(asked: PatternAsked, signal: AbortSignal): Promise<ReadPattern> {
  return new Promise((resolve) => {
    if (signal.aborted) return;
    const worker = idle ?? startWorker();
    idle = undefined;
    const settled = new AbortController();
    const end = (read: ReadPattern | null): void => {
      settled.abort();
      clearTimeout(deadline);
      if (read) resolve(read);
    };
    const giveUp = (read: ReadPattern | null): void => {
      worker.terminate();
      end(read);
    };
    const deadline = setTimeout(() => giveUp(tookTooLong), maxSeconds * 1000);
    worker.onmessage = ({ data }: MessageEvent<ReadPattern>) => {
      idle?.terminate();
      idle = worker;
      end(data);
    };
    worker.onerror = () => giveUp(brokeOff);
    signal.addEventListener('abort', () => giveUp(null), { signal: settled.signal });
    worker.postMessage(asked);
  });
}

function startWorker(): Worker {
  return new Worker(new URL('./pattern-worker.ts', import.meta.url), {
    type: 'module',
    name: workerName('pattern'),
  });
}

const fix = say('pattern-reader.save-fewer-pieces-or-sizes-in');
const tookTooLong = nothingFound({
  where: say('common.the-file'),
  what: say('pattern-reader.takes-longer-than-seconds-to-read', { maxSeconds }),
  fix,
});
const brokeOff = nothingFound({
  where: say('common.the-file'),
  what: say('pattern-reader.could-not-be-read-to-its'),
  fix,
});
