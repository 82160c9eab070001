/** The pattern of a coat as plain JSON for scripts: its pieces, its seams walked, and its quilting map. */
import { type FlowSources, slotItems } from '../estimate.ts';
import { ringAreaMm2 } from '../../geometry/ring.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';
import { cutRing, edgeLengthMm } from '../../plan/geometry/outline-ring.ts';
import { toOutline } from '../../plan/model/quilting-order.ts';
import { orderSentences } from '../../plan/model/quilting-order-words.ts';
import { seamWalk } from '../../plan/geometry/seam-walk.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import { quiltingMap } from '../../quilting/map.ts';
import { meetingReport } from '../../quilting/meeting.ts';
import { offsetsToMark, pieceTakeUp } from '../../requirement/cut/slot-take-up.ts';

/** One entry for each size that is made. Lengths in mm at the seam line, areas in mm2 with allowance. */
export function patternJson(sources: FlowSources) {
  return plansBySize(sources.plan).map((plan) => ({
    size: plan.size,
    coatCount: plan.coatCount,
    pieces: piecesJson(plan),
    seams: seamWalk(plan),
    quilting: quiltingJson(plan, sources),
  }));
}

function piecesJson(plan: CoatPlan) {
  return plan.pieces.map(({ outline, ...piece }) => ({
    ...piece,
    cutFrom: piece.cutFrom.map((from) => ({ slot: slotById(plan, from.slotId).name, ...from })),
    cutAreaMm2: ringAreaMm2(cutRing(outline, piece.foldEdge)),
    edges: outline.edges.map(({ name, allowanceMm, seam }) => ({
      name,
      lengthMm: edgeLengthMm(outline, name),
      allowanceMm,
      seam,
    })),
  }));
}

/** markAtMm: where the lines are marked on the flat cloth, from its hem, so that quilted they lie at offsetsMm. */
function quiltingJson(plan: CoatPlan, sources: FlowSources) {
  if (plan.quilting === null) return null;
  const items = slotItems(sources);
  return {
    ...plan.quilting,
    order: plan.quilting.order ?? toOutline,
    says: orderSentences(plan),
    pieces: quiltingMap(plan).map(({ lines, ...quilted }) => {
      const piece = plan.pieces.find(({ id }) => id === quilted.pieceId)!;
      const takeUp = pieceTakeUp(plan, piece, items);
      return {
        ...quilted,
        lineLengthsMm: lines.map(({ lengthMm }) => lengthMm),
        takeUp,
        markAtMm: offsetsToMark(quilted, takeUp),
      };
    }),
    meetings: meetingReport(plan),
  };
}
