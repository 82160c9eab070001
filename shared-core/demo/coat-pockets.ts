/** Patch pockets and their flaps, inside pockets, the belt and the wind flap. Frame: x upwards as worn. */
import type { Outline } from '../plan/model/outline.ts';
import { frontDraft } from './coat-body.ts';
import { at, curve, line, path } from '../draft/pen.ts';
import { edge, rectangle } from './coat-drawing.ts';
import type { CoatMeasures } from './coat-measures.ts';

/** Control points at this share of the radius make a quarter circle within 0.03 % of it. */
const quarterCircleRatio = 0.5523;

/** A pouch with round lower corners; `mouth` is its upper edge. */
function pouch(
  depthMm: number,
  widthMm: number,
  cornerMm: number,
  seams: { readonly mouth: string; readonly round: string },
): Outline {
  const near = cornerMm * (1 - quarterCircleRatio);
  return {
    start: at(cornerMm, 0),
    edges: [
      edge('front side', path(at(cornerMm, 0), line(at(depthMm, 0))), seams.round),
      edge('mouth', path(at(depthMm, 0), line(at(depthMm, widthMm))), seams.mouth),
      edge('back side', path(at(depthMm, widthMm), line(at(cornerMm, widthMm))), seams.round),
      edge(
        'bottom',
        path(
          at(cornerMm, widthMm),
          curve(at(near, widthMm), at(0, widthMm - near), at(0, widthMm - cornerMm)),
          line(at(0, cornerMm)),
          curve(at(0, near), at(near, 0), at(cornerMm, 0)),
        ),
        seams.round,
      ),
    ],
  };
}

export function patchPocket(m: CoatMeasures): Outline {
  return pouch(m.pocketHeightMm, m.pocketWidthMm, m.pocketCornerMm, {
    mouth: 'pocket mouth',
    round: 'pocket edge',
  });
}

export function insidePocketBag(m: CoatMeasures): Outline {
  return pouch(m.bag.depthMm, m.bag.widthMm, m.bag.cornerMm, { mouth: 'bag mouth', round: 'bag edge' });
}

/** Hangs over the mouth of a patch pocket and is a little wider than it; cut twice, the inner one as its lining. */
export function pocketFlap(m: CoatMeasures): Outline {
  const { depthMm, overlapMm } = m.flap;
  return pouch(depthMm, m.pocketWidthMm + 2 * overlapMm, m.pocketCornerMm / 2, {
    mouth: 'flap top',
    round: 'flap edge',
  });
}

/** Folded along its length: twice as wide as it is worn. Tied, so longer than the waist of the coat. */
export function belt(m: CoatMeasures): Outline {
  return rectangle(
    m.belt.lengthMm,
    2 * m.belt.widthMm,
    ['long edge', 'end', 'other long edge', 'other end'],
    ['belt edge', 'belt end', 'belt edge', 'belt end'],
  );
}

/** Folded along its middle: twice as deep as it shows. */
export function welt(m: CoatMeasures): Outline {
  return rectangle(
    m.welt.lengthMm,
    2 * m.welt.depthMm,
    ['lower edge', 'upper end', 'upper edge', 'lower end'],
    ['welt', null, 'welt', null],
  );
}

/** Folded along its middle behind the zip, from the start of the zip to the top of the collar. */
export function windFlap(m: CoatMeasures): Outline {
  const lengthMm = frontDraft(m).centreNeck.x - m.zipAboveHemMm + m.collarHeightMm;
  return rectangle(
    lengthMm,
    2 * m.windFlapMm,
    ['sewn edge', 'upper end', 'other sewn edge', 'lower end'],
    ['wind flap', 'wind flap end', 'wind flap', 'wind flap end'],
  );
}
