/** Found pieces put into a plan in one edit: new ones, or in place of pieces that it has. */
import { say } from '../../wording/say.ts';
import { type Point, ringBox } from '../../geometry/ring.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { CoatPlan, CutFrom, Piece } from '../../plan/model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import { type Edited, notInPlan, unfitted } from '../../plan/edits/edited.ts';
import type { Outline } from '../../plan/model/outline.ts';
import { edgePoints, seamRing } from '../../plan/geometry/outline-ring.ts';
import { pieceProblems } from '../../plan/validation/outline-problems.ts';
import { distance } from './drawn.ts';
import { pieceOf } from './found-piece.ts';
import type { FoundPiece } from './pattern.ts';

export interface BroughtPiece {
  readonly found: FoundPiece;
  readonly name: string;
  /** The piece of the plan whose place it takes, or null: it is new. */
  readonly replacesId: string | null;
  /** Slots it is cut from; one ply of each, or as many as the piece it replaces has. */
  readonly slotIds: readonly string[];
}

/** Refused, with nothing changed, when any of them cannot come in. */
export function bringIn(plan: CoatPlan, brought: readonly BroughtPiece[]): Result<Edited> {
  const problems: Problem[] = [];
  if (brought.length === 0)
    return err({
      where: say('common.the-file'),
      what: say('bring-in.brings-no-piece'),
      fix: say('bring-in.tick-the-pieces-that-are-to'),
    });
  const replaced = brought.flatMap(({ replacesId }) => (replacesId === null ? [] : [replacesId]));
  const kept = plan.pieces.filter((piece) => !replaced.includes(piece.id));
  const taken = new Set(kept.map((piece) => piece.name.trim().toLowerCase()));
  const ids = new Set(plan.pieces.map((piece) => piece.id));
  const lost: string[] = [];
  const pieces: { piece: Piece; replacesId: string | null }[] = [];
  for (const each of brought) {
    const name = each.name.trim();
    const where = say('bring-in.the-piece', { name: name || each.found.key });
    if (name === '') problems.push({ where, what: say('common.has-no-name'), fix: say('bring-in.type-one') });
    else if (taken.has(name.toLowerCase()))
      problems.push({
        where,
        what: say('bring-in.has-the-name-of-another'),
        fix: say('bring-in.type-another-name-or-let-it'),
      });
    taken.add(name.toLowerCase());
    problems.push(
      ...each.slotIds
        .filter((id) => !plan.slots.some((slot) => slot.id === id))
        .map((id) => notInPlan('slot', id)),
    );
    const old = plan.pieces.find((piece) => piece.id === each.replacesId);
    if (each.replacesId !== null && !old) problems.push(notInPlan('piece', each.replacesId));
    if (old && replaced.filter((id) => id === old.id).length > 1)
      problems.push({
        where,
        what: say('bring-in.replaces-as-another-does', { oldName: old.name }),
        fix: say('bring-in.let-only-one-of-them-replace'),
      });
    const id = old?.id ?? freeId(ids, name);
    ids.add(id);
    const cutFrom: CutFrom[] = each.slotIds.map((slotId) => ({
      slotId,
      plyCount: old?.cutFrom.find((from) => from.slotId === slotId)?.plyCount ?? 1,
    }));
    let piece = pieceOf(each.found, {
      id,
      name,
      cutFrom,
      turns: old?.turns ?? 'grain',
      quilted: old?.quilted ?? null,
      ...(old?.quiltingSpacingMm === undefined ? {} : { quiltingSpacingMm: old.quiltingSpacingMm }),
    });
    if (old) {
      const names = matchedEdges(old.outline, piece.outline);
      piece = withEdgesOf(old, piece, names);
      lost.push(
        ...old.outline.edges
          .filter((edge) => edge.seam !== null && ![...names.values()].includes(edge.name))
          .map((edge) => say('bring-in.of', { edgeName: edge.name, oldName: old.name })),
      );
    }
    problems.push(...pieceProblems(piece));
    pieces.push({ piece, replacesId: old?.id ?? null });
  }
  if (problems.length > 0) return err(...problems);
  const stands = (place: { readonly pieceId: string; readonly edge: string }) => {
    const piece = pieces.find(({ replacesId }) => replacesId === place.pieceId)?.piece;
    return !piece || piece.outline.edges.some((edge) => edge.name === place.edge);
  };
  const edited: CoatPlan = {
    ...plan,
    pieces: [
      ...plan.pieces.map((piece) => pieces.find(({ replacesId }) => replacesId === piece.id)?.piece ?? piece),
      ...pieces.flatMap(({ piece, replacesId }) => (replacesId === null ? [piece] : [])),
    ],
    slots: plan.slots.map((slot) => ({ ...slot, alongEdges: slot.alongEdges.filter(stands) })),
    seams: plan.seams.map((seam) =>
      seam.firstSide ? { ...seam, firstSide: seam.firstSide.filter(stands) } : seam,
    ),
  };
  const newNames = pieces.filter(({ replacesId }) => replacesId === null).map(({ piece }) => piece.name);
  const changedNames = pieces.filter(({ replacesId }) => replacesId !== null).map(({ piece }) => piece.name);
  const said = [
    newNames.length > 0 ? say('bring-in.brought-in', { newNames: listed(newNames) }) : '',
    changedNames.length > 0
      ? say('bring-in.replaced-from-the-file', { changedNames: listed(changedNames) })
      : '',
    lost.length > 0 ? say('bring-in.no-longer-sewn-since-no-edge', { lost: listed(lost) }) : '',
    ...unfitted(plan, edited),
  ].filter((sentence) => sentence !== '');
  return ok({ plan: edited, said: said.join(' ') });
}

/** An edge answers to one of the old piece when it lies this near in shares of the piece's size (rule of thumb). */
const answersWithinRatio = 0.25;

/** For each new edge that lies where an old one lay, both pieces laid middle on middle, the old one's name; one to one. */
export function matchedEdges(old: Outline, fresh: Outline): Map<string, string> {
  const olds = edgeMarks(old);
  const news = edgeMarks(fresh);
  const box = ringBox(seamRing(fresh));
  const maxMm = Math.hypot(box.maxX - box.minX, box.maxY - box.minY) * answersWithinRatio;
  const pairs = news.flatMap((mark) =>
    olds.map((other) => ({
      to: mark.name,
      from: other.name,
      mm:
        mark.points.reduce((sum, point, i) => sum + distance(point, other.points[i]!), 0) /
        mark.points.length,
    })),
  );
  pairs.sort((a, b) => a.mm - b.mm);
  const names = new Map<string, string>();
  const used = new Set<string>();
  for (const { to, from, mm } of pairs) {
    if (mm > maxMm || names.has(to) || used.has(from)) continue;
    names.set(to, from);
    used.add(from);
  }
  return names;
}

/** Start, middle point and end of each edge, from the middle of the piece. */
function edgeMarks(outline: Outline): { name: string; points: Point[] }[] {
  const box = ringBox(seamRing(outline));
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return outline.edges.map((edge, index) => {
    const points = edgePoints(outline, index, 1);
    const half =
      points.length % 2 === 1
        ? points[(points.length - 1) / 2]!
        : between(points[points.length / 2 - 1]!, points[points.length / 2]!);
    return {
      name: edge.name,
      points: [points[0]!, half, points.at(-1)!].map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y })),
    };
  });
}

function between(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** The new shape with the old edges' names and seams, where they answer. */
function withEdgesOf(old: Piece, piece: Piece, names: ReadonlyMap<string, string>): Piece {
  const taken = new Set(names.values());
  const nameOf = (edge: string): string => {
    const known = names.get(edge);
    if (known !== undefined) return known;
    let name = edge;
    for (let number = 2; taken.has(name); number++) name = `${edge} (${number})`;
    taken.add(name);
    return name;
  };
  const fresh = new Map(piece.outline.edges.map((edge) => [edge.name, nameOf(edge.name)]));
  return {
    ...piece,
    foldEdge: piece.foldEdge === null ? null : fresh.get(piece.foldEdge)!,
    notches: piece.notches.map((notch) => ({ ...notch, edge: fresh.get(notch.edge)! })),
    outline: {
      ...piece.outline,
      edges: piece.outline.edges.map((edge) => {
        const name = fresh.get(edge.name)!;
        const before = old.outline.edges.find((candidate) => candidate.name === name);
        const isFold = edge.name === piece.foldEdge;
        return { ...edge, name, seam: isFold || !names.has(edge.name) ? null : (before?.seam ?? null) };
      }),
    },
  };
}

function freeId(taken: ReadonlySet<string>, name: string): string {
  const words = name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');
  const stem = words.replace(/^-|-$/g, '').slice(0, 60) || 'piece';
  for (let number = 1; ; number++) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
}
