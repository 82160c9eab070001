/** Pocket bags and welts, the placket behind the front and the hanging loop. Frame: x upwards as worn. */
import type { Outline } from '../plan/model/outline.ts';
import type { Block } from './block.ts';
import { frontHalf } from './halves.ts';
import { at, curve, line, path, rectangleOf, sewnEdge } from './pen.ts';

/** Control points at this share of the radius make a quarter circle within 0.03 % of it. */
const quarterCircleRatio = 0.5523;

/** A hand goes in: 15 cm for a bust of 94, smaller for a child. */
export function pocketMouthMm(block: Block): number {
  return 70 + 0.09 * block.body.bustMm;
}

/** A pouch with round lower corners; `mouth` is its upper edge. */
export function pocketBagOutline(block: Block): Outline {
  const mouthMm = pocketMouthMm(block);
  const widthMm = mouthMm + 24;
  const depthMm = 1.45 * mouthMm;
  const cornerMm = 0.27 * mouthMm;
  const near = cornerMm * (1 - quarterCircleRatio);
  const edge = (name: string, drawn: ReturnType<typeof path>, seam: string) =>
    sewnEdge(name, drawn, seam, block.allowanceMm);
  return {
    start: at(cornerMm, 0),
    edges: [
      edge('front side', path(at(cornerMm, 0), line(at(depthMm, 0))), 'bag edge'),
      edge('mouth', path(at(depthMm, 0), line(at(depthMm, widthMm))), 'bag mouth'),
      edge('back side', path(at(depthMm, widthMm), line(at(cornerMm, widthMm))), 'bag edge'),
      edge(
        'bottom',
        path(
          at(cornerMm, widthMm),
          curve(at(near, widthMm), at(0, widthMm - near), at(0, widthMm - cornerMm)),
          line(at(0, cornerMm)),
          curve(at(0, near), at(near, 0), at(cornerMm, 0)),
        ),
        'bag edge',
      ),
    ],
  };
}

/** Folded along its middle: twice as deep as it shows. */
export function weltOutline(block: Block): Outline {
  return rectangleOf(
    pocketMouthMm(block),
    52,
    block.allowanceMm,
    ['lower edge', 'upper end', 'upper edge', 'lower end'],
    ['welt', null, 'welt', null],
  );
}

/** Folded along its middle behind the front edge, from the hem to the neck. */
export function placketOutline(block: Block): Outline {
  return rectangleOf(
    frontHalf(block).centreNeck.x,
    40 + 0.07 * block.body.bustMm,
    block.allowanceMm,
    ['sewn edge', 'upper end', 'other sewn edge', 'lower end'],
    ['placket', 'placket end', 'placket', 'placket end'],
  );
}

/** A strip of interfacing behind each front edge, as wide as a zip's tape or a snap needs: common practice, no source. */
export function frontStayOutline(block: Block): Outline {
  return rectangleOf(
    frontHalf(block).centreNeck.x,
    32 + block.lapMm,
    0,
    ['front edge', 'upper end', 'inner edge', 'lower end'],
    [null, null, null, null],
  );
}

/** Folded in four along its length. */
export function loopOutline(): Outline {
  return rectangleOf(
    90,
    32,
    0,
    ['long edge', 'end', 'other long edge', 'other end'],
    ['loop', null, 'loop', null],
  );
}
