/**
 * Sleeves of one or two parts and their cuffs. Frame: x from the cuff up, y from the front seam to the back seam.
 * The height of the cap is solved, so that all of the cap is as long as the armhole and its ease: the classic relation,
 * in place of a fixed share of the armhole's depth (about a third: common practice, no source).
 */
import type { Outline } from '../plan/model/outline.ts';
import { armholeMm } from './body-pieces.ts';
import { type Block, blockOf } from './block.ts';
import type { DraftInput } from './draft-input.ts';
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
  rectangleOf,
  sewnEdge,
  solve,
} from './pen.ts';

/** One strip of cloth of a sleeve, from its front seam to its back seam. */
export interface SleevePart {
  readonly front: Path;
  readonly cap: Path;
  readonly back: Path;
}

export interface SleeveDraft {
  /** The whole sleeve, or its top part. */
  readonly top: SleevePart;
  readonly under: SleevePart | null;
  readonly capHeightMm: number;
  readonly capMm: number;
  /** Round the upper arm at the seam line. */
  readonly upperArmMm: number;
  readonly wristMm: number;
  readonly cuffDepthMm: number;
}

export interface Armhole {
  readonly block: Block;
  readonly sleeve: SleeveDraft;
  /** How much deeper than the block's own the armhole was set to take the upper arm. */
  readonly loweredMm: number;
}

/**
 * A sleeve as wide as this share of the armhole has a cap of about a third of it, and sits well; a maker of down jackets
 * prints 0.65 to 0.68 (timmermade.com, dimensions of the standard sizes). Up to `most` it can still be set in.
 */
const widthShare = { usual: 0.72, max: 0.84 };
const deepestLoweredMm = 140;

/**
 * A coat's sleeve covers what is worn under it and ends at the root of the thumb: 4 cm beyond the wrist of a grown
 * person. Padding lies on the outside of shoulder and elbow and takes half its girth more. Common practice, no source.
 */
const beyondWristRatio = 0.023;

/** The block with the armhole that takes the sleeve, and the sleeve; null when no armhole is large enough for the arm. */
export function armholeAndSleeve(input: DraftInput): Armhole | null {
  for (let loweredMm = 0; loweredMm <= deepestLoweredMm; loweredMm += 2) {
    const block = blockOf(input, loweredMm);
    const roundMm = armholeMm(block);
    const neededMm = block.body.upperArmMm + 0.42 * input.easeMm + input.paddingGirthMm.sleeve;
    if (neededMm > widthShare.max * roundMm) continue;
    const widthMm = Math.max(neededMm, widthShare.usual * roundMm);
    return { block, sleeve: sleeveOf(input, block, widthMm, roundMm), loweredMm };
  }
  return null;
}

function sleeveOf(input: DraftInput, block: Block, widthMm: number, roundMm: number): SleeveDraft {
  const cuffDepthMm = 20 + 0.045 * block.body.bustMm;
  const reachMm = beyondWristRatio * block.body.heightMm + 0.5 * input.paddingGirthMm.sleeve;
  const lengthMm = block.body.armMm + reachMm - cuffDepthMm;
  const wristMm = Math.min(
    0.75 * widthMm,
    Math.max(0.6 * widthMm, block.body.wristMm + 0.3 * input.easeMm + input.paddingGirthMm.sleeve + 30),
  );
  const draw = input.sleeve === 'one part' ? onePart : twoPart;
  const partsOf = (capHeightMm: number) => draw(lengthMm, widthMm, wristMm, capHeightMm);
  const capMm = (heightMm: number) =>
    partsOf(heightMm).reduce((sum, part) => sum + pathLengthMm(part.cap), 0);
  const capHeightMm = solve(0.05 * widthMm, 0.75 * widthMm, roundMm + input.capEaseMm, capMm);
  const [top, under] = partsOf(capHeightMm);
  return {
    top: top!,
    under: under ?? null,
    capHeightMm,
    capMm: capMm(capHeightMm),
    upperArmMm: widthMm,
    wristMm,
    cuffDepthMm,
  };
}

/** Hollow in front, fuller behind, and as long on both sides of the seam under the arm. */
function onePart(lengthMm: number, widthMm: number, wristMm: number, capHeightMm: number): SleevePart[] {
  const armX = lengthMm - capHeightMm;
  const inMm = (widthMm - wristMm) / 2;
  const frontTop = at(armX, 0);
  const backTop = at(armX, widthMm);
  const crown = at(lengthMm, 0.49 * widthMm);
  const front = path(
    at(0, inMm),
    curve(at(0.34 * armX, inMm), moved(frontTop, -0.4 * armX, 0.35 * inMm), frontTop),
  );
  const back = path(
    backTop,
    curve(moved(backTop, -0.4 * armX, -0.35 * inMm), at(0.34 * armX, widthMm - inMm), at(0, widthMm - inMm)),
  );
  const cap = path(
    frontTop,
    curve(moved(frontTop, 0, 0.23 * widthMm), moved(crown, 0, -0.25 * widthMm), crown),
    curve(moved(crown, 0, 0.28 * widthMm), moved(backTop, 0, -0.18 * widthMm), backTop),
  );
  return [{ front, cap, back }];
}

/** The top part takes 31 of 50 of the width; both seams of the under part are the top's moved inwards, so they are as long. */
function twoPart(lengthMm: number, widthMm: number, wristMm: number, capHeightMm: number): SleevePart[] {
  const topMm = 0.62 * widthMm;
  const lessMm = 0.12 * widthMm;
  const topWristMm = wristMm / 2 + lessMm;
  const k = widthMm / 430;
  const armX = lengthMm - capHeightMm;
  const elbowX = armX * 0.56;
  // Down the seams curves are drawn in shares of the sleeve's length, so that a child's do not double back.
  const d = armX / 400;
  const frontTop = at(armX + 0.1 * capHeightMm, 0);
  const backTop = at(armX + 0.41 * capHeightMm, topMm - 4 * k);
  const crown = at(lengthMm, topMm * 0.485);
  // The arm bends forward: the front seam is hollow at the elbow, the back seam full there and drawn in below.
  const frontHem = at(7 * k, 6 * k);
  const backHem = at(-5 * k, frontHem.y + topWristMm);
  const frontElbow = at(elbowX, 23 * k);
  const backElbow = at(elbowX + 14 * d, topMm - 8 * k);
  const front = path(
    frontHem,
    curve(moved(frontHem, 64 * d, 12 * k), moved(frontElbow, -72 * d, 0), frontElbow),
    curve(moved(frontElbow, 66 * d, 0), moved(frontTop, -58 * d, 9 * k), frontTop),
  );
  const back = path(
    backTop,
    curve(moved(backTop, -70 * d, 7 * k), moved(backElbow, 66 * d, 3 * k), backElbow),
    curve(moved(backElbow, -72 * d, -4 * k), moved(backHem, 66 * d, 26 * k), backHem),
  );
  const cap = path(
    frontTop,
    curve(moved(frontTop, 0.44 * capHeightMm, 13 * k), moved(crown, 0, -0.265 * topMm), crown),
    curve(moved(crown, 0, 0.265 * topMm), moved(backTop, 0.29 * capHeightMm, -30 * k), backTop),
  );
  const underFront = pathMoved(front, 0, lessMm);
  const underBack = pathMoved(back, 0, -lessMm);
  const underFrom = pathEnd(underFront);
  const underTo = underBack.from;
  const underCap = path(
    underFrom,
    curve(
      moved(underFrom, -0.14 * capHeightMm, 46 * k),
      moved(underTo, -0.4 * capHeightMm, -44 * k),
      underTo,
    ),
  );
  return [
    { front, cap, back },
    { front: underFront, cap: underCap, back: underBack },
  ];
}

/** A part as it is cut; a sleeve of one part is sewn to itself under the arm. */
export function sleeveOutline(
  part: SleevePart,
  isWhole: boolean,
  prefix: '' | 'lining ',
  allowanceMm: number,
): Outline {
  const seams = isWhole ? ['sleeve', 'sleeve'] : ['sleeve front', 'sleeve back'];
  const edge = (name: string, drawn: Path, seam: string) => sewnEdge(name, drawn, seam, allowanceMm);
  return {
    start: part.front.from,
    edges: [
      edge('front seam', part.front, `${prefix}${seams[0]}`),
      edge('cap', part.cap, `${prefix}armhole`),
      edge('back seam', part.back, `${prefix}${seams[1]}`),
      edge('wrist', path(pathEnd(part.back), line(part.front.from)), prefix === '' ? 'cuff' : 'cuff lining'),
    ],
  };
}

/** A band as long as the wrist of the sleeve, folded along its middle. */
export function cuffOutline(sleeve: SleeveDraft, allowanceMm: number): Outline {
  const parts = [sleeve.top, ...(sleeve.under ? [sleeve.under] : [])];
  const roundMm = parts.reduce(
    (sum, part) => sum + pathLengthMm(path(pathEnd(part.back), line(part.front.from))),
    0,
  );
  return rectangleOf(
    2 * sleeve.cuffDepthMm,
    roundMm,
    allowanceMm,
    ['end', 'lining edge', 'other end', 'sleeve edge'],
    ['cuff end', 'cuff lining', 'cuff end', 'cuff'],
  );
}
