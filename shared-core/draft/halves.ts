/**
 * Back and front as lines that shell, facing and lining share, so that they meet wherever they are sewn.
 * Frame: x from the hem up, y from the centre to the side; the nape lies at x = lengthMm.
 */
import type { Point } from '../geometry/ring.ts';
import { type Block, shoulderFallRatio } from './block.ts';
import { at, curve, line, moved, type Path, path } from './pen.ts';

export interface Half {
  readonly centreHem: Point;
  readonly centreNeck: Point;
  readonly neckline: Path;
  /** Unit vector along the shoulder, from the neck outwards. */
  readonly alongShoulder: Point;
  readonly armhole: Path;
  readonly side: Path;
  /** From the side to where the hem runs straight; then straight to the centre. */
  readonly hemCurve: Path;
  /** Girth lines at the seam: distance from the centre at underarm, waist and hip (or hem, where that is higher). */
  readonly acrossMm: { readonly bust: number; readonly waist: number; readonly hip: number };
}

export function backHalf(block: Block): Half {
  const neckPoint = at(block.lengthMm + block.neckRiseMm, block.neckWidthMm);
  return half(block, {
    fall: shoulderFallRatio.back,
    quarterMm: block.backQuarterMm,
    pitchMm: block.backPitchMm,
    pitchAt: 0.42,
    neckPoint,
    centreNeck: at(block.lengthMm, 0),
    hollow: { centre: 0.56, shoulder: 0.21 },
  });
}

export function frontHalf(block: Block): Half {
  const neckPoint = at(block.lengthMm + block.neckRiseMm + block.balanceMm, block.neckWidthMm);
  return half(block, {
    fall: shoulderFallRatio.front,
    quarterMm: block.frontQuarterMm,
    pitchMm: block.frontPitchMm,
    pitchAt: 0.32,
    neckPoint,
    centreNeck: at(neckPoint.x - block.frontNeckDepthMm, 0),
    hollow: { centre: 0.6, shoulder: 0.62 },
  });
}

interface HalfMeasures {
  readonly fall: number;
  readonly quarterMm: number;
  /** The armhole runs straight down here, this share of its height over the underarm. */
  readonly pitchMm: number;
  readonly pitchAt: number;
  readonly neckPoint: Point;
  readonly centreNeck: Point;
  /** How far the neckline leaves each end before it turns, in widths of the neck. */
  readonly hollow: { readonly centre: number; readonly shoulder: number };
}

function half(block: Block, measures: HalfMeasures): Half {
  const { fall, quarterMm, neckPoint, centreNeck, hollow } = measures;
  const alongShoulder = at(-fall, Math.sqrt(1 - fall ** 2));
  const square = at(-alongShoulder.y, alongShoulder.x);
  const width = block.neckWidthMm;
  // The neckline leaves the centre squarely and meets the shoulder squarely, so both halves join without a corner.
  const neckline = path(
    centreNeck,
    curve(
      moved(centreNeck, 0, hollow.centre * width),
      from(neckPoint, square, hollow.shoulder * width),
      neckPoint,
    ),
  );
  const shoulderEnd = from(neckPoint, alongShoulder, block.shoulderMm);
  const underarm = at(block.lengthMm - block.scyeDepthMm, quarterMm);
  const heightMm = shoulderEnd.x - underarm.x;
  const pitch = at(underarm.x + measures.pitchAt * heightMm, measures.pitchMm);
  const upperMm = shoulderEnd.x - pitch.x;
  const lowerMm = pitch.x - underarm.x;
  const scoopMm = underarm.y - pitch.y;
  const armhole = path(
    shoulderEnd,
    curve(from(shoulderEnd, square, 0.35 * upperMm), moved(pitch, 0.35 * upperMm, 0), pitch),
    curve(moved(pitch, -0.62 * lowerMm, 0), moved(underarm, 0, -0.58 * scoopMm), underarm),
  );
  return {
    centreHem: at(0, 0),
    centreNeck,
    neckline,
    alongShoulder,
    armhole,
    ...sideAndHem(block, underarm),
  };
}

/** The side by way of waist and hip, and the hem that meets it squarely. */
function sideAndHem(block: Block, underarm: Point): Pick<Half, 'side' | 'hemCurve' | 'acrossMm'> {
  const waistX = block.lengthMm - block.body.backLengthMm;
  const waist = at(waistX, underarm.y + block.waistOutMm);
  const hipX = waistX - block.body.hipDepthMm;
  const hasHip = hipX > 60;
  const hemStraight = at(0, block.facingWidthMm + 20);
  const reached = Math.min(1, waistX / block.body.hipDepthMm);
  const outMm = hasHip
    ? block.hipOutMm + block.flareRatio * hipX
    : block.waistOutMm + (block.hipOutMm - block.waistOutMm) * reached;
  const spanMm = underarm.y + outMm - hemStraight.y;
  const lean = hasHip ? block.flareRatio : Math.min(0.12, Math.max(0, outMm - block.waistOutMm) / waistX);
  // The same rise in back and front, so that both sides are as long.
  const middleSpanMm = (block.backQuarterMm + block.frontQuarterMm) / 2 + outMm - hemStraight.y;
  const sideHem = at(0.36 * lean * middleSpanMm, underarm.y + outMm);
  const upperMm = underarm.x - waist.x;
  const toWaist = curve(moved(underarm, -0.33 * upperMm, 0), moved(waist, 0.33 * upperMm, 0), waist);
  const hip = at(hipX, underarm.y + block.hipOutMm);
  const foot = hasHip ? hip : sideHem;
  const lowerMm = waist.x - foot.x;
  const toFoot = curve(
    moved(waist, -0.4 * lowerMm, 0),
    moved(foot, 0.4 * lowerMm, -0.4 * lowerMm * lean),
    foot,
  );
  const side = path(underarm, toWaist, toFoot, ...(hasHip ? [line(sideHem)] : []));
  return {
    side,
    hemCurve: path(
      sideHem,
      curve(
        moved(sideHem, -0.35 * lean * spanMm, -0.35 * spanMm),
        moved(hemStraight, 0, 0.35 * spanMm),
        hemStraight,
      ),
    ),
    acrossMm: { bust: underarm.y, waist: waist.y, hip: foot.y },
  };
}

/** A point at a distance from another, in a direction. */
export function from(point: Point, direction: Point, distanceMm: number): Point {
  return moved(point, direction.x * distanceMm, direction.y * distanceMm);
}
