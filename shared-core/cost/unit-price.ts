/** What a lot cost by the unit in which its kind is bought, so that purchases of different size can be held together. */
import { say } from '../wording/say.ts';
import { grouped } from '../wording/number-signs.ts';
import type { MeasureSystem } from '../measure/quantity.ts';
import { wholeShareMinor } from '../measure/money/money.ts';
import { type ItemKind, kindRecords } from '../stash/kinds.ts';
import type { Lot } from '../stash/stash.ts';

export interface PricedUnit {
  /** "m", "yd", "kg", "1,000 m", "piece". */
  readonly name: string;
  /** How much of the lot's own thousandths it is. */
  readonly milli: number;
}

/** Whole thousandths throughout, so that no float enters a price. */
export function pricedUnit(kind: ItemKind, system: MeasureSystem): PricedUnit {
  const isMetric = system === 'metric';
  const { counted } = kindRecords[kind];
  switch (counted) {
    case 'length':
      return isMetric ? { name: 'm', milli: 1_000_000 } : { name: 'yd', milli: 914_400 };
    case 'mass':
      return isMetric ? { name: 'kg', milli: 1_000_000 } : { name: 'lb', milli: 453_592 };
    case 'thread':
      return isMetric
        ? { name: `${grouped('1000')} m`, milli: 1_000_000 }
        : { name: `${grouped('1000')} yd`, milli: 914_400 };
    case 'pieces':
      return { name: say('unit-price.piece'), milli: 1000 };
    default:
      return counted satisfies never;
  }
}

export interface LotPrice {
  readonly lot: Lot;
  /** Of one unit, rounded once; for showing, never for adding up. */
  readonly unitMinor: number;
  /** Against the lot before it, as a share; null for the first, and after one that cost nothing. */
  readonly changeRatio: number | null;
}

/** Lots by their date, each with its unit price and how it moved. */
export function lotPrices(lots: readonly Lot[], unit: PricedUnit): readonly LotPrice[] {
  const byDate = [...lots].sort((a, b) =>
    a.receivedOn < b.receivedOn ? -1 : a.receivedOn > b.receivedOn ? 1 : 0,
  );
  return byDate.map((lot, index) => {
    const before = byDate[index - 1];
    const isFirst = before === undefined || before.priceMinor === 0;
    return {
      lot,
      unitMinor: wholeShareMinor(lot.priceMinor, unit.milli, lot.receivedMilli),
      changeRatio: isFirst
        ? null
        : (lot.priceMinor * before.receivedMilli) / (before.priceMinor * lot.receivedMilli) - 1,
    };
  });
}
