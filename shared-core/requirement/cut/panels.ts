/**
 * Quilted panels: which pieces share one, how large each layer of it is before quilting, and what is sewn on it. Their
 * lays are asked for by flow/panel-lays.ts; here is all that needs none.
 */
import { panelId, panelName } from '../../plan/model/sizes.ts';
import type { CarriedShape, Need, OnPanel, ShapeToCut } from '../need.ts';

/** Panels of one kind, alike: made of what is still to be cut from a slot. */
export interface PanelSet {
  /** Of what all its pieces have alike. */
  readonly kind: OnPanel;
  /** Null: pieces of all sizes. */
  readonly size: string | null;
  /** How many such panels. */
  readonly count: number;
  /** On one of them, in one ply. */
  readonly pieces: readonly CarriedShape[];
}

/** One layer of a panel, in its plies: what is cut of the slot before quilting. */
export interface PanelLayer {
  readonly slotId: string;
  readonly plyCount: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Panels alike, with what they are made of and what they give. */
export interface QuiltedPanel {
  readonly id: string;
  /** Null: pieces of all sizes. */
  readonly size: string | null;
  readonly count: number;
  readonly pieces: readonly {
    readonly pieceId: string;
    readonly size: string;
    readonly name: string;
    readonly count: number;
    readonly mirroredCount: number;
  }[];
  readonly layers: readonly PanelLayer[];
  /** After quilting, edges with it. */
  readonly quiltedLengthMm: number;
  readonly quiltedWidthMm: number;
  readonly direction: 'across' | 'along';
  readonly spacingMm: number;
  /** All lines of one panel. */
  readonly stitchingMm: number;
}

/** Pieces of one slot that are still to be cut, by the panels that carry them. */
export function panelSets(shapes: readonly ShapeToCut[]): readonly PanelSet[] {
  const quilted = shapes.flatMap((shape) => (shape.panel ? [{ shape, panel: shape.panel }] : []));
  return [...Map.groupBy(quilted, ({ panel }) => panel.key).values()].flatMap((alike) => {
    const kind = alike[0]!.panel;
    // Plies lie on each other: a panel of two plies gives two of each piece's.
    const left = alike.map(({ shape, panel }) => ({
      shape,
      panel,
      count: Math.ceil(shape.count / panel.plyCount),
      mirroredCount: Math.ceil(shape.mirroredCount / panel.plyCount),
    }));
    if (kind.order.coats === 'all') return [{ kind, size: null, count: 1, pieces: left.map(carried) }];
    return [...Map.groupBy(left, ({ shape }) => shape.size)].flatMap(([size, ofSize]) =>
      setsOfSize(kind, size, ofSize),
    );
  });
}

interface Left extends CarriedShape {
  readonly panel: OnPanel;
}

/** As many panels as give a whole coat each, and one more for what is over. */
function setsOfSize(kind: OnPanel, size: string, left: readonly Left[]): PanelSet[] {
  const wholeCount = Math.min(
    ...left.flatMap(({ panel: { oneCoat }, count, mirroredCount }) => [
      ...(oneCoat.count > 0 ? [Math.floor(count / oneCoat.count)] : []),
      ...(oneCoat.mirroredCount > 0 ? [Math.floor(mirroredCount / oneCoat.mirroredCount)] : []),
    ]),
  );
  const whole = left.map(({ shape, panel: { oneCoat } }) => ({ shape, ...oneCoat }));
  const rest = left
    .map(({ shape, panel: { oneCoat }, count, mirroredCount }) => ({
      shape,
      count: count - wholeCount * oneCoat.count,
      mirroredCount: mirroredCount - wholeCount * oneCoat.mirroredCount,
    }))
    .filter(({ count, mirroredCount }) => count + mirroredCount > 0);
  return [
    ...(wholeCount > 0 ? [{ kind, size, count: wholeCount, pieces: whole }] : []),
    ...(rest.length > 0 ? [{ kind, size, count: 1, pieces: rest }] : []),
  ];
}

function carried({ shape, count, mirroredCount }: CarriedShape): CarriedShape {
  return { shape, count, mirroredCount };
}

/**
 * Width that pieces may lie on once the panel is quilted: what the narrowest layer leaves of its width, edges off,
 * after it is taken up. usableMm: width of each slot's cloth or batting. 0 or less where nothing is left.
 */
export function quiltedWidthMm(
  key: string,
  needs: readonly Need[],
  usableMm: (slotId: string) => number,
): number {
  const layers = needs.flatMap((need) => {
    const panel = need.kind === 'shapes' && need.shapes.find((shape) => shape.panel?.key === key)?.panel;
    return panel ? [{ panel, availableMm: usableMm(need.slotId) }] : [];
  });
  return Math.min(
    ...layers.map(({ panel: { order, takeUp }, availableMm }) => {
      const widthMm = Math.min(availableMm, order.widthMm ?? Infinity);
      return (widthMm - 2 * order.marginMm) / (1 + takeUp.acrossRatio);
    }),
  );
}

/** A layer's cloth for one panel that is laid so long and wide after quilting. */
export function layerSize(
  panel: OnPanel,
  laid: { readonly lengthMm: number; readonly widthMm: number },
): { readonly lengthMm: number; readonly widthMm: number } {
  const edgesMm = 2 * panel.order.marginMm;
  return {
    lengthMm: laid.lengthMm * (1 + panel.takeUp.alongRatio) + edgesMm,
    widthMm: laid.widthMm * (1 + panel.takeUp.acrossRatio) + edgesMm,
  };
}

/** The shape that is cut of a slot's cloth for a set of panels; number: among those of its name. */
export function panelShape(
  set: PanelSet,
  laid: { readonly lengthMm: number; readonly widthMm: number },
  turnsDeg: readonly number[],
  number: number,
): ShapeToCut {
  // The slot's own take-up stands with its pieces.
  const panel = set.pieces[0]!.shape.panel ?? set.kind;
  const { lengthMm, widthMm } = layerSize(panel, laid);
  const id = panelId(
    set.pieces.map(({ shape }) => shape.name),
    number,
  );
  return {
    shapeId: id,
    pieceId: id,
    size: set.size ?? '',
    name: panelName(id),
    ring: Float64Array.from([0, 0, lengthMm, 0, lengthMm, widthMm, 0, widthMm]),
    areaMm2: lengthMm * widthMm,
    count: set.count * panel.plyCount,
    mirroredCount: 0,
    turnsDeg,
    carries: set.pieces,
  };
}

/** Lines over one whole panel, edges with it, mm of stitching: the first where the pieces begin to lie. */
export function panelStitchingMm(
  { direction, spacingMm, order }: OnPanel,
  laid: { readonly lengthMm: number; readonly widthMm: number },
): number {
  const [overMm, alongMm] =
    direction === 'across' ? [laid.lengthMm, laid.widthMm] : [laid.widthMm, laid.lengthMm];
  return (Math.floor(overMm / spacingMm + 1e-9) + 1) * (alongMm + 2 * order.marginMm);
}

/** Panels of one size; those of all sizes go with the size at hand. */
export function panelsOfSize(
  panels: readonly QuiltedPanel[] | undefined,
  size: string,
  isAtHand: boolean,
): readonly QuiltedPanel[] | undefined {
  return panels?.filter((panel) => (panel.size === null ? isAtHand : panel.size === size));
}
