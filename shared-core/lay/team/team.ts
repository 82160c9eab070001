/**
 * Who works on which lay. A lay begins on one hand as soon as one is free; when no lay waits, free hands join those
 * under way, each with a seed of its own, and go back to the next lay that comes. The members of a lay tell each other
 * the best, and end together. Knows neither threads nor time: the hands, the clock and the waiting are passed in.
 */
import { say } from '../../wording/say.ts';
import type { Hand, Workplace } from './hands.ts';
import type { LayBudget, LayResult } from '../job.ts';
import type { MemberAnswer } from './member.ts';
import { isBetterLay } from '../plan-lay.ts';
import type { TeamOrder } from './team-order.ts';

export interface LayTeams {
  /** Lays a job; the function given back stops it, which takes the best lay so far. */
  readonly lay: (order: TeamOrder) => () => void;
  /** Ends all hands; lays that are still waited for fail as closed. */
  readonly close: () => Promise<void>;
}

/** Lays that belong together come within this; only then are free hands given to those under way, ms. */
const QUIET_MS = 60;
/** For less than this nobody joins, ms. */
const LEAST_JOIN_MS = 400;

interface Underway {
  readonly id: number;
  readonly order: TeamOrder;
  readonly isRetry: boolean;
  readonly endMs: number;
  /** In the order they joined; the first leads: when its time is up the lay ends. */
  readonly members: Set<Seat>;
  joinedCount: number;
  best: LayResult | null;
  bestBy: Seat | null;
  /** What members were told of last. */
  passedOn: LayResult | null;
  /** Moves of members that have gone. */
  goneMoves: number;
  /** A member died: nobody else is sent there. */
  isHurt: boolean;
  ending: Pick<LayResult, 'seconds' | 'stoppedBy'> | null;
}

interface Task {
  /** Null once nobody waits for the answer. */
  lay: Underway | null;
  /** As last told. */
  moves: number;
  hasSpoken: boolean;
  isSharing: boolean;
  isLeaving: boolean;
}

/** A hand and what it is at, null while it is idle. */
interface Seat {
  readonly hand: Hand;
  at: Task | null;
}

interface Waiting {
  readonly order: TeamOrder;
  readonly before: LayResult | null;
  readonly isRetry: boolean;
}

/** Teams for the lays of one window or one command. */
export function layTeams(place: Workplace): LayTeams {
  const seats = new Set<Seat>();
  const waiting: Waiting[] = [];
  const underway = new Set<Underway>();
  let lastId = 0;
  let turn = 0;
  let isClosed = false;

  function freeSeat(): Seat | null {
    for (const seat of seats) if (seat.at === null) return seat;
    if (seats.size >= place.handCount) return null;
    const hand = place.startHand({
      answered: (answer) => answered(seat, answer),
      died: (cause) => died(seat, cause),
    });
    const seat: Seat = { hand, at: null };
    seats.add(seat);
    return seat;
  }

  function serve(): void {
    if (isClosed) return;
    const mine = ++turn;
    while (waiting.length > 0) {
      const seat = freeSeat();
      if (seat === null) break;
      begin(seat, waiting.shift()!);
    }
    if (waiting.length > 0) askBack();
    const isFree = seats.size < place.handCount || [...seats].some(({ at }) => at === null);
    if (isFree && underway.size > 0) {
      place.later(QUIET_MS, () => {
        if (mine === turn && !isClosed) help();
      });
    }
  }

  function begin(seat: Seat, { order, before, isRetry }: Waiting): void {
    const asked = typeof order.budget === 'function' ? order.budget() : order.budget;
    const isTimed = asked.seconds !== null && asked.iterations === null;
    const lay: Underway = {
      id: ++lastId,
      order,
      isRetry,
      endMs: isTimed ? place.clock() + asked.seconds * 1000 : -Infinity,
      members: new Set(),
      joinedCount: 0,
      best: before,
      bestBy: null,
      passedOn: before,
      goneMoves: 0,
      isHurt: isRetry,
      ending: null,
    };
    underway.add(lay);
    join(seat, lay, asked);
  }

  function join(seat: Seat, lay: Underway, budget: LayBudget): void {
    const { job, onBetter } = lay.order;
    const seed = memberSeed(job.seed, lay.joinedCount++);
    seat.at = { lay, moves: 0, hasSpoken: false, isSharing: false, isLeaving: false };
    lay.members.add(seat);
    const tells = onBetter !== undefined;
    seat.hand.send({ kind: 'lay', id: lay.id, job: { ...job, seed }, budget, tells });
    if (lay.members.size < 2) return;
    if (lay.passedOn !== null) seat.hand.send({ kind: 'adopt', id: lay.id, result: lay.passedOn });
    for (const { hand, at } of lay.members) {
      if (at!.isSharing) continue;
      at!.isSharing = true;
      hand.send({ kind: 'share', id: lay.id });
    }
  }

  /** Free hands join the lay with the fewest members. */
  function help(): void {
    for (;;) {
      const nowMs = place.clock();
      const [lay] = [...underway]
        .filter(({ endMs, isHurt, ending }) => !isHurt && ending === null && endMs - nowMs >= LEAST_JOIN_MS)
        .sort((a, b) => a.members.size - b.members.size || b.endMs - a.endMs);
      const seat = lay === undefined ? null : freeSeat();
      if (lay === undefined || seat === null) return;
      join(seat, lay, { seconds: (lay.endMs - nowMs) / 1000, iterations: null });
    }
  }

  /** As many hands as lays wait for are called back from lays that have more than one. */
  function askBack(): void {
    let missing = waiting.length - [...seats].filter(({ at }) => at?.isLeaving).length;
    for (; missing > 0; missing--) {
      const [max] = [...underway]
        .map((lay) => ({ lay, staying: [...lay.members].filter(({ at }) => !at!.isLeaving) }))
        .sort((a, b) => b.staying.length - a.staying.length);
      if (max === undefined || max.staying.length < 2) return;
      leave(max.staying.at(-1)!, max.lay.id);
    }
  }

  function leave(seat: Seat, id: number): void {
    if (seat.at!.isLeaving) return;
    seat.at!.isLeaving = true;
    seat.hand.send({ kind: 'leave', id });
  }

  function answered(seat: Seat, answer: MemberAnswer): void {
    const { at } = seat;
    if (!seats.has(seat) || at === null) return;
    const { lay } = at;
    at.hasSpoken = true;
    if (lay !== null && answer.kind === 'shared') passOn(seat, lay, answer.result);
    if (lay !== null && (answer.kind === 'better' || answer.kind === 'done')) hear(seat, lay, answer);
    if (answer.kind === 'shared' || answer.kind === 'better') return;
    seat.at = null;
    if (lay !== null) {
      const isLead = [...lay.members][0] === seat;
      lay.members.delete(seat);
      lay.goneMoves += at.moves;
      if (answer.kind === 'done') {
        const { stoppedBy, seconds } = answer.result;
        const isUp = stoppedBy === 'floor' || stoppedBy === 'nothing left to try';
        if (isUp || (isLead && !at.isLeaving)) end(lay, { stoppedBy, seconds });
      }
      if (lay.members.size === 0) {
        if (answer.kind === 'failed' && lay.ending === null) {
          underway.delete(lay);
          lay.order.failed({ kind: 'refused', sentence: answer.sentence });
        } else conclude(lay, say('team.it-was-called-away'));
      }
    }
    serve();
  }

  /** Tells the other members of what one has found, if it is better than what they were told last. */
  function passOn(seat: Seat, lay: Underway, found: LayResult): void {
    seat.at!.moves = found.iterations;
    if (lay.passedOn !== null && !isBetterLay(found, lay.passedOn)) return;
    lay.passedOn = found;
    for (const { hand, at } of lay.members) {
      if (at !== seat.at && !at!.isLeaving) hand.send({ kind: 'adopt', id: lay.id, result: found });
    }
  }

  /** Keeps a checked lay if it is the best. A member's own news is always better than its last. */
  function hear(seat: Seat, lay: Underway, { kind, result }: MemberAnswer & { result: LayResult }): void {
    seat.at!.moves = result.iterations;
    const isBetter = lay.best === null || isBetterLay(result, lay.best);
    if (!isBetter && lay.bestBy !== seat) return;
    lay.best = { ...result, seed: lay.order.job.seed };
    lay.bestBy = seat;
    if ((kind === 'better' || isBetter) && lay.ending === null) lay.order.onBetter?.(lay.best);
  }

  /** Calls the other members off; one that has not told anything yet is not waited for. */
  function end(lay: Underway, ending: NonNullable<Underway['ending']>): void {
    lay.ending ??= ending;
    for (const seat of lay.members) {
      leave(seat, lay.id);
      if (seat.at!.hasSpoken) continue;
      seat.at!.lay = null;
      lay.members.delete(seat);
    }
  }

  /** The last member has gone: the lay is done, or begun once more where its members were lost before the end. */
  function conclude(lay: Underway, cause: string): void {
    underway.delete(lay);
    const { order, best, ending, goneMoves, isRetry } = lay;
    if (best !== null && ending !== null) order.done({ ...best, ...ending, iterations: goneMoves });
    else if (isRetry) order.failed({ kind: 'died twice', cause });
    else waiting.unshift({ order, before: best, isRetry: true });
  }

  function died(seat: Seat, cause: string): void {
    if (!seats.delete(seat)) return;
    const lay = seat.at?.lay;
    if (lay) {
      lay.isHurt = true;
      lay.goneMoves += seat.at!.moves;
      lay.members.delete(seat);
      if (lay.members.size === 0) conclude(lay, cause);
    }
    serve();
  }

  function stop(order: TeamOrder): void {
    const at = waiting.findIndex((one) => one.order === order);
    const [called] = at === -1 ? [] : waiting.splice(at, 1);
    const lay = [...underway].find((one) => one.order === order);
    if (called === undefined && lay === undefined) return;
    if (lay !== undefined) {
      underway.delete(lay);
      for (const seat of lay.members) {
        seats.delete(seat);
        seat.hand.end();
      }
    }
    const best = (lay ?? { best: called!.before }).best;
    if (best !== null) order.done({ ...best, stoppedBy: 'maker' });
    else order.failed({ kind: 'stopped', hadBegun: lay !== undefined || called!.isRetry });
    serve();
  }

  return {
    lay(order) {
      if (isClosed) order.failed({ kind: 'closed' });
      else {
        waiting.push({ order, before: null, isRetry: false });
        serve();
      }
      return () => stop(order);
    },
    async close() {
      isClosed = true;
      const orders = [...waiting.splice(0), ...underway].map(({ order }) => order);
      underway.clear();
      const ended = [...seats].map(({ hand }) => hand.end());
      seats.clear();
      for (const order of orders) order.failed({ kind: 'closed' });
      await Promise.all(ended);
    },
  };
}

/** The first member has the job's own seed. */
function memberSeed(seed: number, number: number): number {
  return number === 0 ? seed : (Math.trunc(seed) + Math.imul(number, 0x9e3779b1)) >>> 0;
}
