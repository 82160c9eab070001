/**
 * The ways in which what is cut can be bought: so much of one width, so many sheets, or sheets of two sizes.
 * Each is decided by a real lay of the missing pieces of all gaps of the item together, on just that cloth.
 */
import { say } from '../wording/say.ts';
import { ringBox } from '../geometry/ring.ts';
import { stepsUp } from '../measure/round-up.ts';
import type { LayLength } from '../lay/job.ts';
import { endlessLength, layJob, type RunLay, totalUsedMm, usableWidthMm } from '../lay/plan-lay.ts';
import { washedLength } from '../lay/washed.ts';
import { lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import type { ShapesNeed } from '../requirement/need.ts';
import { leastUnits, type Offer, offerPriceMinor } from '../stash/offer.ts';
import { areaLeftRatio, beforeWashMm, type Shrinkage } from '../stash/shrinkage.ts';
import type { Item } from '../stash/stash.ts';
import { deliveryMinor, type Supplier, supplierKey } from '../stash/supplier.ts';
import { type CutGap, type Gap, jointNeed } from './gaps.ts';

/** Units of one offer in a way, and what of them the pieces use up (mm of length; sheets that are cut are used up whole). */
export interface WayPart {
  readonly offer: Offer;
  /** Units that would do, and those that are bought: no fewer than are sold at once. */
  readonly neededCount: number;
  readonly unitCount: number;
  readonly usedAmount: number;
}

/** One way to close all gaps of a cut item. */
export interface Way {
  readonly parts: readonly WayPart[];
  /** For sheets: what of their usable area no piece lies on, mm2; null for what is sold by length. */
  readonly leftAreaMm2: number | null;
}

export type CutGapOf = Gap & { readonly needs: CutGap };

export interface WaysSources {
  readonly item: Item;
  /** All gaps of the item. */
  readonly gaps: readonly CutGapOf[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
}

/** Neither a lay nor a pair of shears is true to a millimetre; that much over a step buys no further one. */
const layDustMm = 1;

/** No coat takes more sheets than this; beyond, the shapes do not fit a sheet at all. */
const maxSheets = 60;

/** Every way there is, in the order of the offers; sheets of more than two sizes are not mixed. */
export async function waysToClose(sources: WaysSources, runLay: RunLay): Promise<readonly Way[]> {
  const ways: Way[] = [];
  const usedByWidth = new Map<number, Promise<number>>();
  for (const offer of sources.offers) {
    const { unit } = offer;
    if (unit.kind !== 'by length') continue;
    const known = usedByWidth.get(unit.widthMm) ?? usedLengthMm(sources, unit.widthMm, runLay);
    usedByWidth.set(unit.widthMm, known);
    const usedMm = await known;
    if (!Number.isFinite(usedMm)) continue;
    const neededMm = Math.max(0, usedMm + marginOf(sources.gaps) - layDustMm);
    const neededCount = Math.max(1, stepsUp(neededMm, unit.stepMm));
    ways.push({ parts: [wayPart(offer, neededCount, usedMm)], leftAreaMm2: null });
  }
  return [...ways, ...(await sheetWays(sources, ways, runLay))];
}

function wayPart(offer: Offer, neededCount: number, usedAmount: number): WayPart {
  return { offer, neededCount, unitCount: Math.max(neededCount, leastUnits(offer)), usedAmount };
}

/** Length that the missing pieces use of endless cloth of a width, as it is bought; Infinity where one of them does not fit across. */
async function usedLengthMm({ item, gaps }: WaysSources, widthMm: number, runLay: RunLay): Promise<number> {
  const known = gaps.every(({ needs }) => needs.widthMm === widthMm)
    ? gaps.reduce((sum, { needs }) => sum + needs.lengthMm, 0)
    : Infinity;
  if (gaps.length === 1 && Number.isFinite(known)) return known;
  const need = jointNeed(gaps);
  const lost = lostBeforeCutting(need.firstWash);
  const length = endlessLength(say('common.to-buy'), widthMm, item, lost);
  if (need.shapes.length === 0) return 0;
  if (need.shapes.some((shape) => !fitsOne(shape, [length]))) return known;
  const result = await runLay(
    jobOf(gaps, need, [length], item),
    say('ways.on-mm-to-buy', { names: names(gaps), widthMm }),
  );
  if (result.unplaced.length > 0) return known;
  return Math.min(known, beforeWashMm(totalUsedMm(result), lost.alongRatio));
}

function marginOf(gaps: readonly CutGapOf[]): number {
  return gaps.reduce((sum, { needs }) => sum + needs.marginMm, 0);
}

function jobOf(gaps: readonly CutGapOf[], need: ShapesNeed, lengths: readonly LayLength[], item: Item) {
  const clearanceMm = Math.max(...gaps.map(({ needs }) => needs.clearanceMm));
  return layJob(need, lengths, clearanceMm, item, 1);
}

const names = (gaps: readonly CutGapOf[]) => [...new Set(gaps.map(({ slotName }) => slotName))].join(', ');

/** Whether a shape goes on at least one of the lengths in one of its turns. */
function fitsOne(shape: ShapesNeed['shapes'][number], lengths: readonly LayLength[]): boolean {
  const box = ringBox(shape.ring);
  const alongX = box.maxX - box.minX;
  const acrossY = box.maxY - box.minY;
  return lengths.some((length) =>
    shape.turnsDeg.some((turn) => {
      const across = turn % 180 === 0 ? acrossY : alongX;
      const along = turn % 180 === 0 ? alongX : acrossY;
      return across <= length.widthMm && (length.lengthMm === null || along <= length.lengthMm);
    }),
  );
}

interface SheetOffer {
  readonly offer: Offer;
  /** As it is laid. */
  readonly length: LayLength;
  /** As it is bought. */
  readonly boughtMm: number;
  readonly lost: Shrinkage;
  readonly areaMm2: number;
}

/** Sheets of each size alone, and of two sizes together where that can be cheaper than all that is known. */
async function sheetWays(sources: WaysSources, others: readonly Way[], runLay: RunLay): Promise<Way[]> {
  const need = jointNeed(sources.gaps);
  const lost = lostBeforeCutting(need.firstWash);
  const sheets = sources.offers.flatMap((offer): SheetOffer[] => {
    const { unit } = offer;
    if (unit.kind !== 'sheet') return [];
    const widthMm = usableWidthMm(unit.widthMm, sources.item);
    const length = washedLength({ id: 'sheet', widthMm, lengthMm: unit.lengthMm, flaws: [] }, lost);
    const areaMm2 = widthMm * unit.lengthMm * areaLeftRatio(lost);
    return [{ offer, length, boughtMm: unit.lengthMm, lost, areaMm2 }];
  });
  if (sheets.length === 0) return [];
  const carried = new Map<string, Promise<Carried>>();
  const carries = (counts: readonly (readonly [SheetOffer, number])[]): Promise<Carried> => {
    const key = counts
      .map(([{ length }, count]) => `${length.widthMm} ${length.lengthMm} ${count}`)
      .sort()
      .join();
    const asked = carried.get(key) ?? lies(sources, need, counts, runLay);
    carried.set(key, asked);
    return asked;
  };
  const ways: Way[] = [];
  const alone = new Map<SheetOffer, Fewest | null>();
  for (const sheet of sheets) {
    const fewest = await fewestOf(need, sheet, [], carries, maxSheets);
    alone.set(sheet, fewest);
    if (fewest !== null) ways.push(sheetWay(need, [{ ...fewest, sheet }]));
  }
  // Sheets of two sizes come in two dye lots, which what is seen must not.
  if (sources.gaps.some(({ isSeen }) => isSeen)) return ways;
  let cheapestMinor = Math.min(...[...others, ...ways].map((way) => dearestMinor(way, sources.suppliers)));
  // With one piece on each sheet there are as many sheets as pieces.
  const pieceCount = need.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
  const maxOf = (sheet: SheetOffer) => Math.min(alone.get(sheet)?.count ?? pieceCount, maxSheets) - 1;
  for (const [index, first] of sheets.entries()) {
    for (const second of sheets.slice(index + 1)) {
      if (first.length.widthMm === second.length.widthMm && first.length.lengthMm === second.length.lengthMm)
        continue;
      for (let firstCount = 1; firstCount <= maxOf(first); firstCount++) {
        const fixed = [[first, firstCount]] as const;
        const isWorth = (secondCount: number) =>
          minMinor([...fixed, [second, secondCount]], sources.suppliers) < cheapestMinor;
        if (!isWorth(1)) break;
        const fewest = await fewestOf(need, second, fixed, carries, maxOf(second), isWorth);
        if (fewest === null) continue;
        // Where one size carries all pieces, the other is margin alone.
        const firstCut = alone.get(first)?.cutCount ?? Infinity;
        const secondCut = alone.get(second)?.cutCount ?? Infinity;
        const [cutCount, otherCut] =
          firstCount >= firstCut
            ? [firstCut, 0]
            : fewest.count >= secondCut
              ? [0, secondCut]
              : [firstCount, fewest.cutCount];
        const way = sheetWay(need, [
          { sheet: first, count: firstCount, cutCount },
          { sheet: second, count: fewest.count, cutCount: otherCut },
        ]);
        ways.push(way);
        cheapestMinor = Math.min(cheapestMinor, dearestMinor(way, sources.suppliers));
      }
    }
  }
  return ways;
}

/** What some sheets carry. */
interface Carried {
  readonly allPieces: boolean;
  /** The pieces, and beside them the margin for safety. */
  readonly allWithMargin: boolean;
}

/** By a lay of every missing piece on these sheets, the largest first. */
async function lies(
  { item, gaps }: WaysSources,
  need: ShapesNeed,
  counts: readonly (readonly [SheetOffer, number])[],
  runLay: RunLay,
): Promise<Carried> {
  const lengths = [...counts]
    .sort(([a], [b]) => b.areaMm2 - a.areaMm2)
    .flatMap(([{ length }, count]) => Array.from({ length: count }, () => length))
    .map((length, index) => ({ ...length, id: `sheet ${index + 1}` }));
  const sheetsMm = counts.reduce((sum, [{ boughtMm }, count]) => sum + boughtMm * count, 0);
  if (need.shapes.length === 0) return { allPieces: true, allWithMargin: sheetsMm >= marginOf(gaps) };
  const result = await runLay(
    jobOf(gaps, need, lengths, item),
    say('ways.on-sheets-to-buy', { names: names(gaps), lengthsCount: lengths.length }),
  );
  const allPieces = result.unplaced.length === 0;
  const { alongRatio } = lostBeforeCutting(need.firstWash);
  const restMm = sheetsMm - beforeWashMm(totalUsedMm(result), alongRatio);
  return { allPieces, allWithMargin: allPieces && restMm >= marginOf(gaps) - layDustMm };
}

/** Sheets of one size that carry all; `cutCount` of them would carry the pieces, the others are there for the margin. */
interface Fewest {
  readonly count: number;
  readonly cutCount: number;
}

/** Fewest sheets of one size that, beside the fixed ones, carry all; null where none do up to the limit. */
async function fewestOf(
  need: ShapesNeed,
  sheet: SheetOffer,
  fixed: readonly (readonly [SheetOffer, number])[],
  carries: (counts: readonly (readonly [SheetOffer, number])[]) => Promise<Carried>,
  limit: number,
  isWorth: (count: number) => boolean = () => true,
): Promise<Fewest | null> {
  const lengths = [sheet, ...fixed.map(([each]) => each)].map(({ length }) => length);
  if (need.shapes.some((shape) => !fitsOne(shape, lengths))) return null;
  let cutCount = need.shapes.length === 0 ? 0 : null;
  const openMm2 = need.areaMm2 - fixed.reduce((sum, [{ areaMm2 }, count]) => sum + areaMm2 * count, 0);
  for (let count = Math.max(1, Math.ceil(openMm2 / sheet.areaMm2 - 1e-9)); count <= limit; count++) {
    if (!isWorth(count)) return null;
    const { allPieces, allWithMargin } = await carries([...fixed, [sheet, count]]);
    if (allPieces) cutCount ??= count;
    if (allWithMargin) return { count, cutCount: cutCount ?? count };
  }
  return null;
}

function sheetWay(need: ShapesNeed, fewest: readonly (Fewest & { readonly sheet: SheetOffer })[]): Way {
  const sheetsMm2 = fewest.reduce((sum, { sheet, count }) => sum + sheet.areaMm2 * count, 0);
  return {
    parts: fewest.map(({ sheet: { offer, boughtMm }, count, cutCount }) =>
      wayPart(offer, count, cutCount * boughtMm),
    ),
    leftAreaMm2: (sheetsMm2 - need.areaMm2) / areaLeftRatio(lostBeforeCutting(need.firstWash)),
  };
}

/** A way's goods with every delivery paid. */
function dearestMinor({ parts }: Way, suppliers: readonly Supplier[]): number {
  const goods = parts.reduce((sum, { offer, unitCount }) => sum + offerPriceMinor(offer, unitCount), 0);
  return (
    goods +
    paidDelivery(
      parts.map(({ offer }) => offer),
      suppliers,
    )
  );
}

/** What sheets cost at the very least: at their last break, and making their deliveries free for all else. */
function minMinor(
  counts: readonly (readonly [SheetOffer, number])[],
  suppliers: readonly Supplier[],
): number {
  const goods = counts.reduce((sum, [{ offer }, count]) => {
    const lowest = offer.breaks?.at(-1)?.priceMinor ?? offer.priceMinor;
    return sum + count * lowest;
  }, 0);
  return (
    goods -
    paidDelivery(
      counts.map(([{ offer }]) => offer),
      suppliers,
    )
  );
}

function paidDelivery(offers: readonly Offer[], suppliers: readonly Supplier[]): number {
  const keys = new Set(offers.map(({ supplier }) => supplierKey(supplier)));
  return suppliers
    .filter(({ name }) => keys.has(supplierKey(name)))
    .reduce((sum, supplier) => sum + deliveryMinor({ ...supplier, freeFromMinor: null }, 0), 0);
}
