import { Worker } from 'node:worker_threads';
import { afterEach, describe, expect, test } from 'vitest';
import { runEstimate } from '../../../../main/doors/command.ts';
import { type LayThreads, openLayThreads } from '../../../../main/services/threads/lay-threads.ts';
import { checkLay } from '../../../../shared-core/lay/check/check.ts';
import type { LayJob } from '../../../../shared-core/lay/job.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { job, laid, length, rectangle, shape, wedge } from '../../../core/lay/jobs.ts';
import type { Mortality } from '../mortal-thread.ts';

const budget = { seconds: null, iterations: 40 };
let threads: LayThreads | undefined;
afterEach(() => threads?.close());

/** Six strips of 700 by 90 mm, none turned. */
function strips(seed: number, widthMm: number): LayJob {
  const strip = shape('strip', rectangle(700, 90), { count: 6, turnsDeg: [0] });
  return job([strip], { lengths: [length('endless', widthMm, null)], seed });
}

const wedges = job([shape('wedge', wedge(430, 310), { count: 11 })], { seed: 8 });

/** Threads of which the first so many are mortal; how many were started is counted. */
function opened(mortality: Mortality, mortalCount: number) {
  let startedCount = 0;
  threads = openLayThreads(budget, 1, () => {
    const isMortal = ++startedCount <= mortalCount;
    return new Worker(new URL('../mortal-thread.ts', import.meta.url), {
      workerData: isMortal ? mortality : { ...mortality, seed: Number.NaN },
      stderr: true,
    });
  });
  return { runLay: threads.runLay, startedCount: () => startedCount };
}

describe('a thread that dies at a lay', () => {
  test.each([
    ['without a word', 'exit'],
    ['of a failure', 'throw'],
    ['for want of memory', 'memory'],
  ] as const)('%s is replaced, and the lay is found all the same', async (_, by) => {
    const { runLay, startedCount } = opened({ seed: 13, by }, 1);
    const [hit, behind] = await Promise.all([
      runLay(strips(13, 180), 'shell'),
      runLay(strips(5, 270), 'lining'),
    ]);
    expect([hit.placements, behind.placements]).toEqual([
      laid(strips(13, 180), 40).placements,
      laid(strips(5, 270), 40).placements,
    ]);
    expect(startedCount()).toBe(2);
  });

  test.each([
    ['exit', 'it ended with code 7'],
    ['throw', 'the needle broke'],
    ['memory', 'its memory ran out'],
  ] as const)(
    'twice (%s) has the lay refused in a sentence, and those behind it are found',
    async (by, why) => {
      const { runLay, startedCount } = opened({ seed: 13, by }, Number.POSITIVE_INFINITY);
      const [hit, behind, last] = await Promise.allSettled([
        runLay(strips(13, 180), 'shell'),
        runLay(strips(5, 270), 'lining'),
        runLay(strips(6, 360), 'batting'),
      ]);
      expect(hit.status === 'rejected' && problemSentence(hit.reason.problem)).toBe(
        `The lay of shell could not be finished: what looks for it stopped twice (${why}). ` +
          'Close other programs and try again; if it stops again, plan fewer coats at once.',
      );
      expect([behind, last]).toMatchObject([
        { value: { placements: laid(strips(5, 270), 40).placements } },
        { value: { placements: laid(strips(6, 360), 40).placements } },
      ]);
      expect(startedCount()).toBe(3);
    },
  );

  test('while it waits for the next is replaced at the next', async () => {
    const started: Worker[] = [];
    threads = openLayThreads(budget, 1, () => {
      started.push(new Worker(new URL('../../../../main/services/threads/lay-thread.ts', import.meta.url)));
      return started.at(-1)!;
    });
    await threads.runLay(strips(5, 270), 'lining');
    await started[0]!.terminate();
    const next = await threads.runLay(strips(6, 180), 'shell');
    expect(next.placements).toEqual(laid(strips(6, 180), 40).placements);
    expect(started).toHaveLength(2);
  });
});

describe('a lay that is alone', () => {
  // Nobody joins for the last 0.4 s: a busy machine may be late by more than a second before that.
  const timed = { seconds: 1.6, iterations: null };
  const layThread = () =>
    new Worker(new URL('../../../../main/services/threads/lay-thread.ts', import.meta.url));

  test('is looked for by all threads, and is valid', async () => {
    let startedCount = 0;
    threads = openLayThreads(timed, 2, () => {
      startedCount++;
      return layThread();
    });
    const result = await threads.runLay(wedges, 'shell');
    expect(startedCount).toBe(2);
    expect(checkLay(wedges, result)).toEqual([]);
    expect(result).toMatchObject({ seed: 8, stoppedBy: 'time' });
  });

  test('is found all the same when a thread dies that came to it', async () => {
    const started: Worker[] = [];
    threads = openLayThreads(timed, 2, () => {
      started.push(started.length === 0 ? layThread() : new Worker('process.exit(7)', { eval: true }));
      return started.at(-1)!;
    });
    const result = await threads.runLay(wedges, 'shell');
    expect(checkLay(wedges, result)).toEqual([]);
    expect(result.stoppedBy).toBe('time');
    expect(started).toHaveLength(2);
  });
});

test('closing leaves no lay waiting', async () => {
  const { runLay } = opened({ seed: 13, by: 'exit' }, 0);
  const asked = [runLay(strips(1, 180), 'shell'), runLay(strips(2, 180), 'lining')];
  const settled = Promise.allSettled(asked);
  await threads!.close();
  expect((await settled).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
});

test('the estimate without a window refuses a lay that cannot be finished in a sentence', async () => {
  const done = await runEstimate(
    ['--demo', '--iterations', '20'],
    () => {},
    (given) =>
      openLayThreads(
        given,
        1,
        () =>
          new Worker(new URL('../mortal-thread.ts', import.meta.url), {
            workerData: { seed: 1, by: 'exit' } satisfies Mortality,
          }),
      ),
  );
  expect(done.ok ? '' : problemSentence(done.problems[0]!)).toMatch(
    /^The lay of shell could not be finished: what looks for it stopped twice/,
  );
});
