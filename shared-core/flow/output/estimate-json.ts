/** An estimate as plain JSON for scripts: ids with names, outlines as lists of points, one entry for each lay. */
import type { CutSheet } from '../../cost/cut-sheet.ts';
import { priceSheet } from '../../cost/price.ts';
import { marginOf } from '../../cover/held-back.ts';
import { stillEnoughSentence } from '../../cover/still-enough.ts';
import { type Estimate, type FlowSources, slotItems } from '../estimate.ts';
import { patternJson } from './pattern-json.ts';
import type { TextOptions } from './estimate-text.ts';
import { slotsBought, slotsStillFall } from '../falls-of-estimate.ts';
import { ringPoints } from '../../geometry/ring.ts';
import { type SlotLay, totalUsedMm } from '../../lay/plan-lay.ts';
import { takenInAllMm } from '../../lay/washed.ts';
import type { LayResult } from '../../lay/job.ts';
import { layStillFalls } from '../../lay/still-falls/still-falls.ts';
import { howText } from '../../measure/basis.ts';
import { slotById } from '../../plan/model/coat-plan.ts';
import { coatTotal, sizedPieceName } from '../../plan/model/sizes.ts';
import { coatsCut } from '../../stash/cutting.ts';
import {
  basketCautions,
  type BasketWordsContext,
  fewerSentence,
  whySentence,
} from '../../to-buy/basket-words.ts';
import type { BoughtBasket } from '../../to-buy/to-buy.ts';
import { needDetail } from '../../requirement/need-detail.ts';
import { sewingAdvice } from '../../requirement/sewing-advice.ts';
import { trimmingsOf } from '../../requirement/cut/trimmings.ts';

/** Keys: coat, pattern, requirement, cutting, panels, lays, cover, toBuy, cost, finished, advice. Lengths in mm, those of a lay on washed cloth where `washed` is true (`takenMm` is then what it takes of unwashed cloth, as everywhere else), amounts in the kind's unit, money in minor units. `cost.price` is null where the workshop has no rules for prices, `cost.cut` (what the cuttings took by the ledger) where nothing is cut. `stillFalls` of a lay and of toBuy is the share by which such a lay usually still gets shorter, null where it is done. */
export function estimateJson(
  sources: FlowSources & { readonly today: string },
  estimate: Estimate,
  { system, currency, pricing }: TextOptions,
  cut: CutSheet | null = null,
) {
  const { plan } = sources;
  const words: BasketWordsContext = { shelf: sources.shelf, system, currency };
  const slot = (slotId: string) => slotById(plan, slotId).name;
  const item = (itemId: string | null) =>
    sources.shelf.find((onShelf) => onShelf.item.id === itemId)?.item.name ?? null;
  const basketJson = ({ lines, totalMinor, deliveries, deliveryMinor, payMinor }: BoughtBasket) => ({
    lines: lines.map((line) => ({ item: item(line.itemId), slots: line.slotIds.map(slot), ...line })),
    totalMinor,
    basket: { goodsMinor: totalMinor, deliveryMinor, payMinor, deliveries },
  });
  const items = slotItems(sources);
  const detail = (slotId: string) =>
    inMetric(needDetail(plan, slotId, items, sources.offers, system, estimate.panels));
  return {
    coat: { id: plan.id, name: plan.name, size: plan.size, coatCount: coatTotal(plan), currency },
    pattern: patternJson(sources),
    requirement: estimate.requirement.map((need) => {
      const slotLay = estimate.lays.find(({ slotId }) => slotId === need.slotId);
      const beside = { marginAmount: marginOf(need, slotLay), detail: detail(need.slotId) };
      return need.kind === 'amount'
        ? { slot: slot(need.slotId), ...inMetric(need), ...beside }
        : {
            slot: slot(need.slotId),
            ...need,
            basis: inMetric(need.basis),
            ...beside,
            trimmings: trimmingsOf(need, items.get(need.slotId)),
            shapes: need.shapes.map(({ ring, keptRing, panel: _, carries, ...shape }) => ({
              ...shape,
              ring: ringPoints(ring),
              ...(keptRing && { keptRing: ringPoints(keptRing) }),
              ...(carries && {
                carries: carries.map(({ shape: { pieceId, size }, count, mirroredCount }) => ({
                  pieceId,
                  size,
                  count,
                  mirroredCount,
                })),
              }),
            })),
          };
    }),
    cutting: {
      coats: coatsCut(sources.cuttings ?? []),
      slots: estimate.still.map((still) => ({
        slot: slot(still.slotId),
        ...still,
        sentence: stillEnoughSentence(still, { plan, shelf: sources.shelf, system }),
      })),
    },
    panels: estimate.panels.map(({ lay, ...panel }) => ({ ...panel, lay: layJson(sources, lay, 'panel') })),
    lays: estimate.lays.map((slotLay) => layJson(sources, slotLay, 'needs')),
    cover: estimate.cover.map((slotCover) => ({
      slot: slot(slotCover.slotId),
      item: item(slotCover.itemId),
      ...slotCover,
      lay: slotCover.lay ? layJson(sources, slotCover.lay, 'stash') : null,
      substitutes: slotCover.substitutes.map((itemId) => ({ itemId, name: item(itemId) })),
    })),
    toBuy: {
      stillFalls: slotsStillFall(estimate, slotsBought(estimate), false),
      ...basketJson(estimate.toBuy),
      why: estimate.toBuy.whys.map((why) => ({ ...why, sentence: whySentence(why, words) })),
      nextBest: estimate.toBuy.fewer.map((other) => ({
        sentence: fewerSentence(estimate.toBuy, other, words),
        ...basketJson(other),
      })),
      cautions: basketCautions(estimate.toBuy, sources.today, words),
      unbuyable: estimate.toBuy.unbuyable.map((gap) => ({
        item: item(gap.itemId),
        slots: gap.slotIds.map(slot),
        ...gap,
      })),
    },
    cost: {
      ...estimate.cost,
      lines: estimate.cost.lines.map((line) => ({ slot: slot(line.slotId), ...line })),
      cut,
      price: pricing ? { rules: pricing, ...priceSheet(plan, estimate.cost, pricing) } : null,
    },
    finished: inMetric(estimate.finished),
    advice: inMetric(sewingAdvice(plan, items)),
  };
}

/** Sentences whose measures are shown in the maker's units. */
const inMakersUnits: ReadonlySet<string> = new Set(['how', 'reason', 'conflict', 'says', 'fix']);

/** The same data with every sentence on how a figure was got in metric units, as all of the JSON is. */
function inMetric<Data>(data: Data): Data {
  return JSON.parse(
    JSON.stringify(data, (key, value) => (inMakersUnits.has(key) ? howText(String(value), 'metric') : value)),
  ) as Data;
}

function layJson(sources: FlowSources, slotLay: SlotLay, on: 'needs' | 'stash' | 'panel') {
  const { slotId, job, result, washed } = slotLay;
  return {
    slotId,
    slot: slotById(sources.plan, slotId).name,
    on,
    usedLengthMm: totalUsedMm(result),
    washed: washed !== undefined,
    takenMm: takenInAllMm(slotLay),
    usedLengthsMm: result.usedLengthMm,
    floorMm: result.floorMm,
    utilisation: result.utilisation,
    seed: result.seed,
    iterations: result.iterations,
    seconds: result.seconds,
    stoppedBy: result.stoppedBy,
    stillFalls: layStillFalls(result, false),
    clearanceMm: job.clearanceMm,
    lengths: job.lengths,
    placements: placementsJson(sources, job.shapes, result),
    unplaced: result.unplaced,
  };
}

function placementsJson(sources: FlowSources, shapes: SlotLay['job']['shapes'], result: LayResult) {
  return result.placements.map((placement) => {
    const pieceId = shapes[placement.shape]?.id ?? '';
    return { pieceId, piece: sizedPieceName(sources.plan, pieceId), ...placement };
  });
}
