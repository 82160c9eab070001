import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult, Placement } from '../../../shared-core/lay/job.ts';
import { type LaySearch, startLay } from '../../../shared-core/lay/lay.ts';
import { layMember, type MemberAnswer } from '../../../shared-core/lay/team/member.ts';
import { layTeams } from '../../../shared-core/lay/team/team.ts';
import { virtualWorkplace } from '../../bench/virtual-hands.ts';
import { blob, dice, job, laid, length, randomJob, rectangle, shape } from './jobs.ts';

const next = dice(5);
const blobs = job(
  Array.from({ length: 7 }, (_, index) =>
    shape(`piece ${index}`, blob(next, 380, 260), { count: index === 0 ? 2 : 3 }),
  ),
  { lengths: [length('roll', 900, null)], clearanceMm: 2 },
);
const planned = { seconds: null, iterations: 3000 };

function begun(asked: LayJob): LaySearch {
  return startLay(asked, () => 0, planned);
}

function usedMm(result: LayResult): number {
  return result.usedLengthMm.at(-1)!;
}

/** The length of the next lay that the search finds. */
function nextMm(search: LaySearch): number {
  const beforeMm = usedMm(search.best());
  while (usedMm(search.best()) === beforeMm) search.advance({ ms: null, iterations: 1 });
  return usedMm(search.best());
}

describe('a better lay found under another seed', () => {
  test('is what the search goes on from at its next start, and only its own finds are news', () => {
    const better = laid({ ...blobs, seed: 12 }, 6000);
    const search = begun(blobs);
    expect(usedMm(search.best())).toBeGreaterThan(usedMm(better) * 1.05);
    const newsBefore = search.betterCount();
    expect(search.adopt(better)).toBe(true);
    search.advance({ ms: null, iterations: 3000 });
    expect(usedMm(search.best())).toBeLessThanOrEqual(usedMm(better) + 1e-6);
    expect(checkLay(blobs, search.best())).toEqual([]);
    const isOwn = usedMm(search.best()) < usedMm(better) - 1e-6;
    expect(search.betterCount() > newsBefore).toBe(isOwn);
  });

  test('is let go where the search has found a better one itself since', () => {
    const alone = begun(blobs);
    const firstMm = usedMm(alone.best());
    const secondMm = nextMm(alone);
    const firsts = Array.from({ length: 40 }, (_, seed) => begun({ ...blobs, seed }).best());
    const between = firsts.find((one) => usedMm(one) < firstMm && usedMm(one) > secondMm)!;
    const search = begun(blobs);
    search.advance({ ms: null, iterations: 5 });
    expect(search.adopt(between)).toBe(true);
    expect(nextMm(search)).toBe(secondMm);
  });

  test('with folds, repeats, flaws and remnants leaves every lay valid and none longer', () => {
    let adoptedCount = 0;
    for (let seed = 0; seed < 60; seed++) {
      const asked = randomJob(seed);
      if (asked === null) continue;
      const elsewhere = laid({ ...asked, seed: seed + 1000 }, 400);
      const search = startLay(asked, () => 0, { seconds: null, iterations: 400 });
      const isAdopted = search.adopt(elsewhere);
      search.advance({ ms: null, iterations: 400 });
      const best = search.best();
      expect(checkLay(asked, best), `seed ${seed}`).toEqual([]);
      if (!isAdopted) continue;
      adoptedCount++;
      expect(lastUsed(best)[0], `seed ${seed}`).toBeLessThanOrEqual(lastUsed(elsewhere)[0]);
      if (lastUsed(best)[0] === lastUsed(elsewhere)[0]) {
        expect(lastUsed(best)[1], `seed ${seed}`).toBeLessThanOrEqual(lastUsed(elsewhere)[1] + 1e-6);
      }
    }
    expect(adoptedCount).toBeGreaterThan(10);
  });
});

/** The last length in use, and how much of it is. */
function lastUsed({ usedLengthMm, unplaced }: LayResult): readonly [number, number] {
  expect(unplaced).toEqual([]);
  const last = usedLengthMm.findLastIndex((mm) => mm > 0);
  return [last, usedLengthMm[last]!];
}

describe('ignored, with nothing changed, is', () => {
  const better = laid({ ...blobs, seed: 12 }, 6000);
  const changed = (change: (one: Placement) => Partial<Placement>): LayResult => ({
    ...better,
    placements: better.placements.map((one, at) => (at === 4 ? { ...one, ...change(one) } : one)),
  });

  test.each([
    ['one that is no better', laid(blobs, 1)],
    ['one that leaves a piece out', { ...better, placements: better.placements.slice(1) }],
    ['one with a piece too many of a shape', changed(() => ({ shape: 5 }))],
    ['one with a piece turned against its grain', changed(() => ({ turnDeg: 90 }))],
    ['one with a piece mirrored', changed(() => ({ mirrored: true }))],
    ['one with a piece on a fold that is not there', changed(() => ({ onFold: true }))],
    ['one on a length that is not there', changed(() => ({ length: 1 }))],
    ['one with a piece over the selvage', changed(({ y }) => ({ y: y + 900 }))],
    ['one with a piece before the start', changed(({ x }) => ({ x: x - 3000 }))],
    ['one with a piece nowhere', changed(() => ({ x: Number.NaN }))],
    ['a lay of another job', laid(job([shape('tile', rectangle(170, 100), { count: 21 })]), 50)],
  ])('%s', (_, result) => {
    const search = begun(blobs);
    expect(search.adopt(result)).toBe(false);
    search.advance({ ms: null, iterations: 600 });
    expect(search.best().placements).toEqual(laidInOne(600).placements);
  });

  test('one in which pieces overlap', () => {
    const [first] = better.placements;
    const overlapping = changed((one) => ({ x: first!.x, y: one.y }));
    const search = begun(blobs);
    search.adopt(overlapping);
    search.advance({ ms: null, iterations: 3000 });
    expect(checkLay(blobs, overlapping)).not.toEqual([]);
    expect(checkLay(blobs, search.best())).toEqual([]);
  });

  function laidInOne(iterations: number): LayResult {
    const search = begun(blobs);
    search.advance({ ms: null, iterations });
    return search.best();
  }
});

test('one hand with a budget of moves lays what the lay without a team is, to the last digit', async () => {
  const place = virtualWorkplace(1);
  const laidByTeam = new Promise<LayResult>((done, failed) => {
    const budget = { seconds: null, iterations: 900 };
    layTeams(place).lay({ job: blobs, budget, done, failed: ({ kind }) => failed(new Error(kind)) });
  });
  await place.run();
  const { seconds: _, ...laidAlone } = laid(blobs, 900);
  expect(await laidByTeam).toMatchObject(laidAlone);
});

test('three hands end when the time is up, with a valid lay no longer than any that was told', async () => {
  const place = virtualWorkplace(3);
  const told: LayResult[] = [];
  const laidByTeam = new Promise<LayResult>((done) => {
    layTeams(place).lay({
      job: blobs,
      budget: { seconds: 0.7, iterations: null },
      onBetter: (result) => told.push(result),
      done,
      failed: () => {},
    });
  });
  await place.run();
  const result = await laidByTeam;
  expect(checkLay(blobs, result)).toEqual([]);
  expect(told.length).toBeGreaterThan(1);
  expect(usedMm(result)).toBeLessThanOrEqual(Math.min(...told.map(usedMm)));
  expect(result).toMatchObject({ seed: 11, stoppedBy: 'time' });
  expect(place.clock()).toBeLessThan(2000);
});

test('a member that is told to leave while it lays answers with its best', async () => {
  const answers: MemberAnswer[] = [];
  let restCount = 0;
  let nowMs = 0;
  const over = new Promise<void>((resolve) => {
    const hear = layMember({
      clock: () => {
        nowMs += 5;
        return nowMs;
      },
      post: (answer) => {
        answers.push(answer);
        if (answer.kind === 'done' || answer.kind === 'failed') resolve();
      },
      rest: async () => {
        restCount++;
        if (restCount === 3) hear({ kind: 'leave', id: 6 });
        if (restCount === 5) hear({ kind: 'leave', id: 7 });
      },
    });
    hear({ kind: 'lay', id: 7, job: blobs, budget: { seconds: 60, iterations: null }, tells: true });
  });
  await over;
  expect(restCount).toBe(5);
  expect(answers.map(({ id }) => id)).toEqual(answers.map(() => 7));
  expect(answers[0]!.kind).toBe('better');
  expect(answers.at(-1)).toMatchObject({ kind: 'done', result: { stoppedBy: 'maker' } });
});
