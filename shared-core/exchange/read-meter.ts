/**
 * What reading a pattern has taken so far, held against its limits. It counts things and not seconds, so that a file is
 * read or refused on every machine alike, however it was made.
 */
import { say } from '../wording/say.ts';
import type { Problem } from '../measure/problem.ts';
import type { ReadLimits } from './pattern/pattern.ts';

/** Ends the reading wherever it stands; readPattern turns it into the answer. */
export class BeyondLimit extends Error {
  readonly problem: Problem;

  constructor(where: string, what: string, fix = say('read-meter.save-fewer-pieces-or-sizes-in')) {
    super(what);
    this.problem = { where, what, fix };
  }
}

/** Each throws BeyondLimit where the limit is passed. where: the place in the file, for the sentence. */
export interface ReadMeter {
  things(count: number, where: string): void;
  points(count: number, where: string): void;
  /** Straight steps that curves are turned into. */
  chords(count: number, where: string): void;
  /** Comparisons of what grows faster than the file: points with points, ends with ends. */
  steps(count: number, where: string): void;
}

/** "goes beyond the limit: more than 1000 points". things: absent: points. */
export function beyondWords(max: number, things: string = say('read-meter.points')): string {
  return say('read-meter.goes-beyond-the-limit', { max, things });
}

export function openMeter(limits: ReadLimits): ReadMeter {
  const counter = (max: number, thing: string) => {
    let sum = 0;
    return (count: number, where: string) => {
      sum += count;
      if (!(sum <= max)) throw new BeyondLimit(where, beyondWords(max, thing));
    };
  };
  let stepCount = 0;
  return {
    things: counter(limits.entityCount, say('read-meter.drawn-things')),
    points: counter(limits.pointCount, say('read-meter.points')),
    chords: counter(limits.chordCount, say('read-meter.steps-along-its-curves')),
    steps(count, where) {
      stepCount += count;
      if (!(stepCount <= limits.stepCount))
        throw new BeyondLimit(
          where,
          say('read-meter.is-drawn-with-more-points'),
          say('read-meter.save-its-outlines-as-closed-lines'),
        );
    },
  };
}
