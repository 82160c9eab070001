/** A piece split in two at a line: a yoke from a back, a side panel, or a facing from a copy of the front. */
import { givenName } from '../../../wording/given-names.ts';
import { say } from '../../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../../measure/problem.ts';
import type { CoatPlan, Piece } from '../../model/coat-plan.ts';
import { type Edited, inMm, type LengthText, notInPlan, unfitted } from '../edited.ts';
import { withPlacesOf } from '../../geometry/edge-places.ts';
import { freePieceId, inEverySize, pieceNameProblem } from '../every-size.ts';
import type { EdgePlace, Seam } from '../../model/outline.ts';
import { type OutlinePart, outlineCut, placeOnPart } from '../../geometry/outline-cut.ts';
import { freeName } from '../../geometry/outline-moved.ts';
import {
  isMeasuredFromHighY,
  type LineDirection,
  lineAt,
  linePlaceWords,
  lineProblem,
  lineRoomMm,
} from '../../geometry/piece-line.ts';
import { seamWalk } from '../../geometry/seam-walk.ts';

export interface Split {
  readonly direction: LineDirection;
  /** Above the hem, or from the fold or the right side as drawn. */
  readonly distanceMm: number;
  /** On both parts, at the split. */
  readonly allowanceMm: number;
  /** The part at the hem, fold or right side first. */
  readonly names: readonly [string, string];
}

/** What the two parts are called if nothing is said. */
export function defaultSplitNames(piece: Piece, direction: LineDirection): readonly [string, string] {
  const words =
    direction === 'across'
      ? [say('split.lower'), say('split.upper')]
      : piece.foldEdge
        ? [say('split.middle'), say('split.side')]
        : [say('split.right'), say('split.left')];
  return [`${piece.name} ${words[0]}`, `${piece.name} ${words[1]}`];
}

/**
 * The piece in two, sewn together again at the split: both parts are cut from what it was cut from and keep its seams.
 * In other sizes the line lies at the same share of the piece. A piece on the fold split along it gives one part
 * on the fold and a mirrored pair.
 */
export function splitPiece(plan: CoatPlan, pieceId: string, split: Split, text = inMm): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const named = namesOf(plan, piece, split);
  if (!named.ok) return named;
  const outside = lineProblem(piece, split.direction, split.distanceMm, text);
  if (outside) return err(outside);
  const names = named.value;
  const farId = freePieceId(plan, names[1]);
  const share = split.distanceMm / lineRoomMm(piece, split.direction);
  const cutName = freeName(
    givenName('edge', 'split'),
    piece.outline.edges.map((edge) => edge.name),
  );
  const seam = splitSeam(plan, names);
  const mirrors = mirrorSeams(plan, piece, names[1]);
  const parted = inEverySize(plan, (pieces) => {
    const own = pieces.find((each) => each.id === pieceId);
    if (!own) return ok(pieces);
    const distanceMm = own === piece ? split.distanceMm : share * lineRoomMm(own, split.direction);
    const parts = partsOf(own, { ...split, distanceMm, names }, cutName, text);
    if (!parts.ok) return parts;
    const [near, far] = parts.value;
    const sewn = [
      withSeam(near, cutName, seam?.id ?? null),
      withOtherSeams(withSeam({ ...far, id: farId }, cutName, seam?.id ?? null), near, mirrors),
    ];
    return ok(pieces.flatMap((each) => (each === own ? sewn : [each])));
  });
  if (!parted.ok) return parted;
  const parts = parted.value.pieces.filter((each) => each.id === pieceId || each.id === farId);
  const placed = withPlacesOf(plan, parted.value, pieceId, (edge) => placesOnParts(parts, piece, edge));
  const used = mirrors.filter(({ copy }) =>
    parts.some((part) => part.outline.edges.some((edge) => edge.seam === copy.id)),
  );
  const after = {
    ...placed,
    seams: [...placed.seams, ...(seam ? [seam] : []), ...used.map(({ copy }) => copy)],
  };
  const place = linePlaceWords(piece, split.direction, split.distanceMm, text);
  const done = say('split.split-into-and-with-of-allowance', {
    pieceName: piece.name,
    place,
    names: names[0],
    names2: names[1],
    text: text(split.allowanceMm),
  });
  return ok({ plan: after, said: [done, ...unfitted(plan, after)].join(' ') });
}

function namesOf(plan: CoatPlan, piece: Piece, split: Split): Result<readonly [string, string]> {
  const names = [split.names[0].trim(), split.names[1].trim()] as const;
  // The whole piece's own name is free once it is split.
  const problems = names.flatMap((name): Problem[] => {
    const problem = name === piece.name ? null : pieceNameProblem(plan, name, 'part');
    return problem ? [problem] : [];
  });
  if (names[0].toLowerCase() === names[1].toLowerCase() && problems.length === 0) {
    problems.push({
      where: say('split.both-parts-of', { pieceName: piece.name }),
      what: say('split.have-one-name'),
      fix: say('split.rename-one-of-them'),
    });
  }
  return problems.length > 0 ? err(...problems) : ok(names);
}

/** Near and far part of a piece, still without ids of their own. */
function partsOf(
  piece: Piece,
  split: Split,
  cutName: string,
  text: LengthText,
): Result<readonly [Piece, Piece]> {
  const line = lineAt(piece, split.direction, split.distanceMm);
  const cut = outlineCut(piece.outline, line, cutName);
  if (cut.kind === 'not parted') {
    return err({
      where: say('split.the-line', {
        linePlaceWords: linePlaceWords(piece, split.direction, split.distanceMm, text),
      }),
      what: cut.runsAlongEdge
        ? say('split.runs-along-an-edge-of', { pieceName: piece.name })
        : say('split.passes-the-outline-of-times', {
            pieceName: piece.name,
            crossingCount: cut.crossingCount,
          }),
      fix: say('split.choose-a-line-that-crosses-the'),
    });
  }
  const isTurned = split.direction === 'along' && isMeasuredFromHighY(piece);
  const [near, far] = isTurned ? [cut.high, cut.low] : [cut.low, cut.high];
  return ok([
    partPiece(piece, near, split.names[0], split.allowanceMm),
    partPiece(piece, far, split.names[1], split.allowanceMm),
  ]);
}

function partPiece(piece: Piece, part: OutlinePart, name: string, allowanceMm: number): Piece {
  const edges = part.outline.edges.map((edge) =>
    edge.name === part.cutEdge ? { ...edge, allowanceMm } : edge,
  );
  const fold = piece.foldEdge;
  const keepsFold = fold !== null && edges.some((edge) => edge.name === fold);
  const isLoose = fold !== null && !keepsFold;
  return {
    ...piece,
    name,
    outline: { ...part.outline, edges },
    foldEdge: keepsFold ? fold : null,
    cutCount: isLoose ? piece.cutCount * 2 : piece.cutCount,
    isMirrored: isLoose || piece.isMirrored,
    notches: piece.notches.flatMap((notch) => {
      const place = placeOnPart(part, notch.edge, notch.atMm);
      return place ? [place] : [];
    }),
  };
}

function withSeam(piece: Piece, edgeName: string, seam: string | null): Piece {
  const edges = piece.outline.edges.map((edge) => (edge.name === edgeName ? { ...edge, seam } : edge));
  return { ...piece, outline: { ...piece.outline, edges } };
}

/** An edge that meets its own mirror image does so in both parts: the far one in a seam of its own. */
function withOtherSeams(far: Piece, near: Piece, mirrors: readonly { of: string; copy: Seam }[]): Piece {
  const edges = far.outline.edges.map((edge) => {
    const mirror = mirrors.find(({ of }) => of === edge.seam);
    const isInBoth = near.outline.edges.some((other) => other.seam === edge.seam);
    return mirror && isInBoth ? { ...edge, seam: mirror.copy.id } : edge;
  });
  return { ...far, outline: { ...far.outline, edges } };
}

function mirrorSeams(plan: CoatPlan, piece: Piece, farName: string): { of: string; copy: Seam }[] {
  const taken = plan.seams.map((seam) => seam.id);
  const labels = plan.seams.map((seam) => seam.label);
  return seamWalk(plan).flatMap((report) => {
    if (report.sides !== 'mirror' || report.first[0]?.pieceId !== piece.id) return [];
    const seam = plan.seams.find((each) => each.id === report.seamId)!;
    const id = freeName(`${seam.id} ${farName}`, taken);
    const label = freeName(`${seam.label}, ${farName}`, labels);
    return [{ of: seam.id, copy: { ...seam, id, label } }];
  });
}

/** Sewn as most seams of the plan are; null where the plan has no thread to sew with. */
function splitSeam(plan: CoatPlan, names: readonly [string, string]): Seam | null {
  const like = maxUsed(plan.seams);
  const threadSlotId = like?.threadSlotId ?? plan.slots.find((slot) => slot.kind === 'thread')?.id;
  if (threadSlotId === undefined) return null;
  const label = say('split.to', { names: names[0], names2: names[1] });
  return {
    id: freeName(
      label.toLowerCase(),
      plan.seams.map((seam) => seam.id),
    ),
    label: freeName(
      label,
      plan.seams.map((seam) => seam.label),
    ),
    stitch: like?.stitch ?? '301',
    threadSlotId,
    overcast: like?.overcast ?? null,
    topstitchRowCount: 0,
  };
}

function maxUsed(seams: readonly Seam[]): Seam | undefined {
  const key = (seam: Seam) => `${seam.stitch} ${seam.threadSlotId} ${seam.overcast}`;
  const count = (seam: Seam) => seams.filter((other) => key(other) === key(seam)).length;
  return seams.reduce<Seam | undefined>(
    (max, seam) => (max && count(max) >= count(seam) ? max : seam),
    undefined,
  );
}

/** Where an edge of the whole came to lie: by name, as parts keep it; an edge cut out of a part's middle counts twice. */
function placesOnParts(parts: readonly Piece[], whole: Piece, edgeName: string): EdgePlace[] {
  const seam = whole.outline.edges.find((edge) => edge.name === edgeName)?.seam ?? null;
  return parts.flatMap((part) =>
    part.outline.edges
      .filter(
        (edge) =>
          (edge.name === edgeName || edge.name.startsWith(`${edgeName} `)) && (edge.seam ?? null) === seam,
      )
      .filter(
        (edge) => edge.name === edgeName || !whole.outline.edges.some((other) => other.name === edge.name),
      )
      .map((edge) => ({ pieceId: part.id, edge: edge.name })),
  );
}
