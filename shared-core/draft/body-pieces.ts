/** Outlines of front and back, their facings and linings, and the strip under the arm. */
import type { Edge, Outline } from '../plan/model/outline.ts';
import type { Block } from './block.ts';
import { backHalf, from, frontHalf, type Half } from './halves.ts';
import {
  at,
  curve,
  foldEdge,
  line,
  moved,
  type Path,
  path,
  pathEnd,
  pathLengthMm,
  pathReversed,
  rectangleOf,
  sewnEdge,
} from './pen.ts';

type Drawn = (name: string, drawn: Path, seam: string | null, allowanceMm?: number) => Edge;

function penOf(block: Block): Drawn {
  return (name, drawn, seam, allowanceMm = block.allowanceMm) => sewnEdge(name, drawn, seam, allowanceMm);
}

/** The side meets the other half, or the strip between them. */
function sideSeam(block: Block, half: 'back' | 'front', prefix: '' | 'lining '): string {
  return block.stripMm > 0 ? `${prefix}side ${half}` : `${prefix}side`;
}

export function backOutline(block: Block): Outline {
  const half = backHalf(block);
  const edge = penOf(block);
  return {
    start: half.centreHem,
    edges: [
      foldEdge('centre back', path(half.centreHem, line(half.centreNeck))),
      edge('neckline', half.neckline, 'neck'),
      edge('shoulder', path(pathEnd(half.neckline), line(half.armhole.from)), 'shoulder'),
      edge('armhole', half.armhole, 'armhole'),
      edge('side', half.side, sideSeam(block, 'back', '')),
      edge('hem', hemTo(half, 0), 'hem', block.hemDepthMm),
    ],
  };
}

export function frontOutline(block: Block): Outline {
  const half = frontHalf(block);
  const edge = penOf(block);
  return {
    start: at(0, -block.lapMm),
    edges: [
      ...frontEdges(block, half, 'neck'),
      edge('shoulder', path(pathEnd(half.neckline), line(half.armhole.from)), 'shoulder'),
      edge('armhole', half.armhole, 'armhole'),
      edge('side', half.side, sideSeam(block, 'front', '')),
      edge('hem', hemTo(half, -block.lapMm), 'hem', block.hemDepthMm),
    ],
  };
}

/** Front edge, the top of the lap where there is one, and the neckline from the centre front to the shoulder. */
function frontEdges(block: Block, half: Half, neckSeam: 'neck' | 'facing neck'): Edge[] {
  const edge = penOf(block);
  const top = at(half.centreNeck.x, -block.lapMm);
  const lap = block.lapMm > 0 ? [edge('lap top', path(top, line(half.centreNeck)), 'front edge')] : [];
  return [
    edge('front edge', path(at(0, -block.lapMm), line(top)), 'front edge'),
    ...lap,
    edge('neckline', half.neckline, neckSeam),
  ];
}

/** The hem from the side to a place beside the centre. */
function hemTo(half: Half, yMm: number): Path {
  return path(half.hemCurve.from, ...half.hemCurve.segments, line(at(0, yMm)));
}

/** Where facing and lining part, from the hem up to the shoulder. */
function facingLine(block: Block, half: Half): Path {
  const foot = at(0, block.facingWidthMm);
  const underarmX = pathEnd(half.armhole).x;
  const turn = at(underarmX - 0.16 * (half.centreNeck.x - underarmX), block.facingWidthMm);
  const top = from(pathEnd(half.neckline), half.alongShoulder, block.facingShoulderMm);
  const riseMm = top.x - turn.x;
  // It arrives at the shoulder squarely.
  const arrival = from(top, at(-half.alongShoulder.y, half.alongShoulder.x), 0.36 * riseMm);
  return path(foot, line(turn), curve(moved(turn, 0.32 * riseMm, 0), arrival, top));
}

export function frontFacingOutline(block: Block): Outline {
  const half = frontHalf(block);
  const edge = penOf(block);
  const inner = pathReversed(facingLine(block, half));
  return {
    start: at(0, -block.lapMm),
    edges: [
      ...frontEdges(block, half, 'facing neck'),
      edge('shoulder', path(pathEnd(half.neckline), line(inner.from)), 'facing shoulder'),
      edge('inner edge', inner, 'facing to lining'),
      edge('hem', path(pathEnd(inner), line(at(0, -block.lapMm))), 'hem', block.hemDepthMm),
    ],
  };
}

export function frontLiningOutline(block: Block): Outline {
  const half = frontHalf(block);
  const edge = penOf(block);
  const inner = facingLine(block, half);
  return {
    start: inner.from,
    edges: [
      edge('facing edge', inner, 'facing to lining'),
      edge('shoulder', path(pathEnd(inner), line(half.armhole.from)), 'lining shoulder'),
      edge('armhole', half.armhole, 'lining armhole'),
      edge('side', half.side, sideSeam(block, 'front', 'lining ')),
      edge('hem', hemTo(half, block.facingWidthMm), 'lining hem', block.liningHemDepthMm),
    ],
  };
}

/** Lower edge of the back neck facing, from the centre to the shoulder. */
function backFacingLine(block: Block, half: Half): Path {
  const centre = at(block.lengthMm - block.backFacingDepthMm, 0);
  const top = from(pathEnd(half.neckline), half.alongShoulder, block.facingShoulderMm);
  const arrival = from(top, at(-half.alongShoulder.y, half.alongShoulder.x), 0.35 * top.y);
  return path(centre, curve(moved(centre, 0, 0.57 * top.y), arrival, top));
}

export function backNeckFacingOutline(block: Block): Outline {
  const half = backHalf(block);
  const edge = penOf(block);
  const lower = backFacingLine(block, half);
  return {
    start: lower.from,
    edges: [
      foldEdge('centre back', path(lower.from, line(half.centreNeck))),
      edge('neckline', half.neckline, 'facing neck'),
      edge('shoulder', path(pathEnd(half.neckline), line(pathEnd(lower))), 'facing shoulder'),
      edge('lower edge', pathReversed(lower), 'lining neck'),
    ],
  };
}

/** The back less its neck facing, wider by half the pleat at the fold. */
export function backLiningOutline(block: Block): Outline {
  const half = backHalf(block);
  const edge = penOf(block);
  const lower = backFacingLine(block, half);
  const pleatTop = at(lower.from.x, -block.halfPleatMm);
  const pleatFoot = at(0, -block.halfPleatMm);
  const pleat = block.halfPleatMm > 0 ? [line(lower.from)] : [];
  return {
    start: pleatFoot,
    edges: [
      foldEdge('centre back', path(pleatFoot, line(pleatTop))),
      edge('neckline', path(pleatTop, ...pleat, ...lower.segments), 'lining neck'),
      edge('shoulder', path(pathEnd(lower), line(half.armhole.from)), 'lining shoulder'),
      edge('armhole', half.armhole, 'lining armhole'),
      edge('side', half.side, sideSeam(block, 'back', 'lining ')),
      edge('hem', hemTo(half, -block.halfPleatMm), 'lining hem', block.liningHemDepthMm),
    ],
  };
}

/** As long as the sides on both of its edges; its upper end is the bottom of the armhole. */
export function sideStripOutline(block: Block, prefix: '' | 'lining '): Outline {
  const drawn = rectangleOf(
    pathLengthMm(backHalf(block).side),
    block.stripMm,
    block.allowanceMm,
    ['front side', 'underarm', 'back side', 'hem'],
    [`${prefix}side front`, `${prefix}armhole`, `${prefix}side back`, `${prefix}hem`],
  );
  const hemDepthMm = prefix === '' ? block.hemDepthMm : block.liningHemDepthMm;
  const edges = drawn.edges.map((edge) =>
    edge.name === 'hem' ? { ...edge, allowanceMm: hemDepthMm } : edge,
  );
  return { ...drawn, edges };
}

/** From the centre back to the centre front along the neckline. */
export function halfNeckMm(block: Block): number {
  return pathLengthMm(backHalf(block).neckline) + pathLengthMm(frontHalf(block).neckline);
}

/** One armhole, all round. */
export function armholeMm(block: Block): number {
  return pathLengthMm(backHalf(block).armhole) + pathLengthMm(frontHalf(block).armhole) + block.stripMm;
}
