/**
 * Simple shapes by typed measures, at the seam line: strips, pocket bags, gussets, patches. Lengths run along the
 * grain, widths across it, until the grain is turned.
 */
import { givenName } from '../../../wording/given-names.ts';
import { codeWords } from '../../../wording/code-words.ts';
import { say } from '../../../wording/say.ts';
import type { Point } from '../../../geometry/ring.ts';
import { ok, type Result, type Problem, err } from '../../../measure/problem.ts';
import { defaultAllowanceMm } from './allowance.ts';
import type { CoatPlan, Piece, TurnRule } from '../../model/coat-plan.ts';
import { type Edited, inMm, type LengthText, notInPlan } from '../edited.ts';
import { freePieceId, inEverySize, pieceNameProblem } from '../every-size.ts';
import { foldPiece } from './fold.ts';
import { grainTurned } from './grain.ts';
import type { Outline, Segment } from '../../model/outline.ts';
import { pieceProblems } from '../../validation/outline-problems.ts';

export type Shape =
  | { readonly kind: 'rectangle' | 'strip'; readonly lengthMm: number; readonly widthMm: number }
  /** Both sides slant alike from one width to another over the length; a width of 0 at the top is a point. */
  | { readonly kind: 'taper'; readonly lengthMm: number; readonly fromMm: number; readonly toMm: number }
  | { readonly kind: 'circle'; readonly diameterMm: number }
  /** Its point stands over the middle of the base. */
  | { readonly kind: 'triangle'; readonly baseMm: number; readonly heightMm: number }
  /** The top begins setInMm in from the right end of the foot: 0 makes a square corner there. */
  | {
      readonly kind: 'trapezoid';
      readonly lengthMm: number;
      readonly footMm: number;
      readonly topMm: number;
      readonly setInMm: number;
    };

export type ShapeKind = Shape['kind'];

export interface ShapePiece {
  readonly name: string;
  readonly shape: Shape;
  /** How many one coat needs, the mirrored ones counted in. */
  readonly count: number;
  readonly isMirrored: boolean;
  /** Cut on the fold; the typed measures are still those of the whole. */
  readonly isOnFold: boolean;
  /** 0: lengths along the grain; 45: on the bias; 90: across. */
  readonly grainTurnDeg: number;
  readonly turns: TurnRule;
  /** One ply is cut from each. */
  readonly slotIds: readonly string[];
  /** On all edges; absent: the plan's usual one. */
  readonly allowanceMm?: number;
}

/** Where the control points of a quarter circle lie, in radii. */
const quarterRatio = (4 / 3) * (Math.SQRT2 - 1);

/** A circle of four cubics lies up to this share of its radius outside the true circle, and nowhere inside it. */
export const circleErrorRatio = 0.000273;

/** A piece of a simple shape more, in every size, sewn in no seam yet. */
export function addShape(plan: CoatPlan, added: ShapePiece, text = inMm): Result<Edited> {
  const name = added.name.trim();
  const { shape } = added;
  const problems: Problem[] = [
    pieceNameProblem(plan, name, shape.kind),
    ...measureProblems(shape, name === '' ? say('shapes.the', { kind: codeWords(shape.kind) }) : name),
    ...added.slotIds.map((id) => (plan.slots.some((slot) => slot.id === id) ? null : notInPlan('slot', id))),
  ].filter((problem) => problem !== null);
  if (problems.length > 0) return err(...problems);
  const allowanceMm = added.allowanceMm ?? defaultAllowanceMm(plan);
  const piece: Piece = {
    id: freePieceId(plan, name),
    name,
    outline: shapeOutline(shape, allowanceMm),
    cutCount: added.count,
    isMirrored: added.isMirrored,
    foldEdge: null,
    turns: added.turns,
    notches: [],
    cutFrom: [...new Set(added.slotIds)].map((slotId) => ({ slotId, plyCount: 1 })),
    quilted: null,
  };
  const wrong = pieceProblems(piece);
  if (wrong.length > 0) return err(...wrong);
  const folded = added.isOnFold ? onFold(plan, piece) : ok(piece);
  if (!folded.ok) return folded;
  const turned =
    added.grainTurnDeg % 360 === 0 ? folded.value : grainTurned(folded.value, added.grainTurnDeg);
  const after = inEverySize(plan, (pieces) => ok([...pieces, turned]));
  if (!after.ok) return after;
  return ok({ plan: after.value, said: said(added, name, allowanceMm, text) });
}

function onFold(plan: CoatPlan, piece: Piece): Result<Piece> {
  const { sizes: _, ...own } = plan;
  const folded = foldPiece({ ...own, pieces: [...plan.pieces, piece] }, piece.id);
  return folded.ok ? ok(folded.value.plan.pieces.at(-1)!) : folded;
}

function measureProblems(shape: Shape, name: string): Problem[] {
  return measuresOf(shape).flatMap(({ word, mm, mayBeZero }) =>
    Number.isFinite(mm) && (mm > 0 || (mayBeZero && mm === 0))
      ? []
      : [
          {
            where: say('shapes.of', { word, name }),
            what: say('shapes.is-mm', { mm }),
            fix: mayBeZero ? say('shapes.type-a-length-or-0') : say('shapes.type-a-length-above-0'),
          },
        ],
  );
}

interface Measure {
  readonly word: string;
  readonly mm: number;
  readonly mayBeZero: boolean;
}

function measuresOf(shape: Shape): Measure[] {
  const measure = (word: string, mm: number, mayBeZero = false): Measure => ({ word, mm, mayBeZero });
  switch (shape.kind) {
    case 'rectangle':
    case 'strip':
      return [measure(say('common.length'), shape.lengthMm), measure(say('common.width'), shape.widthMm)];
    case 'taper':
      return [
        measure(say('common.length'), shape.lengthMm),
        measure(say('shapes.width-at-the-foot'), shape.fromMm),
        measure(say('shapes.width-at-the-top'), shape.toMm, true),
      ];
    case 'circle':
      return [measure(say('shapes.diameter'), shape.diameterMm)];
    case 'triangle':
      return [measure(say('shapes.base'), shape.baseMm), measure(say('common.height'), shape.heightMm)];
    case 'trapezoid':
      return [
        measure(say('common.length'), shape.lengthMm),
        measure(say('shapes.width-at-the-foot'), shape.footMm),
        measure(say('shapes.width-at-the-top'), shape.topMm),
        measure(say('shapes.set-in-of-the-top'), shape.setInMm, true),
      ];
    default:
      return shape satisfies never;
  }
}

/** The shape at the seam line, foot at x = 0, counter-clockwise. Its measures must be sound. */
export function shapeOutline(shape: Shape, allowanceMm: number): Outline {
  switch (shape.kind) {
    case 'rectangle':
    case 'strip': {
      const { kind, lengthMm, widthMm } = shape;
      const long = ['long edge', 'end', 'other long edge', 'other end'] as const;
      const short = [long[1], long[0], long[3], long[2]] as const;
      const strip = lengthMm >= widthMm ? long : short;
      return polygon(
        kind === 'strip' ? strip : ['side', 'top', 'other side', 'foot'],
        [at(0, 0), at(lengthMm, 0), at(lengthMm, widthMm), at(0, widthMm)],
        allowanceMm,
      );
    }
    case 'taper': {
      const { lengthMm, fromMm, toMm } = shape;
      if (toMm === 0) return triangle(fromMm, lengthMm, 'foot', allowanceMm);
      const setInMm = (fromMm - toMm) / 2;
      return slanted(lengthMm, fromMm, toMm, setInMm, allowanceMm);
    }
    case 'trapezoid':
      return slanted(shape.lengthMm, shape.footMm, shape.topMm, shape.setInMm, allowanceMm);
    case 'triangle':
      return triangle(shape.baseMm, shape.heightMm, 'base', allowanceMm);
    case 'circle':
      return circle(shape.diameterMm / 2, allowanceMm);
    default:
      return shape satisfies never;
  }
}

function at(x: number, y: number): Point {
  return { x, y };
}

function triangle(baseMm: number, heightMm: number, baseName: string, allowanceMm: number): Outline {
  return polygon(
    ['side', 'other side', baseName],
    [at(0, 0), at(heightMm, baseMm / 2), at(0, baseMm)],
    allowanceMm,
  );
}

function slanted(
  lengthMm: number,
  footMm: number,
  topMm: number,
  setInMm: number,
  allowanceMm: number,
): Outline {
  return polygon(
    ['side', 'top', 'other side', 'foot'],
    [at(0, 0), at(lengthMm, setInMm), at(lengthMm, setInMm + topMm), at(0, footMm)],
    allowanceMm,
  );
}

/** names: in English, of the edge that leaves each corner. */
function polygon(names: readonly string[], corners: readonly Point[], allowanceMm: number): Outline {
  return {
    start: corners[0]!,
    edges: names.map((name, index) => ({
      name: givenName('edge', name),
      segments: [{ kind: 'line', to: corners[(index + 1) % corners.length]! }],
      allowanceMm,
      seam: null,
    })),
  };
}

/** One edge of four cubics, from the foot round. */
function circle(r: number, allowanceMm: number): Outline {
  const k = r * quarterRatio;
  const quarter = (control1: Point, control2: Point, to: Point): Segment => ({
    kind: 'cubic',
    control1,
    control2,
    to,
  });
  return {
    start: at(0, r),
    edges: [
      {
        name: givenName('edge', 'rim'),
        segments: [
          quarter(at(0, r - k), at(r - k, 0), at(r, 0)),
          quarter(at(r + k, 0), at(2 * r, r - k), at(2 * r, r)),
          quarter(at(2 * r, r + k), at(r + k, 2 * r), at(r, 2 * r)),
          quarter(at(r - k, 2 * r), at(0, r + k), at(0, r)),
        ],
        allowanceMm,
        seam: null,
      },
    ],
  };
}

function said(added: ShapePiece, name: string, allowanceMm: number, text: LengthText): string {
  const { shape, count } = added;
  const times = count === 1 ? '' : `${say('shapes.of-2', { count })} `;
  const fold = added.isOnFold ? say('shapes.cut-on-the-fold') : '';
  const grain =
    added.grainTurnDeg % 360 === 0
      ? ''
      : ` ${say('shapes.its-grain-is-turned-by', { grainTurnDeg: added.grainTurnDeg })}`;
  return say('shapes.added-and-of-allowance-all-round', {
    times,
    name,
    measureWords: measureWords(shape, text),
    fold,
    text: text(allowanceMm),
    grain,
  });
}

function measureWords(shape: Shape, text: LengthText): string {
  switch (shape.kind) {
    case 'rectangle':
    case 'strip':
      return say('shapes.by', { text: text(shape.lengthMm), text2: text(shape.widthMm) });
    case 'taper':
      return say('shapes.from-to-over', {
        text: text(shape.fromMm),
        text2: text(shape.toMm),
        text3: text(shape.lengthMm),
      });
    case 'circle':
      return say('shapes.across-round-within-of-its-radius', {
        text: text(shape.diameterMm),
        circleErrorRatio: Number((circleErrorRatio * 100).toFixed(2)),
      });
    case 'triangle':
      return say('shapes.at-the-base-and-high', { text: text(shape.baseMm), text2: text(shape.heightMm) });
    case 'trapezoid':
      return say('shapes.at-the-foot-at-the-top', {
        text: text(shape.footMm),
        text2: text(shape.topMm),
        text3: text(shape.lengthMm),
      });
    default:
      return shape satisfies never;
  }
}
