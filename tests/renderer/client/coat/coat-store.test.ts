import { expect, test } from 'vitest';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { setCoatCount } from '../../../../shared-core/plan/edits/edit.ts';
import { laid, job, rectangle, shape } from '../../../core/lay/jobs.ts';
import { coatByHand, estimated, quiet, settle } from './coat-by-hand.ts';

const coats = (count: number) => (plan: CoatPlan) => setCoatCount(plan, count);

async function opened() {
  const coat = coatByHand();
  const leave = coat.store.getState().open();
  await quiet();
  return { ...coat, leave, now: coat.store.getState };
}

test('a coat that is opened is read, laid quickly, then in earnest, and settles', async () => {
  const coat = coatByHand();
  const phases: string[] = [];
  coat.store.subscribe(({ phase }, before) => phase !== before.phase && phases.push(phase));
  coat.store.getState().open();
  expect(coat.store.getState()).toMatchObject({ phase: 'reading', input: null, estimate: null });
  await quiet();
  expect(coat.store.getState().input?.plan.name).toBe('Lapwing');
  const first = await estimated(coat.last());
  await coat.last().end(first);
  expect(coat.store.getState().estimate).toBe(first);
  await coat.last().end(await estimated(coat.last()));
  expect(phases).toEqual(['quick', 'thorough', 'settled']);
  expect(coat.passes.map(({ seconds }) => seconds)).toEqual([0.3, 3]);
  expect(coat.store.getState().estimatedFrom).toBe(coat.store.getState().input);
});

test('a change of the plan is saved, and what it changed is said once the lays after it have settled', async () => {
  const coat = await opened();
  await settle(coat);
  const answer = await coat.now().edit(coats(2));
  await quiet();
  expect(answer).toEqual({ ok: true, value: '2 coats.' });
  expect(coat.saved.map(({ coatCount }) => coatCount)).toEqual([1, 2]);
  expect(coat.now()).toMatchObject({ phase: 'quick', canUndo: true });
  expect(coat.now().lastEdit).toEqual({ said: '2 coats.', change: null });
  // Until then the figures before it stand, as those of the older plan.
  expect(coat.now().estimatedFrom).not.toBe(coat.now().input);
  await coat.last().end(await estimated(coat.last()));
  expect(coat.now().lastEdit?.change).toBeNull();
  await coat.last().end(await estimated(coat.last()));
  // Two fronts of 700 by 500 and two linings of 640 by 480 lie side by side on 1400.
  expect(coat.now().lastEdit?.change).toMatchObject({ slots: [], toBuyMinor: 0, isEnough: false });
  await coat.now().edit(coats(4));
  await quiet();
  await settle(coat);
  expect(coat.now().lastEdit?.change?.slots).toMatchObject([
    { slotId: 'shell', before: 700, after: 1400, stateAfter: 'covered' },
    { slotId: 'lining', before: 640, after: 1280, stateAfter: 'short' },
  ]);
});

test('what is typed back to where it stood is saved nowhere and estimated by nobody', async () => {
  const coat = await opened();
  await settle(coat);
  expect(await coat.now().edit(coats(1))).toEqual({ ok: true, value: '1 coat.' });
  await quiet();
  expect(coat.saved).toHaveLength(1);
  expect(coat.passes).toHaveLength(2);
  expect(coat.now()).toMatchObject({ phase: 'settled', lastEdit: null });
});

test('a change that is refused leaves plan and figures as they are', async () => {
  const coat = await opened();
  await settle(coat);
  const before = coat.now();
  expect((await before.edit(coats(-3))).ok).toBe(false);
  expect(coat.now()).toBe(before);
});

test('two changes at once are made one after the other, the second on what the first gave', async () => {
  const coat = await opened();
  await settle(coat);
  const [two, three] = await Promise.all([
    coat.now().edit(coats(2)),
    coat.now().edit((plan) => setCoatCount(plan, plan.coatCount + 1)),
  ]);
  expect([two.ok, three.ok]).toEqual([true, true]);
  expect(coat.saved.map(({ coatCount }) => coatCount)).toEqual([1, 2, 3]);
});

test('undo brings the plan back and is estimated anew', async () => {
  const coat = await opened();
  await settle(coat);
  await coat.now().edit(coats(4));
  await quiet();
  await settle(coat);
  expect((await coat.now().undo()).ok).toBe(true);
  await quiet();
  expect(coat.now()).toMatchObject({ phase: 'quick', canUndo: false });
  expect(coat.now().input?.plan.coatCount).toBe(1);
  await settle(coat);
  expect(coat.now().lastEdit?.change?.slots[0]).toMatchObject({ before: 1400, after: 700 });
  expect((await coat.now().undo()).ok).toBe(false);
  expect(coat.now().problems).toHaveLength(1);
});

test('answers of the plan before a change come too late and are dropped', async () => {
  const coat = await opened();
  const old = coat.last();
  const oldFigures = await estimated(old);
  old.onBegin('shell');
  await coat.now().edit(coats(2));
  await quiet();
  expect(old.signal.aborted).toBe(true);
  expect(coat.now().laying).toEqual([]);
  coat.last().onBegin('lining');
  const now = coat.now();
  const strip = job([shape('strip', rectangle(700, 90), { count: 2 })], { seed: 3 });
  old.onBetter(strip, laid(strip, 20));
  old.onEnd('shell');
  old.onBegin('lining');
  await old.end(oldFigures);
  expect(coat.now()).toBe(now);
  expect(now).toMatchObject({ phase: 'quick', estimate: null, laying: ['lining'] });
  expect(coat.passes).toHaveLength(2);
});

test('a pass of an older plan that fails says nothing about the newer one', async () => {
  const coat = await opened();
  const old = coat.last();
  await coat.now().edit(coats(2));
  await quiet();
  await old.fail('the needle broke');
  expect(coat.now()).toMatchObject({ phase: 'quick', problems: [] });
});

test('better lays and what is laid now stand as they come, until the figures have them', async () => {
  const coat = await opened();
  const strip = job([shape('strip', rectangle(700, 90), { count: 2 })], { seed: 3 });
  const better = laid(strip, 20);
  const pass = coat.last();
  pass.onBegin('shell');
  pass.onBegin('lining');
  pass.onBegin('shell');
  pass.onEnd('shell');
  pass.onBetter(strip, better);
  expect(coat.now().laying).toEqual(['lining', 'shell']);
  expect(coat.now().live.get(strip)).toBe(better);
  await pass.end(await estimated(pass));
  expect(coat.now().live.size).toBe(0);
});

test('stopped lays keep the figures of the best so far, and go on when asked', async () => {
  const coat = await opened();
  await coat.last().end(await estimated(coat.last()));
  const figures = await estimated(coat.last());
  coat.now().stop();
  await coat.last().end(figures);
  expect(coat.now()).toMatchObject({ phase: 'stopped', estimate: figures });
  expect(coat.passes).toHaveLength(2);
  coat.now().lookLonger(10);
  expect(coat.now().phase).toBe('thorough');
  expect(coat.last().seconds).toBe(10);
  await coat.last().end(figures);
  expect(coat.now().phase).toBe('settled');
});

test('lays stopped before the first was found are stopped, not failed', async () => {
  const coat = await opened();
  coat.now().stop();
  await coat.last().fail('stopped before a first lay was found');
  expect(coat.now()).toMatchObject({ phase: 'stopped', estimate: null, problems: [] });
});

test('an estimate that fails says why; read again, the coat is estimated again', async () => {
  const coat = await opened();
  await coat.last().fail('the needle broke');
  expect(coat.now().phase).toBe('failed');
  expect(coat.now().problems[0]?.what).toContain('the needle broke');
  void coat.now().reload();
  await quiet();
  expect(coat.now()).toMatchObject({ phase: 'quick', problems: [] });
});

test('a coat that cannot be read says so and can be asked again', async () => {
  const coat = coatByHand();
  const gone = { where: 'The plan', what: 'is not in the file', fix: 'Go back to the coats.' };
  coat.refuseReadings(gone);
  coat.store.getState().open();
  await quiet();
  expect(coat.store.getState()).toMatchObject({ phase: 'failed', problems: [gone], input: null });
  expect((await coat.store.getState().edit(coats(2))).ok).toBe(false);
  coat.refuseReadings(null);
  void coat.store.getState().reload();
  await quiet();
  expect(coat.store.getState()).toMatchObject({ phase: 'quick', problems: [] });
});

test('a coat left while it is read begins no lays', async () => {
  const coat = coatByHand();
  const release = coat.holdReadings();
  const leave = coat.store.getState().open();
  await quiet();
  leave();
  await release();
  expect(coat.passes).toHaveLength(0);
  expect(coat.store.getState().input).toBeNull();
});

test('a coat that is left stops its lays and hears no more of them', async () => {
  const coat = await opened();
  const pass = coat.last();
  const figures = await estimated(pass);
  coat.leave();
  const left = coat.now();
  expect(pass.signal.aborted).toBe(true);
  pass.onBegin('shell');
  await pass.end(figures);
  expect(coat.now()).toBe(left);
});

test('a coat left and opened again is read afresh; what the first visit asked for comes too late', async () => {
  const coat = coatByHand();
  const release = coat.holdReadings();
  coat.store.getState().open()();
  const leave = coat.store.getState().open();
  await release();
  expect(coat.passes).toHaveLength(1);
  expect(coat.store.getState()).toMatchObject({ phase: 'quick' });
  leave();
  expect(coat.last().signal.aborted).toBe(true);
});
