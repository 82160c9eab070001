/** What the hands do on the cutting table: choosing, moving, turning, exchanging, pinning, and taking steps back. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useCallback, useMemo, useRef, useState } from 'react';
import {
  exchanged,
  finishedLay,
  finishJob,
  type HandLay,
  handLayOf,
  handResult,
  moved,
  pinnedOrNot,
  slid,
  turned,
} from '../../../../shared-core/lay/by-hand.ts';
import {
  allStandings,
  isClear,
  outlinesOf,
  type Standing,
  standingOf,
} from '../../../../shared-core/lay/standing.ts';
import type { SlotLay } from '../../../../shared-core/lay/plan-lay.ts';
import { layInWorker } from '../../../client/workers/lay-pool.ts';
import { logSaysWhere, noteFailure } from '../../../client/note-failure.ts';
import {
  type HandHistory,
  historyOf,
  keepHistory,
  keptHistory,
  redone,
  stepped,
  undone,
} from './hand-history.ts';

/** So long the search lays around what is pinned. */
export const finishSeconds = 5;

export type HandTable = ReturnType<typeof useHandTable>;

/** key: names the job, so that what was laid for another plan is not taken up. */
export function useHandTable(slotLay: SlotLay, key: string) {
  const { job, result } = slotLay;
  const outlines = useMemo(() => outlinesOf(job), [job]);
  const [history, setHistory] = useState<HandHistory>(() => keptHistory(key) ?? historyOf(handLayOf(result)));
  const [selected, setSelected] = useState<number | null>(null);
  /** The first of two that shall trade places. */
  const [partner, setPartner] = useState<number | null>(null);
  /** A piece in the hand: its lay is not a step yet. */
  const [held, setHeld] = useState<HandLay | null>(null);
  const [finishing, setFinishing] = useState<AbortController | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const seed = useRef(job.seed);

  const update = useCallback(
    (change: (history: HandHistory) => HandHistory) =>
      setHistory((now) => {
        const next = change(now);
        keepHistory(key, next);
        return next;
      }),
    [key],
  );
  const step = useCallback(
    (change: (lay: HandLay) => HandLay) => {
      setProblem(null);
      update((now) => stepped(now, change(now.now)));
    },
    [update],
  );

  const lay = held ?? history.now;
  const settledStandings = useMemo(
    () => allStandings(job, outlines, history.now.placements),
    [job, outlines, history.now],
  );
  const own: Standing | null = useMemo(
    () => (selected === null ? null : standingOf(job, outlines, lay.placements, selected)),
    [job, outlines, lay, selected],
  );
  const clashing = useMemo(() => {
    const found = new Set<number>();
    settledStandings.forEach((standing, index) => {
      // What met only the piece in the hand is judged by where that piece is now.
      const isFree = held !== null && standing.tooNear.every((at) => at === selected);
      if (!isClear(standing) && !(isFree && !standing.isOutside && !standing.isOnFlaw)) found.add(index);
    });
    if (own !== null && selected !== null) {
      found.delete(selected);
      if (!isClear(own)) for (const at of [selected, ...own.tooNear]) found.add(at);
    }
    return found;
  }, [settledStandings, own, selected, held]);
  const laid = useMemo(
    () => handResult(job, outlines, lay, result.floorMm),
    [job, outlines, lay, result.floorMm],
  );

  const choose = useCallback(
    (index: number | null) => {
      if (index !== null && partner !== null && index !== partner) {
        step((now) => exchanged(job, outlines, now, partner, index));
        setPartner(null);
      }
      setSelected(index);
    },
    [job, outlines, partner, step],
  );
  const lift = useCallback(
    (index: number, to: { length: number; x: number; y: number }) =>
      setHeld(moved(job, outlines, history.now, index, to)),
    [job, outlines, history.now],
  );
  const layDown = useCallback(() => {
    if (held) step(() => held);
    setHeld(null);
  }, [held, step]);

  const finish = useCallback(async () => {
    const asked = finishJob(job, history.now, seed.current + 1);
    seed.current += 1;
    const pins = [...history.now.pinned];
    const isInTheWay = pins.some((index) => {
      const { isOutside, isOnFlaw, tooNear } = settledStandings[index]!;
      return isOutside || isOnFlaw || tooNear.some((at) => history.now.pinned.has(at));
    });
    if (isInTheWay) {
      setProblem(say('use-hand-table.pinned-pieces-lie-on-each-other'));
      return;
    }
    const control = new AbortController();
    setFinishing(control);
    setProblem(null);
    try {
      const done = await layInWorker({
        job: asked,
        seconds: finishSeconds,
        isThorough: true,
        signal: control.signal,
      });
      update((now) => stepped(now, finishedLay(asked, done)));
      setSelected(null);
    } catch (error) {
      if (control.signal.aborted) return;
      noteFailure(say('use-hand-table.lay-by-hand'), error);
      const reason = error instanceof Error ? error.message : String(error);
      setProblem(say('use-hand-table.the-rest-could-not-be-laid', { reason, logSaysWhere }));
    } finally {
      setFinishing(null);
    }
  }, [job, history.now, settledStandings, update]);

  return {
    outlines,
    lay,
    laid,
    selected,
    own,
    partner,
    clashing,
    problem,
    isFinishing: finishing !== null,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
    choose,
    lift,
    layDown,
    turn: (index: number) => step((now) => turned(job, outlines, now, index)),
    pin: (index: number) => step((now) => pinnedOrNot(now, index)),
    slide: (index: number, direction: { x: number; y: number }) =>
      step((now) => slid(job, outlines, now, index, direction)),
    moveBy: (index: number, x: number, y: number) =>
      step((now) => {
        const from = now.placements[index]!;
        return moved(job, outlines, now, index, { length: from.length, x: from.x + x, y: from.y + y });
      }),
    moveTo: (index: number, to: { length: number; x: number; y: number }) =>
      step((now) => moved(job, outlines, now, index, to)),
    startExchange: (index: number | null) => setPartner(index),
    undo: () => update(undone),
    redo: () => update(redone),
    startOver: () => step(() => handLayOf(result)),
    finish,
    stopFinishing: () => finishing?.abort(),
  };
}
