/** The lays of a plan as a cutting sheet: length by length what lies where, and how each piece is quilted. */
import { say } from '../../wording/say.ts';
import type { ProposedSlot } from '../../cover/cutting-proposal.ts';
import type { Estimate } from '../estimate.ts';
import { type Laid, pieceOf, pieceTable, placementTable } from './lay-tables.ts';
import { type Ring, ringBox, ringMoved, ringPoints, ringTurned } from '../../geometry/ring.ts';
import { placedRing } from '../../lay/lay-svg.ts';
import type { SlotLay } from '../../lay/plan-lay.ts';
import { takenMm } from '../../lay/washed.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import { showQuantity } from '../../measure/show.ts';
import {
  type CuttingPart,
  type CuttingSheet,
  lowerEdge,
  type SheetPiece,
} from '../../paper/cutting-sheet.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';
import { cutRing, edgeIndexOf, edgePoints } from '../../plan/geometry/outline-ring.ts';
import type { Need, ShapeToCut } from '../../requirement/need.ts';
import { noShrinkage } from '../../stash/shrinkage.ts';
import {
  type Item,
  type ItemOnShelf,
  type LengthOnShelf,
  lengthName,
  type LotOnShelf,
} from '../../stash/stash.ts';

export interface CuttingSheetSources {
  readonly plan: CoatPlan;
  readonly needs: readonly Need[];
  /** In the order of the sheet; a length is named once for each slot that is cut from it. */
  readonly lays: readonly SlotLay[];
  readonly shelf: readonly ItemOnShelf[];
}

/** The lays that a maker cuts by: on the stash where a slot has an item, else on cloth of any length. */
export function laysToCut({ lays, cover }: Pick<Estimate, 'lays' | 'cover'>): readonly SlotLay[] {
  return cover.flatMap(
    ({ slotId, lay }) => lay ?? lays.find((candidate) => candidate.slotId === slotId) ?? [],
  );
}

/** What a cutting books of them: the slots that are cut, and of their lays what lies on the shelf. */
export function proposedSheet(
  { plan, shelf }: Pick<CuttingSheetSources, 'plan' | 'shelf'>,
  slots: readonly ProposedSlot[],
  system: MeasureSystem,
): CuttingSheet {
  const laid = slots.flatMap((slot) => slot.laid ?? []);
  const needs = laid.map(({ need }) => need);
  const onShelf = laid.map(({ lay }) => withoutBought(lay));
  return cuttingSheet({ plan, shelf, needs, lays: onShelf }, system);
}

function withoutBought(slotLay: SlotLay): SlotLay {
  const { job, result } = slotLay;
  const usedLengthMm = result.usedLengthMm.map((usedMm, index) =>
    job.lengths[index]?.lengthMm === null ? 0 : usedMm,
  );
  return { ...slotLay, result: { ...result, usedLengthMm } };
}

/** One part for each length that pieces lie on; none where nothing is laid. */
export function cuttingSheet(sources: CuttingSheetSources, system: MeasureSystem): CuttingSheet {
  const { plan, lays } = sources;
  const usedBy = new Map<string, number>();
  const parts = lays.flatMap((slotLay) =>
    slotLay.job.lengths.flatMap((length, index) => {
      const usedMm = slotLay.result.usedLengthMm[index] ?? 0;
      if (usedMm <= 0) return [];
      const startMm = usedBy.get(length.id) ?? 0;
      if (length.lengthMm !== null) usedBy.set(length.id, startMm + takenMm(slotLay, index));
      return [cuttingPart(sources, slotLay, { index, usedMm, startMm }, system)];
    }),
  );
  const size = plan.size === '' || plan.sizes?.length ? '' : say('lay-sheets.size', { planCount: plan.size });
  return { title: say('lay-sheets.cutting-sheet', { planName: plan.name, size }), system, parts };
}

interface UsedLength {
  readonly index: number;
  readonly usedMm: number;
  /** What earlier slots cut from the start of the same length, as it lies on the shelf. */
  readonly startMm: number;
}

function cuttingPart(
  sources: CuttingSheetSources,
  slotLay: SlotLay,
  used: UsedLength,
  system: MeasureSystem,
): CuttingPart {
  const { plan, shelf } = sources;
  const { job, slotId } = slotLay;
  const slot = slotById(plan, slotId);
  const item = shelf.find((onShelf) => onShelf.item.id === slot.itemId)?.item;
  const length = job.lengths[used.index]!;
  const lost = slotLay.washed?.[used.index] ?? noShrinkage;
  const selvageMm = item?.kind === 'cloth' ? (item.facts.selvageMm ?? 0) * (1 - lost.acrossRatio) : 0;
  const isFolded = job.spread === 'folded';
  const laid = laidOn(sources, slotLay, used.index);
  const ground = {
    widthMm: isFolded ? length.widthMm / 2 : length.widthMm,
    selvageMm,
    isFolded,
  };
  const placed = { lowMm: isFolded ? 0 : selvageMm, edge: lowerEdge(ground), system };
  return {
    ...ground,
    title: `${sentenceCase(slot.name)}: ${itemWords(item)}`,
    facts: factsOf(sources, slotLay, { ...used, selvageMm }, system),
    usedMm: used.usedMm,
    flaws: length.flaws.filter((flaw) => flaw.x < used.usedMm),
    pieces: laid.map((each, index) => sheetPiece(plan, each, index + 1)),
    tables: [placementTable(plan, laid, placed), pieceTable(plan, slotId, laid, system)],
  };
}

function itemWords(item: Item | undefined): string {
  if (!item) return say('lay-sheets.cloth-still-to-be-chosen');
  return item.colour === '' ? item.name : `${item.name}, ${item.colour}`;
}

/** In the order in which a maker meets them, from the start of the length and from its lower edge. */
function laidOn({ needs }: CuttingSheetSources, { slotId, job, result }: SlotLay, index: number): Laid[] {
  const need = needs.find((candidate) => candidate.slotId === slotId);
  const shapes = need?.kind === 'shapes' ? need.shapes : [];
  const counts = new Map<number, number>();
  const all = result.placements
    .map((placement) => ({ placement, ring: placedRing(job, placement) }))
    .map((each) => ({ ...each, box: ringBox(each.ring) }))
    .sort(
      (a, b) => a.placement.length - b.placement.length || a.box.minX - b.box.minX || a.box.minY - b.box.minY,
    )
    .flatMap(({ placement, ring }) => {
      const shape = shapes[placement.shape];
      if (!shape) return [];
      const copy = (counts.get(placement.shape) ?? 0) + 1;
      counts.set(placement.shape, copy);
      return [{ placement, ring, shape, copy }];
    });
  return all
    .filter(({ placement }) => placement.length === index)
    .map((each) => ({ ...each, copyCount: counts.get(each.placement.shape) ?? each.copy }));
}

function sheetPiece(plan: CoatPlan, { placement, shape, ring }: Laid, number: number): SheetPiece {
  const placed = (own: Ring) =>
    ringPoints(ringMoved(ringTurned(own, placement.turnDeg, placement.mirrored), placement.x, placement.y));
  const fold = foldLine(plan, shape);
  return {
    number,
    name: shape.name,
    ring: ringPoints(ring),
    ...(shape.keptRing && { keptRing: placed(shape.keptRing) }),
    ...(fold && { fold: placed(fold) }),
    grainDeg: placement.turnDeg,
  };
}

/** The edge that lies on the fold, as long as the shape is cut; null for a piece without one. */
function foldLine(plan: CoatPlan, shape: ShapeToCut): Ring | null {
  const piece = pieceOf(plan, shape)?.piece;
  if (!piece?.foldEdge || shape.carries) return null;
  const drawn = ringBox(cutRing(piece.outline, piece.foldEdge));
  const cut = ringBox(shape.keptRing ?? shape.ring);
  const along = (cut.maxX - cut.minX) / (drawn.maxX - drawn.minX);
  const across = (cut.maxY - cut.minY) / (drawn.maxY - drawn.minY);
  const points = edgePoints(piece.outline, edgeIndexOf(piece.outline, piece.foldEdge));
  const [from, to] = [points[0]!, points[points.length - 1]!];
  return Float64Array.of(from.x * along, from.y * across, to.x * along, to.y * across);
}

function factsOf(
  { shelf }: CuttingSheetSources,
  slotLay: SlotLay,
  { index, usedMm, startMm, selvageMm }: UsedLength & { readonly selvageMm: number },
  system: MeasureSystem,
): string {
  const length = slotLay.job.lengths[index]!;
  const lost = slotLay.washed?.[index] ?? noShrinkage;
  const long = (mm: number) =>
    showQuantity('length', mm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 2 });
  const wide = (mm: number) => showQuantity('length', mm, { system, unit: { metric: 'cm', imperial: 'in' } });
  const onShelf = length.lengthMm === null ? null : lengthOnShelf(shelf, length.id);
  const which = onShelf
    ? [
        sentenceCase(lengthName(onShelf.length)),
        onShelf.lot.dyeLot === '' ? '' : say('lay-sheets.dye-lot', { dyeLot: onShelf.lot.dyeLot }),
        onShelf.item.place,
      ]
    : [say('common.to-buy-2')];
  const width = length.widthMm + 2 * selvageMm;
  return [
    `${which.filter(Boolean).join(', ')}.`,
    selvageMm > 0
      ? say('lay-sheets.wide-between-the-selvages', { wide: wide(width), wide2: wide(length.widthMm) })
      : say('lay-sheets.wide', { wide: wide(width) }),
    length.lengthMm === null
      ? say('lay-sheets.used', { long: long(usedMm) })
      : say('lay-sheets.of-used', { long: long(usedMm), long2: long(length.lengthMm) }),
    lost.alongRatio + lost.acrossRatio > 0
      ? say('lay-sheets.wash-it-first-all-measures-are', { long: long(takenMm(slotLay, index)) })
      : '',
    startMm > 0 ? say('lay-sheets.begin-after-the-first-which-another', { long: long(startMm) }) : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function lengthOnShelf(
  shelf: readonly ItemOnShelf[],
  lengthId: string,
): { readonly item: Item; readonly lot: LotOnShelf; readonly length: LengthOnShelf } | null {
  for (const { item, lots } of shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (length) return { item, lot, length };
    }
  }
  return null;
}
