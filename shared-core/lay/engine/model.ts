/**
 * The job as the engine works on it. Every copy to be cut is an item; every way an item may lie is a
 * form (mirrored, turned, half on the fold), centred on its own box so that a position is the centre
 * of the box. Lengths of cloth become bins side by side on one x axis, so that choosing between
 * remnants is choosing an x. Flaws are items that never move.
 */
import {
  ringAreaMm2,
  ringBox,
  ringCounterClockwise,
  ringMoved,
  ringsAlike,
  ringTurned,
  ringWithoutDoubles,
} from '../../geometry/ring.ts';
import type { Ring } from '../../geometry/ring.ts';
import type { LayJob, LayRect, LayShape, Placement } from '../job.ts';
import { drawnIn, gridStep } from './grid.ts';

/** One way that a shape may lie on the cloth. */
export interface Form {
  readonly shape: number;
  readonly turnDeg: number;
  readonly mirrored: boolean;
  readonly onFold: boolean;
  /** Centred on its box. */
  readonly ring: Ring;
  readonly halfX: number;
  readonly halfY: number;
  /** From the centre of the box to the shape's own origin. */
  readonly originX: number;
  readonly originY: number;
  /** From the centre of the box to the match point, or to the origin where there is none. */
  readonly matchX: number;
  readonly matchY: number;
}

/** Copies that are interchangeable: same shape, same choice of forms. */
export interface Item {
  readonly shape: number;
  readonly mirrored: boolean;
  readonly forms: readonly number[];
  readonly areaMm2: number;
  /** Must its centre stand on a lattice? Phase of the match point, and the step (0: free). */
  readonly stepX: number;
  readonly stepY: number;
  readonly phaseX: number;
  readonly phaseY: number;
  readonly onFold: boolean;
}

export interface Bin {
  /** Index in job.lengths, or -1 for the overflow that holds what no length had room for. */
  readonly length: number;
  readonly startX: number;
  readonly widthMm: number;
  /** Infinity when endless. */
  readonly lengthMm: number;
  readonly flaws: readonly LayRect[];
}

/** A copy that lies where it shall stay. */
export interface HeldItem {
  readonly form: number;
  readonly bin: number;
  /** Centre of the form's box, on the axis of all bins. */
  readonly x: number;
  readonly y: number;
  readonly areaMm2: number;
}

export interface Model {
  readonly job: LayJob;
  readonly forms: readonly Form[];
  /** What is to be laid; copies that are held are not among them. */
  readonly items: readonly Item[];
  readonly held: readonly HeldItem[];
  readonly bins: readonly Bin[];
  readonly clearanceMm: number;
  /** Area of all items and of what is held, mm2. */
  readonly areaMm2: number;
  readonly floorMm: number;
  /** Widest usable width of any bin. */
  readonly widthMm: number;
  /** Distances below this are nothing: a twenty-millionth of the width. */
  readonly grainMm: number;
}

/** A complete answer in engine terms: for each item its form, centre x (one axis for all bins) and y. */
export interface Lay {
  readonly form: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly bin: Int32Array;
}

const GAP_MM = 10;
/** A twenty-millionth of the width. */
const GRAIN = 5e-8;
/** A grid is of use when it has at most so many steps across the cloth. */
const MOST_GRID_STEPS = 64;
/** By so many grains outlines on a grid are drawn in: more than tables ask beyond the clearance, on both sides. */
const DRAWN_IN_GRAINS = 3;

function formOf(
  ring: Ring,
  shape: LayShape,
  index: number,
  turnDeg: number,
  mirrored: boolean,
  onFold: boolean,
): Form {
  const turned = ringTurned(ring, turnDeg, mirrored);
  const box = ringBox(turned);
  const centreX = (box.minX + box.maxX) / 2;
  const centreY = (box.minY + box.maxY) / 2;
  let matchX = -centreX;
  let matchY = -centreY;
  if (shape.match !== undefined) {
    const match = ringTurned(Float64Array.of(shape.match.x, shape.match.y), turnDeg, mirrored);
    matchX = match[0]! - centreX;
    matchY = match[1]! - centreY;
  }
  return {
    shape: index,
    turnDeg,
    mirrored,
    onFold,
    ring: ringMoved(turned, -centreX, -centreY),
    halfX: (box.maxX - box.minX) / 2,
    halfY: (box.maxY - box.minY) / 2,
    originX: -centreX,
    originY: -centreY,
    matchX,
    matchY,
  };
}

/** The outline that is laid: of the half where the shape lies on the fold, counter-clockwise, without doubled corners. */
export function laidRing(job: LayJob, shape: LayShape): Ring {
  const ring = job.spread === 'folded' && shape.foldRing !== undefined ? shape.foldRing : shape.ring;
  // A tenth of what the check can tell apart.
  const hairMm = 1e-6 * Math.max(...job.lengths.map((length) => length.widthMm));
  return ringCounterClockwise(ringWithoutDoubles(ring, hairMm));
}

/** Usable width in the frame of the lay: half of it when the cloth is folded. */
export function usableWidthMm(job: LayJob, widthMm: number): number {
  return job.spread === 'folded' ? widthMm / 2 : widthMm;
}

/**
 * Flaws in the frame of the lay. On folded cloth a flaw in either ply spoils both: the open frame
 * (0 to widthMm) is folded about its middle.
 */
export function flawsAsLaid(job: LayJob, widthMm: number, flaws: readonly LayRect[]): LayRect[] {
  if (job.spread === 'open') return [...flaws];
  const middle = widthMm / 2;
  return flaws.map((flaw) => {
    const near = flaw.y - middle;
    const far = flaw.y + flaw.widthY - middle;
    const low = near <= 0 && far >= 0 ? 0 : Math.min(Math.abs(near), Math.abs(far));
    return { x: flaw.x, y: low, widthX: flaw.widthX, widthY: Math.max(Math.abs(near), Math.abs(far)) - low };
  });
}

/** Is the ring its own mirror image in some allowed turn, to a millionth of its span? Then one fold of cloth cuts two alike. */
export function selfMirrored(ring: Ring, turnsDeg: readonly number[]): boolean {
  const home = fromBox(ring);
  const box = ringBox(home);
  const near = 1e-6 * Math.max(box.maxX, box.maxY);
  return turnsDeg.some((turnDeg) => ringsAlike(home, fromBox(ringTurned(ring, turnDeg, true)), near));
}

function fromBox(ring: Ring): Ring {
  const box = ringBox(ring);
  return ringMoved(ring, -box.minX, -box.minY);
}

/** Text that is the same for two rings that cover the same cloth when their boxes are laid on each other. */
function formKey(ring: Ring): string {
  const box = ringBox(ring);
  const scale = 1e6 / Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const points: string[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    points.push(
      `${Math.round((ring[i]! - box.minX) * scale)},${Math.round((ring[i + 1]! - box.minY) * scale)}`,
    );
  }
  let first = 0;
  for (let i = 1; i < points.length; i++) if (points[i]! < points[first]!) first = i;
  return [...points.slice(first), ...points.slice(0, first)].join(' ');
}

export interface Batch {
  readonly mirrored: boolean;
  readonly count: number;
}

/** How many placements a shape needs: on folded cloth one placement cuts the shape and its mirror image. */
export function placementBatches(job: LayJob, shape: LayShape): readonly Batch[] {
  if (job.spread === 'open') {
    return [
      { mirrored: false, count: shape.count },
      { mirrored: true, count: shape.mirroredCount },
    ];
  }
  if (shape.foldRing !== undefined) return [{ mirrored: false, count: shape.count + shape.mirroredCount }];
  const alike = selfMirrored(ringCounterClockwise(shape.ring), shape.turnsDeg);
  const count = alike
    ? Math.ceil((shape.count + shape.mirroredCount) / 2)
    : Math.max(shape.count, shape.mirroredCount);
  return [{ mirrored: false, count }];
}

/** From 0 to under 360 degrees; a turn that is there already stays as it is, to the last digit. */
function withinOneTurn(turnDeg: number): number {
  if (turnDeg >= 0 && turnDeg < 360) return turnDeg;
  return Math.round((((turnDeg % 360) + 360) % 360) * 1e9) / 1e9;
}

/** Can the item stand in cloth of this width, in some form and on its lattice? */
function standsIn(item: Item, forms: readonly Form[], widthMm: number): boolean {
  return item.forms.some((index) => {
    const form = forms[index]!;
    const lowest = latticeUp(form.halfY - 1e-6, item.stepY, item.phaseY, form.matchY, 0);
    return lowest + form.halfY <= widthMm + 2e-6 && (!item.onFold || lowest <= form.halfY + 2e-6);
  });
}

/** Builds the model. The job has been found free of problems before. */
export function modelOf(job: LayJob): Model {
  const forms: Form[] = [];
  const items: Item[] = [];
  let areaMm2 = 0;
  let longestMm = 0;
  job.shapes.forEach((shape, index) => {
    const folded = job.spread === 'folded';
    const onFold = folded && shape.foldRing !== undefined;
    const ring = laidRing(job, shape);
    const turnsDeg = [...new Set(shape.turnsDeg.map(withinOneTurn))];
    const repeat = shape.match === undefined ? null : job.repeat;
    for (const batch of placementBatches(job, shape)) {
      if (batch.count === 0) continue;
      const choices: number[] = [];
      const seen = new Set<string>();
      const offer = (turnDeg: number, mirrored: boolean): void => {
        const form = formOf(ring, shape, index, turnDeg, mirrored, onFold);
        const key = `${formKey(form.ring)} ${repeat === null ? '' : `${form.matchX} ${form.matchY}`}`;
        if (seen.has(key)) return;
        seen.add(key);
        choices.push(forms.length);
        forms.push(form);
      };
      for (const turnDeg of turnsDeg) {
        if (onFold) {
          // The half must stay above the fold, so a half turn of the whole piece mirrors the half.
          if (turnDeg === 0) offer(0, false);
          else if (turnDeg === 180) offer(180, true);
        } else if (folded) {
          offer(turnDeg, false);
          offer(turnDeg, true);
        } else {
          offer(turnDeg, batch.mirrored);
        }
      }
      const area = ringAreaMm2(ring);
      const isFolded = job.spread === 'folded';
      const heldCount = heldOf(job).filter(
        (one) => one.shape === index && (isFolded || one.mirrored === batch.mirrored),
      ).length;
      areaMm2 += Math.min(heldCount, batch.count) * area;
      for (let copy = heldCount; copy < batch.count; copy++) {
        items.push({
          shape: index,
          mirrored: batch.mirrored,
          forms: choices,
          areaMm2: area,
          stepX: repeat === null ? 0 : repeat.alongMm,
          stepY: repeat === null ? 0 : repeat.acrossMm,
          phaseX: shape.match?.phaseX ?? 0,
          phaseY: shape.match?.phaseY ?? 0,
          onFold,
        });
        areaMm2 += area;
      }
      longestMm = Math.max(longestMm, Math.min(...choices.map((form) => forms[form]!.halfX * 2)));
    }
  });
  const bins: Bin[] = [];
  let startX = 0;
  job.lengths.forEach((length, index) => {
    bins.push({
      length: index,
      startX,
      widthMm: usableWidthMm(job, length.widthMm),
      lengthMm: length.lengthMm ?? Infinity,
      flaws: flawsAsLaid(job, length.widthMm, length.flaws),
    });
    startX += (length.lengthMm ?? 0) + GAP_MM + job.clearanceMm;
  });
  const widthMm = Math.max(...bins.map((bin) => bin.widthMm));
  const endless = bins.find((bin) => bin.lengthMm === Infinity);
  if (endless !== undefined && !items.every((item) => standsIn(item, forms, endless.widthMm))) {
    // What is too wide for it may find no room either: the endless length ends where all would lie one behind the other.
    const flawsMm = Math.max(0, ...endless.flaws.map((flaw) => flaw.x + flaw.widthX));
    const lengthMm = items.reduce(
      (sum, item) =>
        sum + Math.max(...item.forms.map((form) => 2 * forms[form]!.halfX)) + item.stepX + GAP_MM,
      flawsMm + items.length * job.clearanceMm,
    );
    bins[bins.length - 1] = { ...endless, lengthMm };
    startX += lengthMm;
  }
  if (bins.every((bin) => bin.lengthMm !== Infinity)) {
    bins.push({ length: -1, startX, widthMm, lengthMm: Infinity, flaws: [] });
  }
  const held = heldOf(job).map((placement): HeldItem => heldItem(job, placement, forms, bins));
  const heldEndMm = Math.max(
    0,
    ...held.filter(({ bin }) => bin === 0).map(({ x, form }) => x + forms[form]!.halfX),
  );
  const gridMm = gridOf(job, forms, bins, widthMm);
  const drawnInMm = DRAWN_IN_GRAINS * GRAIN * widthMm;
  return {
    job,
    forms:
      gridMm === 0
        ? forms
        : // The lower left corner of the box stands on the grid.
          forms.map((form) => ({
            ...form,
            ring: drawnIn(form.ring, drawnInMm),
            matchX: -form.halfX,
            matchY: -form.halfY,
          })),
    held,
    items: gridMm === 0 ? items : items.map((item) => ({ ...item, stepX: gridMm, stepY: gridMm })),
    bins,
    clearanceMm: job.clearanceMm,
    areaMm2,
    floorMm: Math.max(areaMm2 / widthMm, longestMm, heldEndMm),
    widthMm,
    grainMm: widthMm * GRAIN,
  };
}

function heldOf(job: LayJob): readonly Placement[] {
  return job.held ?? [];
}

/** The form of a held copy is added where no piece may lie so. */
function heldItem(job: LayJob, placement: Placement, forms: Form[], bins: readonly Bin[]): HeldItem {
  const { shape, turnDeg, mirrored, onFold } = placement;
  const ring = laidRing(job, job.shapes[shape]!);
  const isSuch = (form: Form) =>
    form.shape === shape && form.turnDeg === turnDeg && form.mirrored === mirrored && form.onFold === onFold;
  let at = forms.findIndex(isSuch);
  if (at === -1) {
    at = forms.length;
    forms.push(formOf(ring, job.shapes[shape]!, shape, turnDeg, mirrored, onFold));
  }
  const form = forms[at]!;
  const bin = bins.findIndex(({ length }) => length === placement.length);
  return {
    form: at,
    bin,
    x: bins[bin]!.startX + placement.x - form.originX,
    y: placement.y - form.originY,
    areaMm2: ringAreaMm2(ring),
  };
}

/** The step of the grid that all pieces may keep to (see grid.ts), mm; 0 when they may lie anywhere. */
function gridOf(job: LayJob, forms: readonly Form[], bins: readonly Bin[], widthMm: number): number {
  const isBare =
    heldOf(job).length === 0 && job.clearanceMm === 0 && job.spread === 'open' && job.repeat === null;
  if (!isBare || bins.some((bin) => bin.flaws.length > 0)) return 0;
  const rings = forms.map((form) => form.ring);
  return gridStep(rings, widthMm / MOST_GRID_STEPS, widthMm * GRAIN);
}

/** Nearest position not under `value` on the item's lattice, along x, for a bin; the value itself when free. */
export function latticeUp(value: number, step: number, phase: number, match: number, start: number): number {
  if (step === 0) return value;
  // centre + match = start + phase + k step
  const base = start + phase - match;
  return base + Math.ceil((value - base) / step - 1e-9) * step;
}

export function latticeNear(
  value: number,
  step: number,
  phase: number,
  match: number,
  start: number,
): number {
  if (step === 0) return value;
  const base = start + phase - match;
  return base + Math.round((value - base) / step) * step;
}

export function latticeDown(
  value: number,
  step: number,
  phase: number,
  match: number,
  start: number,
): number {
  if (step === 0) return value;
  const base = start + phase - match;
  return base + Math.floor((value - base) / step + 1e-9) * step;
}
