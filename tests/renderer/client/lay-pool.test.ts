import { afterEach, expect, test, vi } from 'vitest';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import type { MemberAnswer, MemberOrder } from '../../../shared-core/lay/team/member.ts';
import { job, laid, rectangle, shape } from '../../core/lay/jobs.ts';

/** A browser's worker that does what the test says: it lays nothing by itself. */
class HandWorker {
  static readonly started: HandWorker[] = [];
  onmessage: ((event: { data: MemberAnswer }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  onmessageerror: (() => void) | null = null;
  readonly asked: (MemberOrder & { kind: 'lay' })[] = [];
  isTerminated = false;
  constructor() {
    HandWorker.started.push(this);
  }
  postMessage(order: MemberOrder): void {
    if (order.kind === 'lay') this.asked.push(order);
  }
  terminate(): void {
    this.isTerminated = true;
  }
  answer(kind: 'better' | 'done', result: LayResult): void {
    this.onmessage?.({ data: { kind, id: this.asked.at(-1)!.id, result } });
  }
  die(message: string): void {
    this.onerror?.({ message });
  }
}

const { started } = HandWorker;

/** A pool begun afresh. */
async function pool(coreCount = 1) {
  vi.resetModules();
  vi.stubGlobal('Worker', HandWorker);
  vi.stubGlobal('navigator', { hardwareConcurrency: coreCount });
  return import('../../../renderer/client/workers/lay-pool.ts');
}

afterEach(() => {
  started.length = 0;
  vi.unstubAllGlobals();
});

const shell: LayJob = job([shape('strip', rectangle(700, 90), { count: 6 })], { seed: 3 });
const lining: LayJob = job([shape('square', rectangle(310, 310), { count: 4 })], { seed: 4 });
const [shellLay, liningLay] = [laid(shell, 20), laid(lining, 20)];
const oneLeftOut = { shape: 0, mirrored: false, count: 1 };
const longer: LayResult = { ...shellLay, usedLengthMm: [shellLay.usedLengthMm[0]! + 50] };

test('a lay whose worker dies is laid on another, before those behind it', async () => {
  const { layInWorker } = await pool();
  const first = layInWorker({ job: shell, seconds: 1, isThorough: false });
  const second = layInWorker({ job: lining, seconds: 2, isThorough: false });
  started[0]!.die('the needle broke');
  expect(started[0]!.isTerminated).toBe(true);
  started[1]!.answer('done', shellLay);
  started[1]!.answer('done', liningLay);
  expect([await first, await second]).toEqual([shellLay, liningLay]);
  expect(started.map(({ asked }) => asked.map(({ job: { seed } }) => seed))).toEqual([[3], [3, 4]]);
});

test('a lay at which two workers die is refused in a sentence, and the next is laid', async () => {
  const { layInWorker } = await pool();
  const first = layInWorker({ job: shell, seconds: 1, isThorough: false });
  const second = layInWorker({ job: lining, seconds: 2, isThorough: false });
  started[0]!.die('the needle broke');
  started[1]!.die('the thread too');
  started[2]!.answer('done', liningLay);
  await expect(first).rejects.toThrow(
    'the lay could not be finished: what looks for it stopped twice (the thread too)',
  );
  expect(await second).toEqual(liningLay);
});

test('an answer that cannot be read counts as a death', async () => {
  const { layInWorker } = await pool();
  const first = layInWorker({ job: shell, seconds: 1, isThorough: false });
  started[0]!.onmessageerror?.();
  started[1]?.answer('done', shellLay);
  expect(started).toHaveLength(2);
  expect(await first).toEqual(shellLay);
});

test('what a worker had found before it died is not lost', async () => {
  const { layInWorker } = await pool();
  const told: LayResult[] = [];
  const stop = new AbortController();
  const order = { job: shell, seconds: 1, isThorough: true, onBetter: (lay: LayResult) => told.push(lay) };
  const finished = layInWorker(order);
  started[0]!.answer('better', shellLay);
  started[0]!.die('the needle broke');
  started[1]!.answer('better', longer);
  started[1]!.answer('better', { ...shellLay, usedLengthMm: [1], unplaced: [oneLeftOut] });
  expect(told).toEqual([shellLay]);
  started[1]!.answer('done', longer);
  expect((await finished).usedLengthMm).toEqual(shellLay.usedLengthMm);

  const stopped = layInWorker({ ...order, signal: stop.signal });
  started[1]!.answer('better', shellLay);
  started[1]!.die('the needle broke');
  stop.abort();
  expect(await stopped).toEqual({ ...shellLay, stoppedBy: 'maker' });
});

test('on two cores both work on a lay that is alone; a stop ends them and takes the better one', async () => {
  const { layInWorker } = await pool(2);
  const stop = new AbortController();
  const laying = layInWorker({ job: shell, seconds: 3, isThorough: true, signal: stop.signal });
  started[0]!.answer('better', longer);
  await vi.waitFor(() => expect(started).toHaveLength(2));
  started[1]!.answer('better', shellLay);
  stop.abort();
  expect(await laying).toEqual({ ...shellLay, stoppedBy: 'maker' });
  expect(started.map(({ isTerminated }) => isTerminated)).toEqual([true, true]);
});

test('a lay that was stopped before it was asked for never begins', async () => {
  const { layInWorker } = await pool();
  const asked = layInWorker({ job: shell, seconds: 3, isThorough: true, signal: AbortSignal.abort() });
  await expect(asked).rejects.toThrow('stopped before it began');
  expect(started).toHaveLength(0);
});
