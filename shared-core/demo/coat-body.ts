/**
 * Front, back, their facings and linings. Frame: x from the hem up, y from the centre to the side; the nape lies at
 * x = napeToHemMm. Facing and lining are cut out of the same lines as the shell, so that they meet.
 */
import type { Point } from '../geometry/ring.ts';
import type { Outline } from '../plan/model/outline.ts';
import { at, curve, foldEdge, line, moved, type Path, path, pathEnd, pathReversed } from '../draft/pen.ts';
import { edge, hemAllowanceMm, liningHemAllowanceMm } from './coat-drawing.ts';
import { backQuarterMm, type CoatMeasures, frontQuarterMm } from './coat-measures.ts';

/** The hem runs straight as far as this from the centre, so that a facing ends on a straight line. */
const straightHemMm = 118;

/** Half a body: the lines that shell, facing and lining share. */
export interface BodyDraft {
  readonly centreHem: Point;
  readonly centreNeck: Point;
  readonly neckline: Path;
  /** Unit vector along the shoulder, from the neck outwards. */
  readonly alongShoulder: Point;
  readonly shoulderMm: number;
  readonly armhole: Path;
  readonly side: Path;
  /** From the side to the centre. */
  readonly hem: Path;
}

interface HalfMeasures {
  readonly quarterMm: number;
  readonly centreNeck: Point;
  readonly neckPoint: Point;
  /** How far the neckline leaves each end before it turns. */
  readonly neckHollowMm: { readonly centre: number; readonly shoulder: number };
  readonly shoulderDropMm: number;
  /** The armhole leaves the shoulder squarely for `fall`, and reaches the underarm along the chest line for `scoop`. */
  readonly armholeMm: { readonly fall: number; readonly scoop: number };
}

function halfBody(m: CoatMeasures, half: HalfMeasures): BodyDraft {
  const { centreNeck, neckPoint, neckHollowMm } = half;
  const acrossMm = Math.sqrt(m.shoulderMm ** 2 - half.shoulderDropMm ** 2);
  const alongShoulder = at(-half.shoulderDropMm / m.shoulderMm, acrossMm / m.shoulderMm);
  // The neckline leaves the centre squarely and meets the shoulder squarely, so both halves join without a corner.
  const neckline = path(
    centreNeck,
    curve(
      moved(centreNeck, 0, neckHollowMm.centre),
      moved(neckPoint, -alongShoulder.y * neckHollowMm.shoulder, alongShoulder.x * neckHollowMm.shoulder),
      neckPoint,
    ),
  );
  const shoulderEnd = along(neckPoint, alongShoulder, m.shoulderMm);
  const underarm = at(m.napeToHemMm - m.scyeDepthMm, half.quarterMm);
  const { fall, scoop } = half.armholeMm;
  const armhole = path(
    shoulderEnd,
    curve(
      moved(shoulderEnd, -alongShoulder.y * fall, alongShoulder.x * fall),
      moved(underarm, 0, -scoop),
      underarm,
    ),
  );
  const waist = at(m.napeToHemMm - m.napeToWaistMm, half.quarterMm - m.waistInMm);
  // The side leans out by this much for each mm down at the hem; the hem meets it squarely.
  const lean = 0.09;
  const sideHem = at(9, half.quarterMm + m.hemOutMm);
  const side = path(
    underarm,
    curve(moved(underarm, -52, -5), moved(waist, 54, 0), waist),
    curve(moved(waist, -190, 0), moved(sideHem, 215, -215 * lean), sideHem),
  );
  const hemStraight = at(0, straightHemMm);
  const hem = path(
    sideHem,
    curve(moved(sideHem, -70 * lean, -70), moved(hemStraight, 0, 66), hemStraight),
    line(at(0, 0)),
  );
  return {
    centreHem: at(0, 0),
    centreNeck,
    neckline,
    alongShoulder,
    shoulderMm: m.shoulderMm,
    armhole,
    side,
    hem,
  };
}

function along(from: Point, direction: Point, distanceMm: number): Point {
  return moved(from, direction.x * distanceMm, direction.y * distanceMm);
}

export function backDraft(m: CoatMeasures): BodyDraft {
  return halfBody(m, {
    quarterMm: backQuarterMm(m),
    centreNeck: at(m.napeToHemMm, 0),
    neckPoint: at(m.napeToHemMm + m.backNeckRiseMm, m.backNeckWidthMm),
    neckHollowMm: { centre: 46, shoulder: 17 },
    shoulderDropMm: m.backShoulderDropMm,
    armholeMm: { fall: 104, scoop: 84 },
  });
}

export function frontDraft(m: CoatMeasures): BodyDraft {
  const neckX = m.napeToHemMm + m.backNeckRiseMm + m.frontBalanceMm;
  return halfBody(m, {
    quarterMm: frontQuarterMm(m),
    centreNeck: at(neckX - m.frontNeckDepthMm, 0),
    neckPoint: at(neckX, m.frontNeckWidthMm),
    neckHollowMm: { centre: 52, shoulder: 58 },
    shoulderDropMm: m.frontShoulderDropMm,
    armholeMm: { fall: 118, scoop: 112 },
  });
}

function shell(draft: BodyDraft, centre: { readonly name: string; readonly seam: string | null }): Outline {
  const toNeck = path(draft.centreHem, line(draft.centreNeck));
  const neckPoint = pathEnd(draft.neckline);
  return {
    start: draft.centreHem,
    edges: [
      centre.seam === null ? foldEdge(centre.name, toNeck) : edge(centre.name, toNeck, centre.seam),
      edge('neckline', draft.neckline, 'neck'),
      edge('shoulder', path(neckPoint, line(draft.armhole.from)), 'shoulder'),
      edge('armhole', draft.armhole, 'armhole'),
      edge('side', draft.side, 'side'),
      edge('hem', draft.hem, 'hem', hemAllowanceMm),
    ],
  };
}

export function back(m: CoatMeasures): Outline {
  return shell(backDraft(m), { name: 'centre back', seam: null });
}

export function front(m: CoatMeasures): Outline {
  return shell(frontDraft(m), { name: 'front edge', seam: 'front edge' });
}

/** Where facing and lining part, from the hem up to the shoulder. */
function facingLine(m: CoatMeasures, draft: BodyDraft): Path {
  const foot = at(0, m.facingWidthMm);
  const turn = at(m.napeToHemMm - m.scyeDepthMm - 40, m.facingWidthMm);
  const top = along(pathEnd(draft.neckline), draft.alongShoulder, m.facingShoulderMm);
  // It arrives at the shoulder squarely.
  const arrival = moved(top, -draft.alongShoulder.y * 110, draft.alongShoulder.x * 110);
  return path(foot, line(turn), curve(moved(turn, 96, 0), arrival, top));
}

export function frontFacing(m: CoatMeasures): Outline {
  const draft = frontDraft(m);
  const inner = pathReversed(facingLine(m, draft));
  return {
    start: draft.centreHem,
    edges: [
      edge('front edge', path(draft.centreHem, line(draft.centreNeck)), 'front edge'),
      edge('neckline', draft.neckline, 'facing neck'),
      edge('shoulder', path(pathEnd(draft.neckline), line(inner.from)), 'facing shoulder'),
      edge('inner edge', inner, 'facing to lining'),
      edge('hem', path(pathEnd(inner), line(draft.centreHem)), 'hem', hemAllowanceMm),
    ],
  };
}

export function frontLining(m: CoatMeasures): Outline {
  const draft = frontDraft(m);
  const inner = facingLine(m, draft);
  const [curved] = draft.hem.segments;
  return {
    start: inner.from,
    edges: [
      edge('facing edge', inner, 'facing to lining'),
      edge('shoulder', path(pathEnd(inner), line(draft.armhole.from)), 'lining shoulder'),
      edge('armhole', draft.armhole, 'lining armhole'),
      edge('side', draft.side, 'lining side'),
      edge('hem', path(draft.hem.from, curved!, line(inner.from)), 'lining hem', liningHemAllowanceMm),
    ],
  };
}

/** Lower edge of the back neck facing, from the centre to the shoulder. */
function backFacingLine(m: CoatMeasures, draft: BodyDraft): Path {
  const from = at(m.napeToHemMm - m.backFacingDepthMm, 0);
  const top = along(pathEnd(draft.neckline), draft.alongShoulder, m.facingShoulderMm);
  return path(
    from,
    curve(moved(from, 0, 74), moved(top, -draft.alongShoulder.y * 46, draft.alongShoulder.x * 46), top),
  );
}

export function backNeckFacing(m: CoatMeasures): Outline {
  const draft = backDraft(m);
  const lower = backFacingLine(m, draft);
  return {
    start: lower.from,
    edges: [
      foldEdge('centre back', path(lower.from, line(draft.centreNeck))),
      edge('neckline', draft.neckline, 'facing neck'),
      edge('shoulder', path(pathEnd(draft.neckline), line(pathEnd(lower))), 'facing shoulder'),
      edge('lower edge', pathReversed(lower), 'lining neck'),
    ],
  };
}

export function backLining(m: CoatMeasures): Outline {
  const draft = backDraft(m);
  const lower = backFacingLine(m, draft);
  const pleatFoot = at(0, -m.pleatMm);
  const pleatTop = at(lower.from.x, -m.pleatMm);
  const [curved] = draft.hem.segments;
  return {
    start: pleatFoot,
    edges: [
      foldEdge('centre back', path(pleatFoot, line(pleatTop))),
      edge('neckline', path(pleatTop, line(lower.from), ...lower.segments), 'lining neck'),
      edge('shoulder', path(pathEnd(lower), line(draft.armhole.from)), 'lining shoulder'),
      edge('armhole', draft.armhole, 'lining armhole'),
      edge('side', draft.side, 'lining side'),
      edge('hem', path(draft.hem.from, curved!, line(pleatFoot)), 'lining hem', liningHemAllowanceMm),
    ],
  };
}
