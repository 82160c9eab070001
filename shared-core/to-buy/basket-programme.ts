/**
 * The cheapest basket as an integer programme. For each offer and each of its prices a count and a yes or no, for
 * each way to close a cut gap a yes or no, for each supplier whether it delivers and whether it delivers free.
 * The solver decides the yes and no and the counts; what they cost is added up in integers elsewhere.
 */
import { leastUnits, type Offer } from '../stash/offer.ts';
import { type Supplier, supplierKey } from '../stash/supplier.ts';
import { amountDust, contentOf, type Demand, isLongEnough, unitsAlone } from './demand.ts';
import type { Column, Programme, Row } from './programme.ts';
import type { Way } from './ways.ts';

/** What is decided: the way for each cut demand, and the units of each offer that is bought. */
export interface Choice {
  readonly ways: ReadonlyMap<Demand, Way>;
  readonly counts: ReadonlyMap<Offer, number>;
}

/** What a basket may not do, beside the rules that always hold. */
export interface Limits {
  readonly maxSuppliers?: number;
  /** Items are then bought from several offers even where they are seen. */
  readonly isMixed?: boolean;
}

type Term = readonly [column: number, factor: number];

interface OfferColumns {
  readonly offer: Offer;
  readonly demand: Demand;
  readonly tiers: readonly {
    readonly count: number;
    readonly isTaken: number;
    readonly priceMinor: number;
  }[];
}

export interface BasketProgramme {
  readonly programme: Programme;
  readonly choiceOf: (numbers: readonly number[]) => Choice;
}

/** Every demand must have something that closes it, else it throws. */
export function basketProgramme(
  demands: readonly Demand[],
  suppliers: readonly Supplier[],
  limits: Limits = {},
): BasketProgramme {
  const columns: Column[] = [];
  const rows: Row[] = [];
  const column = (cost: number, max: number): number => columns.push({ cost, min: 0, max }) - 1;
  const row = (terms: readonly Term[], min: number | null, max: number | null): void => {
    rows.push({ terms, min, max });
  };
  const known = new Map(suppliers.map((supplier) => [supplierKey(supplier.name), supplier]));
  const bySupplier = new Map<string, OfferColumns[]>();
  const offerColumns: OfferColumns[] = [];
  const wayColumns: { readonly way: Way; readonly demand: Demand; readonly column: number }[] = [];

  for (const demand of demands) {
    const here = offersOf(demand).map((offer): OfferColumns => {
      const supplier = known.get(supplierKey(offer.supplier));
      const max = maxUnits(demand, offer, supplier);
      const prices = [
        { fromCount: leastUnits(offer), priceMinor: offer.priceMinor },
        ...(offer.breaks ?? []).map((each) => ({
          ...each,
          fromCount: Math.max(each.fromCount, leastUnits(offer)),
        })),
      ];
      const tiers = prices.map(({ fromCount, priceMinor }, index) => {
        // A price ends where the next one begins, which makes the programme much quicker to prove.
        const next = prices[index + 1]?.fromCount;
        const maxHere = next === undefined ? max : Math.min(max, Math.max(fromCount, next - 1));
        const count = column(priceMinor, maxHere);
        const isTaken = column(0, 1);
        row(
          [
            [count, 1],
            [isTaken, -fromCount],
          ],
          0,
          null,
        );
        row(
          [
            [count, 1],
            [isTaken, -maxHere],
          ],
          null,
          0,
        );
        return { count, isTaken, priceMinor };
      });
      const one = tiers.map(({ isTaken }): Term => [isTaken, 1]);
      row(one, null, 1);
      return { offer, demand, tiers };
    });
    offerColumns.push(...here);
    for (const each of here) {
      const key = supplierKey(each.offer.supplier);
      bySupplier.set(key, [...(bySupplier.get(key) ?? []), each]);
    }
    if (demand.kind === 'cut') {
      const ways = demand.ways.map((way) => ({
        way,
        demand,
        column: column(0, 1),
      }));
      wayColumns.push(...ways);
      row(
        ways.map((each): Term => [each.column, 1]),
        1,
        1,
      );
      for (const { offer, tiers } of here) {
        const counts = tiers.map(({ count }): Term => [count, 1]);
        const taking = ways.flatMap(({ way, column }): Term[] => {
          const part = way.parts.find((candidate) => candidate.offer === offer);
          return part ? [[column, -part.unitCount]] : [];
        });
        row([...counts, ...taking], 0, null);
        // Nothing is bought of an offer that the way taken does not cut from.
        for (const { isTaken } of tiers) {
          row([[isTaken, 1], ...taking.map(([column]): Term => [column, -1])], null, 0);
        }
      }
    } else {
      for (const { minLengthMm, amount } of demand.wanted) {
        const holding = here
          .filter(({ offer }) => isLongEnough(offer, minLengthMm))
          .flatMap(({ offer, tiers }) => tiers.map(({ count }): Term => [count, contentOf(offer) ?? 0]));
        row(holding, amount - amountDust, null);
      }
      if (demand.leastUnitCount > 0) {
        const counts = here.flatMap(({ tiers }) => tiers.map(({ count }): Term => [count, 1]));
        row(counts, demand.leastUnitCount, null);
      }
      if (demand.isOneLot && !limits.isMixed) {
        row(
          here.flatMap(({ tiers }) => tiers.map(({ isTaken }): Term => [isTaken, 1])),
          null,
          1,
        );
      }
    }
  }

  const delivering: Term[] = [];
  for (const [key, offers] of bySupplier) {
    const supplier = known.get(key);
    const deliveryMinor = supplier?.deliveryMinor ?? 0;
    const isUsed = column(deliveryMinor, 1);
    delivering.push([isUsed, 1]);
    for (const { tiers } of offers) {
      row([...tiers.map(({ isTaken }): Term => [isTaken, 1]), [isUsed, -1]], null, 0);
    }
    const freeFromMinor = supplier?.freeFromMinor ?? null;
    if (freeFromMinor === null || deliveryMinor === 0) continue;
    const isFree = column(-deliveryMinor, 1);
    const goods = offers.flatMap(({ tiers }) =>
      tiers.map(({ count, priceMinor }): Term => [count, priceMinor]),
    );
    row([...goods, [isFree, -freeFromMinor]], 0, null);
    row(
      [
        [isFree, 1],
        [isUsed, -1],
      ],
      null,
      0,
    );
  }
  if (limits.maxSuppliers !== undefined) row(delivering, null, limits.maxSuppliers);

  return {
    programme: { columns, rows },
    choiceOf: (numbers) => ({
      ways: new Map(
        wayColumns.filter(({ column }) => numbers[column] === 1).map(({ demand, way }) => [demand, way]),
      ),
      counts: new Map(
        offerColumns
          .map(
            ({ offer, tiers }) =>
              [offer, tiers.reduce((sum, { count }) => sum + numbers[count]!, 0)] as const,
          )
          .filter(([, count]) => count > 0),
      ),
    }),
  };
}

/** Offers that may close a demand, each once. */
export function offersOf(demand: Demand): readonly Offer[] {
  if (demand.kind === 'amount') return demand.offers;
  return [...new Set(demand.ways.flatMap((way) => way.parts.map(({ offer }) => offer)))];
}

/**
 * More units than this of one offer are never worth it: those that close the demand alone, or reach its last price
 * break, and on top those that carry the delivery's goods over the sum from which it is free.
 */
function maxUnits(demand: Demand, offer: Offer, supplier: Supplier | undefined): number {
  const closing =
    demand.kind === 'cut'
      ? Math.max(
          ...demand.ways.flatMap((way) =>
            way.parts.filter((part) => part.offer === offer).map((part) => part.unitCount),
          ),
        )
      : Math.max(
          demand.leastUnitCount,
          ...demand.wanted.map(({ amount }) => Math.ceil(amount / (contentOf(offer) ?? 1))),
        );
  const lowestMinor = offer.breaks?.at(-1)?.priceMinor ?? offer.priceMinor;
  const forFree =
    supplier?.freeFromMinor && supplier.deliveryMinor > 0 && lowestMinor > 0
      ? Math.ceil(Math.min(supplier.freeFromMinor, supplier.deliveryMinor) / lowestMinor)
      : 0;
  return Math.max(closing, leastUnits(offer), offer.breaks?.at(-1)?.fromCount ?? 0) + forFree;
}

/** Units of one offer that close a demand alone; null where it cannot. */
export function closingAlone(demand: Demand, offer: Offer): number | null {
  if (demand.kind === 'amount') return unitsAlone(demand, offer);
  const alone = demand.ways.find((way) => way.parts.length === 1 && way.parts[0]?.offer === offer);
  return alone?.parts[0]?.unitCount ?? null;
}
