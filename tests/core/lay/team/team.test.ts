import { describe, expect, test } from 'vitest';
import { handsFor } from '../../../../shared-core/lay/team/hands.ts';
import type { LayBudget, LayResult } from '../../../../shared-core/lay/job.ts';
import type { MemberOrder } from '../../../../shared-core/lay/team/member.ts';
import { layTeams } from '../../../../shared-core/lay/team/team.ts';
import type { LayFailure } from '../../../../shared-core/lay/team/team-order.ts';
import { HandWork } from '../hand-work.ts';
import { job, laid, rectangle, shape } from '../jobs.ts';

const shell = job([shape('strip', rectangle(700, 90), { count: 6 })], { seed: 3 });
const lining = job([shape('square', rectangle(310, 310), { count: 4 })], { seed: 4 });
const batting = job([shape('square', rectangle(290, 330), { count: 3 })], { seed: 5 });
const found = laid(shell, 20);

/** The lay of the shell with so much cloth more, after so many moves. */
function longer(byMm: number, more: Partial<LayResult> = {}): LayResult {
  return { ...found, usedLengthMm: [found.usedLengthMm[0]! + byMm], ...more };
}

const fiveSeconds: LayBudget = { seconds: 5, iterations: null, minIterations: 700 };

function opened(handCount: number) {
  const place = new HandWork(handCount);
  const teams = layTeams(place);
  const told: LayResult[] = [];
  const lay = (asked = shell, budget: LayBudget | (() => LayBudget) = fiveSeconds) => {
    const ended: { result?: LayResult; failure?: LayFailure } = {};
    const stop = teams.lay({
      job: asked,
      budget,
      onBetter: (result) => told.push(result),
      done: (result) => {
        ended.result = result;
      },
      failed: (failure) => {
        ended.failure = failure;
      },
    });
    return { ended, stop };
  };
  return { place, teams, told, lay, hands: place.hands };
}

function lays(orders: readonly MemberOrder[]) {
  return orders.filter((order) => order.kind === 'lay');
}

function kinds(orders: readonly MemberOrder[]): string[] {
  return orders.map(({ kind }) => kind);
}

describe('a lay that is alone', () => {
  test('gets every hand, each with a seed of its own and the time that is left', () => {
    const { place, lay, hands } = opened(3);
    lay();
    expect(hands).toHaveLength(1);
    place.pass(100);
    expect(hands).toHaveLength(3);
    const [lead, ...others] = hands.map(({ orders }) => lays(orders)[0]!);
    expect(lead).toMatchObject({ job: shell, budget: fiveSeconds });
    for (const { budget } of others) {
      expect(budget.seconds).toBeLessThan(5);
      expect(budget.seconds).toBeGreaterThan(4.8);
      expect(budget.minIterations).toBeUndefined();
    }
    const seeds = [lead!, ...others].map((order) => order.job.seed);
    expect(new Set(seeds).size).toBe(3);
    expect(seeds[0]).toBe(3);
  });

  test('has one hand where moves bound it, so that the lay depends on nothing else', () => {
    const { place, lay, hands } = opened(3);
    lay(shell, { seconds: null, iterations: 40 });
    lay(lining, { seconds: 9, iterations: 40 });
    place.pass(200);
    expect(hands.map(({ orders }) => kinds(orders))).toEqual([['lay'], ['lay']]);
  });

  test('has one hand where it takes no longer than it would take another to begin', () => {
    const { place, lay, hands } = opened(3);
    lay(shell, { seconds: 0.3, iterations: null });
    place.pass(200);
    expect(hands).toHaveLength(1);
  });

  test('tells each member of the best that another has found, and a late one of what stands', () => {
    const { place, lay, hands } = opened(3);
    lay();
    place.pass(100);
    expect(hands.map(({ orders }) => kinds(orders))).toEqual([
      ['lay', 'share'],
      ['lay', 'share'],
      ['lay', 'share'],
    ]);
    hands[1]!.answer('shared', longer(30));
    hands[2]!.answer('shared', longer(40));
    hands[0]!.answer('shared', longer(10));
    const adopted = (at: number) => hands[at]!.orders.filter(({ kind }) => kind === 'adopt');
    expect([0, 1, 2].map(adopted)).toMatchObject([
      [{ result: longer(30) }],
      [{ result: longer(10) }],
      [{ result: longer(30) }, { result: longer(10) }],
    ]);
    hands[2]!.answer('done', longer(20, { stoppedBy: 'time' }));
    place.pass(100);
    expect(hands[2]!.orders.slice(-3)).toMatchObject([
      { kind: 'lay' },
      { kind: 'adopt', result: longer(10) },
      { kind: 'share' },
    ]);
  });

  test('shows the maker the best of all members, once it is checked', () => {
    const { place, told, lay, hands } = opened(2);
    lay();
    place.pass(100);
    hands[0]!.answer('better', longer(30));
    hands[1]!.answer('better', longer(40, { seed: 99 }));
    hands[1]!.answer('shared', longer(5, { seed: 99 }));
    hands[1]!.answer('better', longer(10, { seed: 99 }));
    expect(told).toEqual([longer(30), longer(10)]);
  });

  test('is the best of all members under its own seed when the time is up, their moves added up', () => {
    const { place, lay, hands } = opened(2);
    const { ended } = lay();
    place.pass(100);
    hands[1]!.answer('better', longer(10, { seed: 99, iterations: 70 }));
    hands[0]!.answer('done', longer(20, { iterations: 500, seconds: 5, stoppedBy: 'time' }));
    expect(kinds(hands[1]!.orders)).toContain('leave');
    expect(ended).toEqual({});
    hands[1]!.answer('done', longer(5, { seed: 99, iterations: 90, seconds: 4.9, stoppedBy: 'maker' }));
    expect(ended.result).toEqual(longer(5, { seed: 3, iterations: 590, seconds: 5, stoppedBy: 'time' }));
  });

  test('does not wait for a member that has found nothing yet', () => {
    const { place, lay, hands } = opened(2);
    const { ended } = lay();
    place.pass(100);
    hands[0]!.answer('done', found);
    expect(ended.result).toEqual(found);
    const next = lay(lining);
    lay(batting);
    hands[1]!.answer('done', longer(50));
    expect(lays(hands[1]!.orders).map((order) => order.job.seed)).toContain(5);
    expect(next.ended).toEqual({});
  });

  test('goes on when another member is done in time, and ends when one is at the floor', () => {
    const { place, lay, hands } = opened(3);
    const { ended } = lay();
    place.pass(100);
    for (const hand of hands) hand.answer('better', longer(30));
    hands[1]!.answer('done', longer(25, { stoppedBy: 'time' }));
    expect(kinds(hands[0]!.orders)).not.toContain('leave');
    hands[2]!.answer('done', longer(0, { stoppedBy: 'floor' }));
    expect(kinds(hands[0]!.orders).at(-1)).toBe('leave');
    hands[0]!.answer('done', longer(20, { stoppedBy: 'maker' }));
    expect(ended.result).toMatchObject({ usedLengthMm: found.usedLengthMm, stoppedBy: 'floor' });
  });
});

describe('a lay that comes later', () => {
  test('gets a hand back from the one that has several, which loses nothing', () => {
    const { place, lay, hands } = opened(2);
    const first = lay();
    place.pass(100);
    hands[1]!.answer('better', longer(10));
    lay(lining);
    expect(hands.map(({ orders }) => kinds(orders).at(-1))).toEqual(['share', 'leave']);
    hands[1]!.answer('done', longer(2, { stoppedBy: 'maker' }));
    expect(lays(hands[1]!.orders).at(-1)!.job).toEqual(lining);
    hands[0]!.answer('done', longer(20, { stoppedBy: 'time' }));
    expect(first.ended.result).toMatchObject({ usedLengthMm: longer(2).usedLengthMm, stoppedBy: 'time' });
  });

  test('calls back no more hands than lays wait, and never the last one of a lay', () => {
    const { place, lay, hands } = opened(4);
    lay();
    place.pass(100);
    const leaving = () => hands.filter(({ orders }) => kinds(orders).includes('leave')).length;
    lay(lining);
    expect(leaving()).toBe(1);
    lay(batting);
    expect(leaving()).toBe(2);
    lay(shell);
    expect(leaving()).toBe(3);
    lay(shell);
    expect(leaving()).toBe(3);
  });

  test('while lays wait none has two hands, and they begin in the order asked', () => {
    const { place, lay, hands } = opened(2);
    for (const asked of [shell, lining, batting]) lay(asked);
    place.pass(100);
    hands[1]!.answer('done', longer(0));
    place.pass(100);
    expect(hands.map(({ orders }) => lays(orders).map((order) => order.job.seed))).toEqual([[3], [4, 5]]);
    hands[0]!.answer('done', longer(0));
    place.pass(100);
    expect(lays(hands[0]!.orders)).toHaveLength(2);
    expect(lays(hands[0]!.orders)[1]!.job).toMatchObject({ shapes: batting.shapes });
  });
});

describe('a hand that dies', () => {
  test('costs its share alone: the others go on, and nobody else is sent there', () => {
    const { place, lay, hands } = opened(2);
    const { ended } = lay();
    place.pass(100);
    hands[0]!.answer('better', longer(10, { iterations: 60 }));
    hands[0]!.die('the needle broke');
    place.pass(100);
    expect(hands).toHaveLength(2);
    hands[1]!.answer('done', longer(30, { iterations: 400, stoppedBy: 'time' }));
    expect(ended.result).toEqual(longer(10, { iterations: 460, stoppedBy: 'time' }));
  });

  test('alone at a lay has it begun once more, with one hand', () => {
    const { place, lay, hands } = opened(2);
    const { ended } = lay();
    place.pass(100);
    hands[1]!.die('the needle broke');
    hands[0]!.die('the needle broke');
    place.pass(100);
    expect(hands.map(({ orders }) => lays(orders).length)).toEqual([1, 1, 1]);
    hands[2]!.die('the thread too');
    expect(ended.failure).toEqual({ kind: 'died twice', cause: 'the thread too' });
  });

  test('before the maker hears of it is as if it had never joined', () => {
    const { place, lay, hands } = opened(2);
    const { ended } = lay();
    place.pass(100);
    hands[1]!.fail('a piece lies on another');
    hands[0]!.answer('done', found);
    expect(ended.result).toEqual(found);
    const next = lay(lining);
    hands[0]!.fail('a piece lies on another');
    expect(next.ended.failure).toEqual({ kind: 'refused', sentence: 'a piece lies on another' });
  });
});

test('a lay that is stopped gives the best of all members at once, and ends their hands', () => {
  const { place, lay, hands } = opened(2);
  const { ended, stop } = lay();
  place.pass(100);
  hands[0]!.answer('better', longer(30));
  hands[1]!.answer('better', longer(10));
  stop();
  expect(ended.result).toEqual(longer(10, { stoppedBy: 'maker' }));
  expect(hands.map(({ isEnded }) => isEnded)).toEqual([true, true]);
});

test('a lay that is stopped before it has found anything says whether it had begun', () => {
  const { lay, hands } = opened(1);
  const [one, two, three] = [lay(), lay(lining), lay(batting)];
  two.stop();
  one.stop();
  expect(one.ended.failure).toEqual({ kind: 'stopped', hadBegun: true });
  expect(two.ended.failure).toEqual({ kind: 'stopped', hadBegun: false });
  expect(lays(hands[1]!.orders)[0]!.job).toEqual(batting);
  expect(three.ended).toEqual({});
});

test('closing fails what is under way and what waits', async () => {
  const { teams, lay } = opened(1);
  const [one, two] = [lay(), lay(lining)];
  await teams.close();
  expect([one.ended.failure, two.ended.failure, lay().ended.failure]).toEqual(
    Array.from({ length: 3 }, () => ({ kind: 'closed' })),
  );
});

test('one core is left for the window where there are more than two', () => {
  expect([1, 2, 3, 4, 8, 64].map(handsFor)).toEqual([1, 2, 2, 3, 7, 16]);
});
