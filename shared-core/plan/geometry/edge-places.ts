/** Seams and fastenings keep saying what they said when the edges of a piece become others. */
import type { CoatPlan } from '../model/coat-plan.ts';
import type { EdgePlace, Seam } from '../model/outline.ts';
import { type SeamReport, seamWalk } from './seam-walk.ts';

/** What an edge of the piece became: none, itself, or several. */
export type Becoming = (edge: string) => readonly EdgePlace[];

/**
 * Seams and slots of `after` with each place of the piece's edges in `before` replaced by what it became. Which edges
 * are a seam's first side is written down, so that two halves of an edge are not taken for its two sides.
 */
export function withPlacesOf(
  before: CoatPlan,
  after: CoatPlan,
  pieceId: string,
  becoming: Becoming,
): CoatPlan {
  const mapped = (places: readonly EdgePlace[]): EdgePlace[] =>
    distinct(places.flatMap((place) => (place.pieceId === pieceId ? becoming(place.edge) : [place])));
  const reports = new Map(seamWalk(before).map((report) => [report.seamId, report]));
  return {
    ...after,
    slots: after.slots.map((slot) => ({ ...slot, alongEdges: mapped(slot.alongEdges) })),
    seams: after.seams.map((seam) => {
      const report = reports.get(seam.id);
      if (!report) return seam;
      const isTouched = [...report.first, ...report.second].some((place) => place.pieceId === pieceId);
      return isTouched ? seamAfter(seam, report, mapped) : seam;
    }),
  };
}

function seamAfter(
  seam: Seam,
  report: SeamReport,
  mapped: (places: readonly EdgePlace[]) => EdgePlace[],
): Seam {
  const { firstSide, ...own } = seam;
  if (firstSide === undefined && report.sides === 'mirror') return seam;
  const first = mapped(firstSide ?? report.first);
  const second = mapped(report.second);
  // Both sides became one edge: it meets its own mirror image.
  if (first.some((place) => second.some((other) => isSame(place, other)))) return own;
  return { ...own, firstSide: first };
}

function distinct(places: readonly EdgePlace[]): EdgePlace[] {
  return places
    .map(({ pieceId, edge }) => ({ pieceId, edge }))
    .filter((place, index, all) => all.findIndex((other) => isSame(place, other)) === index);
}

function isSame(one: EdgePlace, other: EdgePlace): boolean {
  return one.pieceId === other.pieceId && one.edge === other.edge;
}
