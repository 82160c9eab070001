/**
 * Bindings and ribs: pieces whose length follows from the edges that they are sewn to. A straight binding is cut in
 * strips and joined on the diagonal; a bias one as one long spiral from a square; a rib in one length, shorter than its
 * edge and stretched on.
 */
import { say } from '../../wording/say.ts';
import { measureIn } from '../../measure/basis.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { Band, CoatPlan, Piece } from '../model/coat-plan.ts';
import { edgesLengthMm } from '../geometry/edge-lengths.ts';
import { type Edited, notInPlan } from './edited.ts';
import { freePieceId, inEverySize, pieceNameProblem } from './every-size.ts';
import { shapeOutline } from './pieces/shapes.ts';

/** A rib is cut to 75 to 85 % of its edge: common practice, no source; sewing.org has two thirds to three quarters. */
export const ribRatios = { min: 2 / 3, usual: 0.8, max: 0.85 } as const;

/** A seam of 1/4 in on two sides of the square is lost when it is sewn to a tube: common practice, no source. */
const tubeSeamsMm = 12.7;

/** Squares are cut to the next 5 mm. */
const squareStepMm = 5;

/** What is cut for a band in one coat. */
export interface BandCut {
  /** Edges that one band is sewn to, together. */
  readonly edgesMm: number;
  readonly bandCount: number;
  /** One band with its ends. */
  readonly bandMm: number;
  /** Of one band; 1 for a rib or a bias binding. */
  readonly stripCount: number;
  readonly stripMm: number;
  /** The square that a bias binding of all bands is cut from; null for the others. */
  readonly squareMm: number | null;
}

/** Null where the pieces of a size have not the edges. */
export function bandCut(pieces: readonly Piece[], band: Band): BandCut | null {
  const edgesMm = edgesLengthMm(pieces, band.edges, !band.isEach);
  if (edgesMm === null || band.edges.length === 0) return null;
  const bandMm = edgesMm * band.lengthRatio + band.endsMm;
  const first = pieces.find(({ id }) => id === band.edges[0]!.pieceId);
  const bandCount = band.isEach ? (first?.cutCount ?? 1) : 1;
  const whole = { edgesMm, bandCount, bandMm, stripCount: 1, stripMm: bandMm, squareMm: null };
  switch (band.kind) {
    case 'rib':
      return whole;
    case 'bias binding':
      return { ...whole, squareMm: biasSquareMm(bandMm * bandCount, band.cutWidthMm) };
    case 'straight binding':
      return { ...whole, ...strips(bandMm, band.cutWidthMm, band.stripMm) };
    default:
      return band.kind satisfies never;
  }
}

/**
 * Side of the square that gives so much continuous bias binding: its area is length x width, and two seams.
 * lengthMm, widthMm: above 0, else it throws. Source: makers' rule, square root of length x width, rounded up.
 */
export function biasSquareMm(lengthMm: number, widthMm: number): number {
  if (!(lengthMm > 0 && widthMm > 0)) throw new RangeError(`a binding of ${lengthMm} by ${widthMm} mm`);
  return Math.ceil((Math.sqrt(lengthMm * widthMm) + tubeSeamsMm) / squareStepMm) * squareStepMm;
}

/** The fewest equal strips no longer than stripMm; each diagonal join takes the strip's width. */
function strips(bandMm: number, widthMm: number, stripMm: number | null) {
  if (stripMm === null || bandMm <= stripMm || stripMm <= widthMm) return { stripCount: 1, stripMm: bandMm };
  const stripCount = Math.ceil((bandMm - widthMm) / (stripMm - widthMm) - 1e-9);
  return { stripCount, stripMm: (bandMm + (stripCount - 1) * widthMm) / stripCount };
}

/** The band as it is cut for the pieces of its size; as it was where they have not its edges. */
function renewed(piece: Piece, pieces: readonly Piece[]): Piece {
  const cut = piece.band ? bandCut(pieces, piece.band) : null;
  if (!piece.band || !cut) return piece;
  const { squareMm, stripMm, stripCount, bandCount } = cut;
  const across = piece.band.kind === 'rib';
  const drawn =
    squareMm !== null
      ? shapeOutline({ kind: 'rectangle', lengthMm: squareMm, widthMm: squareMm }, 0)
      : shapeOutline(
          {
            kind: 'rectangle',
            // A rib stretches across the cloth, so its length lies that way.
            lengthMm: across ? piece.band.cutWidthMm : stripMm,
            widthMm: across ? stripMm : piece.band.cutWidthMm,
          },
          0,
        );
  // Its edges keep the names that they were given, in whatever language that was.
  const edges = drawn.edges.map((edge, index) => ({
    ...edge,
    name: piece.outline.edges[index]?.name ?? edge.name,
  }));
  return {
    ...piece,
    outline: { ...drawn, edges },
    cutCount: squareMm === null ? stripCount * bandCount : 1,
  };
}

/** Every band made anew, in each size, after a change of what it is sewn to. */
export function withBandsRenewed(plan: CoatPlan): CoatPlan {
  const anew = (pieces: readonly Piece[]): readonly Piece[] =>
    pieces.some(({ band }) => band) ? pieces.map((piece) => renewed(piece, pieces)) : pieces;
  return {
    ...plan,
    pieces: anew(plan.pieces),
    ...(plan.sizes && { sizes: plan.sizes.map((size) => ({ ...size, pieces: anew(size.pieces) })) }),
  };
}

export interface NewBand {
  readonly name: string;
  readonly slotId: string;
  readonly band: Band;
}

/** A binding or a rib more, cut from a slot's cloth, in every size. */
export function addBand(plan: CoatPlan, added: NewBand): Result<Edited> {
  const name = added.name.trim();
  const { band } = added;
  const slot = plan.slots.find(({ id }) => id === added.slotId);
  const problems: (Problem | null)[] = [
    pieceNameProblem(plan, name, 'band'),
    slot ? null : notInPlan('slot', added.slotId),
    slot && slot.kind !== 'cloth'
      ? { where: slot.name, what: say('bands.is-no-cloth'), fix: say('bands.choose-a-cloth-such-as-the') }
      : null,
    bandCut(plan.pieces, band) === null
      ? {
          where: say('bands.the-edges-of', { name: name || say('bands.the-band') }),
          what: say('bands.are-missing'),
          fix: say('bands.choose-what-it-is-sewn-to'),
        }
      : null,
    measureProblem(say('bands.width-of-as-cut', { name }), band.cutWidthMm, 5, 500),
    measureProblem(say('bands.length-of-over-that-of-its', { name }), band.lengthRatio, 0.3, 1.5),
    measureProblem(say('bands.what-is-added-for-the-ends', { name }), band.endsMm, 0, 1000),
    band.stripMm === null
      ? null
      : measureProblem(say('bands.longest-strip-of', { name }), band.stripMm, 100, 1e5),
  ];
  const wrong = problems.filter((problem) => problem !== null);
  if (wrong.length > 0) return err(...wrong);
  const blank: Piece = {
    id: freePieceId(plan, name),
    name,
    outline: shapeOutline({ kind: 'rectangle', lengthMm: 100, widthMm: band.cutWidthMm }, 0),
    cutCount: 1,
    isMirrored: false,
    foldEdge: null,
    turns: band.kind === 'rib' ? 'grain' : 'free',
    notches: [],
    cutFrom: [{ slotId: added.slotId, plyCount: 1 }],
    quilted: null,
    band,
  };
  const after = inEverySize(plan, (pieces) => ok([...pieces, renewed(blank, pieces)]));
  if (!after.ok) return after;
  return ok({ plan: after.value, said: say('bands.added', { name }) });
}

function measureProblem(where: string, value: number, min: number, max: number): Problem | null {
  if (value >= min && value <= max) return null;
  return {
    where,
    what: say('bands.is-nothing-that-can-be-cut'),
    fix: say('bands.type-a-value-from-to', { min, max }),
  };
}

/** How the band is cut, a sentence or two with measures as measureIn writes them; null for no band. */
export function bandWords(piece: Piece, pieces: readonly Piece[]): string | null {
  const cut = piece.band ? bandCut(pieces, piece.band) : null;
  if (!piece.band || !cut) return null;
  const { kind, cutWidthMm, lengthRatio, isEach } = piece.band;
  const one = say('bands.long-and-wide-as-cut', {
    measureIn: measureIn('length', cut.bandMm),
    measureIn2: measureIn('length', cutWidthMm),
  });
  const each =
    isEach && cut.bandCount > 1
      ? say('bands.bands-each', { bandCount: cut.bandCount, one })
      : say('bands.one-band', { one });
  switch (kind) {
    case 'rib':
      return say('bands.of-the-that-it-is-stretched', {
        each,
        lengthRatio: Math.round(lengthRatio * 100),
        measureIn: measureIn('length', cut.edgesMm),
      });
    case 'bias binding':
      return say('bands.as-a-spiral-from-a-square', { each, measureIn: measureIn('length', cut.squareMm!) });
    case 'straight binding':
      return cut.stripCount === 1
        ? say('bands.in-one-strip', { each })
        : say('bands.from-strips-of-joined-on-the', {
            each,
            stripCount: cut.stripCount,
            measureIn: measureIn('length', cut.stripMm),
          });
    default:
      return kind satisfies never;
  }
}
