/** What the demo workshop's suppliers sell, priced in October 2026 in euro cents. */
import type { Offer, PriceBreak, SellingUnit } from '../stash/offer.ts';
import type { Supplier } from '../stash/supplier.ts';

function byLength(stepMm: number, widthMm: number, leastMm = stepMm): SellingUnit {
  return { kind: 'by length', stepMm, widthMm, leastMm };
}
function pack(pieceCount: number): SellingUnit {
  return { kind: 'pack', pieceCount };
}
function spool(threadM: number): SellingUnit {
  return { kind: 'spool', threadM };
}

const quillstone = 'Quillstone Cloth';
const marl = 'Marl & Wick';
const lanternhill = 'Lanternhill Battings';
const fernlow = 'Fernlow Trimmings';
const tallow = 'Tallow Lane Notions';

/** 1/8 yd. */
const eighthYardMm = 114.3;

const rows: readonly (readonly [
  item: string,
  supplier: string,
  unit: SellingUnit,
  priceMinor: number,
  pricedOn: string,
])[] = [
  ['item-peatwater', quillstone, byLength(100, 1470, 500), 115, '2026-10-12'],
  ['item-peatwater', marl, byLength(eighthYardMm, 1470), 149, '2026-10-05'],
  ['item-slatewater', marl, byLength(eighthYardMm, 1473), 158, '2026-10-05'],
  ['item-heathback', marl, byLength(100, 1500), 96, '2026-10-05'],
  ['item-emberday', marl, byLength(eighthYardMm, 1422), 134, '2026-10-05'],
  ['item-millrace', quillstone, byLength(100, 1420), 68, '2026-10-12'],
  ['item-otterslip', quillstone, byLength(100, 1400), 57, '2026-10-12'],
  ['item-otterslip', marl, byLength(500, 1400), 260, '2026-10-05'],
  ['item-wherry', marl, byLength(eighthYardMm, 1143), 92, '2026-10-05'],
  ['item-thimblefold', marl, byLength(100, 1118), 74, '2026-10-05'],
  ['item-rowanberry', marl, byLength(100, 1450), 275, '2026-10-05'],
  ['item-nettlebed', quillstone, byLength(100, 1370), 88, '2026-10-12'],
  ['item-fleecewell', lanternhill, byLength(500, 1500), 290, '2026-10-14'],
  ['item-fleecewell', marl, byLength(100, 1500), 67, '2026-10-05'],
  ['item-woolmere', lanternhill, { kind: 'sheet', widthMm: 1828.8, lengthMm: 2286 }, 3_650, '2026-10-14'],
  ['item-downdrift', lanternhill, { kind: 'by mass', stepG: 100, leastG: 200 }, 745, '2026-10-14'],
  ['item-puffball', lanternhill, { kind: 'by mass', stepG: 500, leastG: 500 }, 365, '2026-10-14'],
  ['item-spun-olive', fernlow, spool(1_000), 585, '2026-10-09'],
  ['item-spun-olive', tallow, spool(5_000), 1_890, '2026-10-07'],
  ['item-core-olive', fernlow, spool(1_371.6), 715, '2026-10-09'],
  ['item-spun-oat', fernlow, spool(500), 340, '2026-10-09'],
  ['item-sharp-75', fernlow, pack(10), 540, '2026-10-09'],
  ['item-sharp-75', tallow, pack(5), 310, '2026-10-07'],
  ['item-sharp-90', fernlow, pack(5), 270, '2026-10-09'],
  ['item-zip-long', fernlow, { kind: 'each', lengthMm: 812.8 }, 895, '2026-10-09'],
  ['item-zip-long', tallow, { kind: 'each', lengthMm: 863.6 }, 860, '2026-10-07'],
  ['item-zip-short', fernlow, { kind: 'each', lengthMm: 711.2 }, 810, '2026-10-09'],
  ['item-snap-12', fernlow, pack(50), 1_180, '2026-10-09'],
  ['item-snap-12', tallow, pack(12), 395, '2026-10-07'],
  ['item-cord', tallow, { kind: 'each', lengthMm: 1_180 }, 88, '2026-10-07'],
  ['item-toggle', tallow, pack(10), 460, '2026-10-07'],
  ['item-label', tallow, pack(100), 4_300, '2026-10-07'],
  ['item-hang-loop', tallow, pack(20), 660, '2026-10-07'],
];

/** Lower prices for many, by item and supplier. */
const breaks: readonly (readonly [item: string, supplier: string, ...breaks: PriceBreak[]])[] = [
  ['item-peatwater', quillstone, { fromCount: 150, priceMinor: 108 }, { fromCount: 300, priceMinor: 102 }],
  ['item-emberday', marl, { fromCount: 80, priceMinor: 126 }],
  ['item-spun-olive', fernlow, { fromCount: 6, priceMinor: 525 }],
  ['item-toggle', tallow, { fromCount: 3, priceMinor: 410 }],
];

export function demoOffers(): Offer[] {
  return rows.map(([itemId, supplier, unit, priceMinor, pricedOn], index) => {
    const [, , ...lower] = breaks.find(([item, of]) => item === itemId && of === supplier) ?? [];
    return {
      id: `offer-${String(index + 1).padStart(2, '0')}`,
      itemId,
      supplier,
      unit,
      priceMinor,
      pricedOn,
      ...(lower.length > 0 && { breaks: lower }),
    };
  });
}

/** What is known of the suppliers' deliveries. */
export function demoSuppliers(): Supplier[] {
  return [
    { name: quillstone, deliveryMinor: 690, freeFromMinor: 25_000, leadDays: 6 },
    { name: marl, deliveryMinor: 850, freeFromMinor: 20_000, leadDays: 4 },
    { name: lanternhill, deliveryMinor: 1_180, freeFromMinor: null, leadDays: 12 },
    { name: fernlow, deliveryMinor: 450, freeFromMinor: 6_000, leadDays: 3 },
    { name: tallow, deliveryMinor: 390, freeFromMinor: 4_000, leadDays: 5 },
  ];
}
