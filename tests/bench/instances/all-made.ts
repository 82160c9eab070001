/** Every made instance with its seed; a given seed gives the same cuts everywhere. */
import { randomFrom } from '../../../shared-core/lay/engine/random.ts';
import { copiesCut } from './copies.ts';
import { jigsawCut } from './jigsaw.ts';
import { type CutStrip, type Dice, type MadeInstance, mixed } from './made.ts';
import { polyominoCut } from './polyominoes.ts';
import { rectangleCut } from './rectangles.ts';
import { guillotineCut, nearestCut } from './straight-cuts.ts';

const oneWay = [0];
const bothWays = [0, 180];
const fourWays = [0, 90, 180, 270];

/** Short names of turns, for the names of instances. */
const turnCounts: Readonly<Record<number, string>> = { 1: 'one way', 2: 'two ways', 4: 'four ways' };

type Recipe = readonly [kind: string, turnsDeg: readonly number[], cut: (next: Dice) => CutStrip];

const recipes: readonly Recipe[] = [
  ['polyominoes', oneWay, (next) => polyominoCut(12, 8, 12, 50, next)],
  ['polyominoes', fourWays, (next) => polyominoCut(12, 10, 16, 50, next)],
  ['polyominoes', bothWays, (next) => polyominoCut(15, 10, 20, 50, next)],
  ['polyominoes', fourWays, (next) => polyominoCut(18, 10, 24, 50, next)],
  ['polyominoes', bothWays, (next) => polyominoCut(20, 12, 32, 50, next)],
  ['polyominoes', oneWay, (next) => polyominoCut(24, 12, 40, 50, next)],
  ['guillotine', bothWays, (next) => guillotineCut(1000, 1300, 16, next)],
  ['guillotine', oneWay, (next) => guillotineCut(1000, 1700, 30, next)],
  ['nearest', fourWays, (next) => nearestCut(1000, 1200, 20, next)],
  ['nearest', bothWays, (next) => nearestCut(1000, 1800, 36, next)],
  ['jigsaw', bothWays, (next) => jigsawCut(4, 3, 300, 'zigzag', next)],
  ['jigsaw', oneWay, (next) => jigsawCut(5, 4, 250, 'knob', next)],
  ['jigsaw', fourWays, (next) => jigsawCut(6, 4, 250, 'wave', next)],
  ['copies', bothWays, (next) => copiesCut(polyominoCut(5, 4, 3, 40, next), 8, 6)],
  ['copies', bothWays, (next) => copiesCut(guillotineCut(150, 220, 4, next), 6, 6)],
  ['copies', fourWays, (next) => copiesCut(jigsawCut(2, 1, 100, 'wave', next), 6, 10)],
  ['rectangles', [0, 90], (next) => rectangleCut(1000, 1400, 20, false, next)],
  ['rectangles', oneWay, (next) => rectangleCut(1000, 1600, 30, true, next)],
  ['rectangles', [0, 90], (next) => rectangleCut(1000, 1900, 40, true, next)],
];

/** All instances of a family; another family is cut from other seeds. */
export function madeInstances(family = 1): MadeInstance[] {
  return recipes.map(([kind, turnsDeg, cut], index) => {
    const { next } = randomFrom(1000 * family + index);
    const strip = cut(next);
    const count = strip.cut.reduce((sum, copies) => sum + copies.length, 0);
    const corners = Math.max(...strip.cut.map(([ring]) => ring!.length / 2));
    const name = `${kind}, ${count}, up to ${corners} corners, ${turnCounts[turnsDeg.length]}`;
    return mixed(name, kind, strip, turnsDeg, next);
  });
}
