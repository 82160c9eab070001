/** What reading a pattern file gives, whichever its format: pieces in the plan's frame, facts, and what was not understood. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { Notch } from '../../plan/model/coat-plan.ts';
import type { Outline } from '../../plan/model/outline.ts';

/** No file may take more than this; beyond, it is refused with a sentence and nothing is read. */
export interface ReadLimits {
  readonly byteCount: number;
  /** Drawn things: lines, points, texts, shapes, those of repeated blocks counted each time. */
  readonly entityCount: number;
  readonly pointCount: number;
  /** Straight steps that curves become where areas and crossings are looked at. */
  readonly chordCount: number;
  /** Comparisons of points, ends and outlines with each other. */
  readonly stepCount: number;
  /** Blocks within blocks, groups within groups. */
  readonly depthCount: number;
  readonly pieceCount: number;
}

export const defaultLimits: ReadLimits = {
  byteCount: 20_000_000,
  entityCount: 60_000,
  pointCount: 300_000,
  chordCount: 1_000_000,
  stepCount: 100_000_000,
  depthCount: 32,
  pieceCount: 200,
};

/** Units that a pattern is drawn in. */
export const mmPerPatternUnit = { mm: 1, cm: 10, in: 25.4 } as const;
export type PatternUnit = keyof typeof mmPerPatternUnit;

/** What the maker says where the file does not. */
export interface ReadChoices {
  /** mm for one unit of the file; null: as the file says, or mm where it says nothing. */
  readonly mmPerUnit: number | null;
  /** What the outline is, where the file draws one line alone. */
  readonly outlineIs: 'sewing line' | 'cutting line';
  /** All round, where the file draws one line alone; none on a fold. 0 or more. */
  readonly allowanceMm: number;
}

export const defaultChoices: ReadChoices = { mmPerUnit: null, outlineIs: 'sewing line', allowanceMm: 0 };

/** Nothing of a pattern lies further from the origin of its drawing, mm: there, a unit or a number is wrong. */
export const furthestMm = 1e6;

export interface FoundPiece {
  /** Unique in the file. */
  readonly key: string;
  /** Where the file draws it: "line 214". */
  readonly place: string;
  readonly name: string;
  readonly size: string;
  readonly material: string;
  readonly category: string;
  readonly annotation: string;
  readonly cutCount: number;
  readonly isMirrored: boolean;
  /** At the sewing line, grain along x, its lower left corner near the origin, mm. */
  readonly outline: Outline;
  readonly foldEdge: string | null;
  readonly notches: readonly Notch[];
  /** True: the file draws both lines, and the allowances are theirs. False: they are the maker's choice. */
  readonly hasSewLine: boolean;
  readonly hasGrain: boolean;
  /** Of its cutting line, the half of one on the fold: along the grain and across it. */
  readonly extentMm: { readonly alongMm: number; readonly acrossMm: number };
  /** Along the grain, of the line that the file draws where that is not the cutting line. */
  readonly drawnAlongMm: number;
}

export interface FoundPattern {
  readonly format: 'DXF' | 'SVG';
  readonly styleName: string;
  readonly sampleSize: string;
  /** What the file says of its unit, in mm; null: nothing. */
  readonly statedMmPerUnit: number | null;
  /** What was taken. */
  readonly mmPerUnit: number;
  readonly pieces: readonly FoundPiece[];
  /** What the file holds that a plan has no place for, each a sentence. */
  readonly notes: readonly string[];
}

/** `found` is null where nothing could be read; problems also name single pieces that were left out. */
export interface ReadPattern {
  readonly found: FoundPattern | null;
  readonly problems: readonly Problem[];
}

export function nothingFound(...problems: readonly Problem[]): ReadPattern {
  return { found: null, problems };
}

/** More than a maker reads of one file, and the most letters that one clause of it has. */
const maxTold = { problems: 60, notes: 60, letters: 400 };

/** As it is, with no more problems and notes than can be read, and none of them endless. */
export function curtailed({ found, problems }: ReadPattern): ReadPattern {
  const short = (text: string) =>
    text.length > maxTold.letters ? `${text.slice(0, maxTold.letters - 1)}…` : text;
  const told = problems
    .slice(0, maxTold.problems)
    .map(({ where, what, fix }) => ({ where: short(where), what: short(what), fix: short(fix) }));
  const rest = problems.length - told.length;
  if (rest > 0)
    told.push({
      where: say('common.the-file'),
      what: say('pattern.has-more-problems-like-these', { rest }),
      fix: say('pattern.mend-those-above-first'),
    });
  if (!found) return { found, problems: told };
  const notes = [...new Set(found.notes)];
  const restNotes = notes.length - maxTold.notes;
  const shown = notes.slice(0, maxTold.notes).map(short);
  return {
    found: {
      ...found,
      notes: restNotes > 0 ? [...shown, say('pattern.and-more-like-these', { restNotes })] : shown,
    },
    problems: told,
  };
}
