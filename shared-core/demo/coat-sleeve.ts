/**
 * A two-part sleeve and its cuff. Frame: x from the cuff up, y from the front seam to the back seam.
 * Both seams of the under sleeve are those of the top sleeve moved inwards, so they are as long; the height of the
 * cap is found so that both caps together are as long as the armhole and the ease.
 */
import type { Outline } from '../plan/model/outline.ts';
import { backDraft, frontDraft } from './coat-body.ts';
import {
  at,
  curve,
  line,
  moved,
  type Path,
  path,
  pathEnd,
  pathLengthMm,
  pathMoved,
  solve,
} from '../draft/pen.ts';
import { edge, rectangle } from './coat-drawing.ts';
import type { CoatMeasures } from './coat-measures.ts';

interface SleeveDraft {
  readonly topFront: Path;
  readonly topCap: Path;
  readonly topBack: Path;
  readonly underFront: Path;
  readonly underCap: Path;
  readonly underBack: Path;
}

/** The sleeve drawn with a given height of its cap above the line of the upper arm. */
function sleeveWithCap(m: CoatMeasures, capHeightMm: number): SleeveDraft {
  const armX = m.sleeveMm - capHeightMm;
  const elbowX = armX * 0.56;
  const frontTop = at(armX + 16, 0);
  const backTop = at(armX + 0.41 * capHeightMm, m.topSleeveMm - 4);
  const crown = at(m.sleeveMm, m.topSleeveMm * 0.485);
  // The arm bends forward: the front seam is hollow at the elbow, the back seam full there and drawn in below.
  const frontHem = at(7, 6);
  const backHem = at(-5, frontHem.y + m.topWristMm);
  const frontElbow = at(elbowX, 23);
  const backElbow = at(elbowX + 14, m.topSleeveMm - 8);
  const topFront = path(
    frontHem,
    curve(moved(frontHem, 64, 12), moved(frontElbow, -72, 0), frontElbow),
    curve(moved(frontElbow, 66, 0), moved(frontTop, -58, 9), frontTop),
  );
  const topBack = path(
    backTop,
    curve(moved(backTop, -70, 7), moved(backElbow, 66, 3), backElbow),
    curve(moved(backElbow, -72, -4), moved(backHem, 66, 26), backHem),
  );
  const topCap = path(
    frontTop,
    curve(moved(frontTop, 0.44 * capHeightMm, 13), moved(crown, 0, -0.265 * m.topSleeveMm), crown),
    curve(moved(crown, 0, 0.265 * m.topSleeveMm), moved(backTop, 0.29 * capHeightMm, -30), backTop),
  );
  const underFront = pathMoved(topFront, 0, m.underLessMm);
  const underBack = pathMoved(topBack, 0, -m.underLessMm);
  const underFrom = pathEnd(underFront);
  const underTo = underBack.from;
  const underCap = path(
    underFrom,
    curve(moved(underFrom, -24, 46), moved(underTo, -0.4 * capHeightMm, -44), underTo),
  );
  return { topFront, topCap, topBack, underFront, underCap, underBack };
}

function sleeveDraft(m: CoatMeasures): SleeveDraft {
  const armholeMm = pathLengthMm(backDraft(m).armhole) + pathLengthMm(frontDraft(m).armhole);
  const capMm = (heightMm: number) => {
    const draft = sleeveWithCap(m, heightMm);
    return pathLengthMm(draft.topCap) + pathLengthMm(draft.underCap);
  };
  return sleeveWithCap(m, solve(90, 220, armholeMm + m.capEaseMm, capMm));
}

function sleevePart(front: Path, cap: Path, back: Path, prefix: 'lining ' | ''): Outline {
  return {
    start: front.from,
    edges: [
      edge('front seam', front, `${prefix}sleeve front`),
      edge('cap', cap, `${prefix}armhole`),
      edge('back seam', back, `${prefix}sleeve back`),
      edge('wrist', path(pathEnd(back), line(front.from)), prefix === '' ? 'cuff' : 'cuff lining'),
    ],
  };
}

export function topSleeve(m: CoatMeasures, prefix: 'lining ' | '' = ''): Outline {
  const draft = sleeveDraft(m);
  return sleevePart(draft.topFront, draft.topCap, draft.topBack, prefix);
}

export function underSleeve(m: CoatMeasures, prefix: 'lining ' | '' = ''): Outline {
  const draft = sleeveDraft(m);
  return sleevePart(draft.underFront, draft.underCap, draft.underBack, prefix);
}

/** A band as long as both wrists, folded along its middle over the wrist. */
export function cuff(m: CoatMeasures): Outline {
  const draft = sleeveDraft(m);
  const straight = (front: Path, back: Path) => pathLengthMm(path(pathEnd(back), line(front.from)));
  const aroundMm = straight(draft.topFront, draft.topBack) + straight(draft.underFront, draft.underBack);
  return rectangle(
    2 * m.cuffDepthMm,
    aroundMm,
    ['end', 'lining edge', 'other end', 'sleeve edge'],
    ['cuff end', 'cuff lining', 'cuff end', 'cuff'],
  );
}
