/** What the demo workshop bought, what lies on its shelves, and the ledger that says how it came to be so. */
import { type Flaw, type Length, type Lot, type Movement, toMilli } from '../stash/stash.ts';

interface GivenLength {
  readonly id: string;
  readonly widthMm: number;
  readonly form: Length['form'];
  /** As received, and what was cut from it since. */
  readonly receivedMm: number;
  readonly cutMm?: number;
  readonly cutOn?: string;
  readonly flaws?: readonly Flaw[];
}

interface GivenLot {
  readonly id: string;
  readonly itemId: string;
  readonly receivedOn: string;
  readonly supplier: string;
  readonly dyeLot?: string;
  readonly priceMinor: number;
  /** The lot's lengths, or what it holds where the kind has none: received, and used since. */
  readonly lengths?: readonly GivenLength[];
  readonly received?: number;
  readonly used?: number;
  readonly usedOn?: string;
}

const givenLots: readonly GivenLot[] = [
  {
    id: 'lot-peatwater-a',
    itemId: 'item-peatwater',
    receivedOn: '2026-09-08',
    supplier: 'Quillstone Cloth',
    dyeLot: 'P-2207',
    priceMinor: 18_480,
    lengths: [
      {
        id: 'length-peatwater-roll',
        widthMm: 1470,
        form: 'roll',
        receivedMm: 16_800,
        cutMm: 2_800,
        cutOn: '2026-09-21',
      },
    ],
  },
  {
    id: 'lot-peatwater-b',
    itemId: 'item-peatwater',
    receivedOn: '2026-04-14',
    supplier: 'Quillstone Cloth',
    dyeLot: 'P-2207',
    priceMinor: 3_950,
    lengths: [
      {
        id: 'length-peatwater-remnant',
        widthMm: 1470,
        form: 'remnant',
        receivedMm: 3_500,
        cutMm: 2_590,
        cutOn: '2026-05-06',
      },
    ],
  },
  {
    id: 'lot-slatewater',
    itemId: 'item-slatewater',
    receivedOn: '2026-10-02',
    supplier: 'Marl & Wick',
    dyeLot: '88 C',
    priceMinor: 24_480,
    lengths: [{ id: 'length-slatewater-roll', widthMm: 1473, form: 'roll', receivedMm: 18_288 }],
  },
  {
    id: 'lot-heathback',
    itemId: 'item-heathback',
    receivedOn: '2026-08-19',
    supplier: 'Marl & Wick',
    dyeLot: 'br 14',
    priceMinor: 6_110,
    lengths: [
      {
        id: 'length-heathback-cut',
        widthMm: 1500,
        form: 'cut',
        receivedMm: 6_500,
        flaws: [{ x: 2_140, y: 930, widthX: 65, widthY: 40 }],
      },
    ],
  },
  {
    id: 'lot-emberday',
    itemId: 'item-emberday',
    receivedOn: '2026-09-15',
    supplier: 'Marl & Wick',
    dyeLot: 'E 31',
    priceMinor: 16_240,
    lengths: [{ id: 'length-emberday-roll', widthMm: 1422, form: 'roll', receivedMm: 14_500 }],
  },
  {
    id: 'lot-millrace',
    itemId: 'item-millrace',
    receivedOn: '2026-07-27',
    supplier: 'Quillstone Cloth',
    dyeLot: '',
    priceMinor: 4_420,
    lengths: [
      {
        id: 'length-millrace-cut',
        widthMm: 1420,
        form: 'cut',
        receivedMm: 6_800,
        cutMm: 1_150,
        cutOn: '2026-08-30',
      },
    ],
  },
  {
    id: 'lot-otterslip',
    itemId: 'item-otterslip',
    receivedOn: '2026-09-15',
    supplier: 'Quillstone Cloth',
    dyeLot: 'OS 5',
    priceMinor: 2_365,
    lengths: [
      {
        id: 'length-otterslip-cut',
        widthMm: 1400,
        form: 'cut',
        receivedMm: 4_300,
        cutMm: 700,
        cutOn: '2026-09-28',
      },
    ],
  },
  {
    id: 'lot-wherry',
    itemId: 'item-wherry',
    receivedOn: '2026-06-03',
    supplier: 'Greyhithe Remnants',
    dyeLot: '',
    priceMinor: 1_180,
    lengths: [
      {
        id: 'length-wherry-remnant',
        widthMm: 1143,
        form: 'remnant',
        receivedMm: 2_057,
        flaws: [
          { x: 310, y: 0, widthX: 120, widthY: 55 },
          { x: 1_480, y: 640, widthX: 45, widthY: 45 },
        ],
      },
    ],
  },
  {
    id: 'lot-thimblefold',
    itemId: 'item-thimblefold',
    receivedOn: '2026-05-11',
    supplier: 'Marl & Wick',
    dyeLot: '',
    priceMinor: 2_046,
    lengths: [
      {
        id: 'length-thimblefold-cut',
        widthMm: 1118,
        form: 'cut',
        receivedMm: 2_200,
        cutMm: 430,
        cutOn: '2026-08-30',
      },
      {
        id: 'length-thimblefold-remnant',
        widthMm: 1118,
        form: 'remnant',
        receivedMm: 640,
        flaws: [{ x: 90, y: 705, widthX: 150, widthY: 80 }],
      },
    ],
  },
  {
    id: 'lot-rowanberry',
    itemId: 'item-rowanberry',
    receivedOn: '2026-10-06',
    supplier: 'Marl & Wick',
    dyeLot: 'RB 2',
    priceMinor: 3_510,
    lengths: [{ id: 'length-rowanberry-cut', widthMm: 1450, form: 'cut', receivedMm: 1_300 }],
  },
  {
    id: 'lot-nettlebed',
    itemId: 'item-nettlebed',
    receivedOn: '2026-03-23',
    supplier: 'Greyhithe Remnants',
    dyeLot: '',
    priceMinor: 940,
    lengths: [
      {
        id: 'length-nettlebed-remnant',
        widthMm: 880,
        form: 'remnant',
        receivedMm: 1_240,
        flaws: [{ x: 0, y: 610, widthX: 210, widthY: 270 }],
      },
    ],
  },
  {
    id: 'lot-fleecewell',
    itemId: 'item-fleecewell',
    receivedOn: '2026-09-22',
    supplier: 'Lanternhill Battings',
    priceMinor: 9_900,
    lengths: [
      {
        id: 'length-fleecewell-roll',
        widthMm: 1500,
        form: 'roll',
        receivedMm: 18_000,
        cutMm: 2_700,
        cutOn: '2026-09-29',
      },
    ],
  },
  {
    id: 'lot-woolmere',
    itemId: 'item-woolmere',
    receivedOn: '2026-09-22',
    supplier: 'Lanternhill Battings',
    priceMinor: 7_300,
    lengths: [
      { id: 'length-woolmere-1', widthMm: 1829, form: 'sheet', receivedMm: 2_286 },
      {
        id: 'length-woolmere-2',
        widthMm: 1829,
        form: 'sheet',
        receivedMm: 2_286,
        cutMm: 870,
        cutOn: '2026-10-01',
      },
    ],
  },
  {
    id: 'lot-downdrift',
    itemId: 'item-downdrift',
    receivedOn: '2026-09-30',
    supplier: 'Lanternhill Battings',
    priceMinor: 8_640,
    received: 1_200,
    used: 260,
    usedOn: '2026-10-09',
  },
  {
    id: 'lot-puffball',
    itemId: 'item-puffball',
    receivedOn: '2026-06-17',
    supplier: 'Lanternhill Battings',
    priceMinor: 1_750,
    received: 2_500,
  },
  {
    id: 'lot-spun-olive',
    itemId: 'item-spun-olive',
    receivedOn: '2026-09-08',
    supplier: 'Fernlow Trimmings',
    dyeLot: '4471',
    priceMinor: 1_140,
    received: 2_000,
    used: 380,
    usedOn: '2026-09-24',
  },
  {
    id: 'lot-core-olive',
    itemId: 'item-core-olive',
    receivedOn: '2026-09-08',
    supplier: 'Fernlow Trimmings',
    priceMinor: 690,
    received: 1_371.6,
    used: 950,
    usedOn: '2026-09-24',
  },
  {
    id: 'lot-spun-oat',
    itemId: 'item-spun-oat',
    receivedOn: '2026-07-27',
    supplier: 'Fernlow Trimmings',
    priceMinor: 330,
    received: 500,
    used: 145,
    usedOn: '2026-08-30',
  },
  {
    id: 'lot-sharp-75',
    itemId: 'item-sharp-75',
    receivedOn: '2026-08-04',
    supplier: 'Fernlow Trimmings',
    priceMinor: 520,
    received: 10,
    used: 7,
    usedOn: '2026-09-30',
  },
  {
    id: 'lot-sharp-90',
    itemId: 'item-sharp-90',
    receivedOn: '2026-08-04',
    supplier: 'Fernlow Trimmings',
    priceMinor: 260,
    received: 5,
    used: 1,
    usedOn: '2026-09-02',
  },
  {
    id: 'lot-zip-long',
    itemId: 'item-zip-long',
    receivedOn: '2026-09-17',
    supplier: 'Fernlow Trimmings',
    priceMinor: 3_480,
    received: 4,
  },
  {
    id: 'lot-zip-short',
    itemId: 'item-zip-short',
    receivedOn: '2026-05-29',
    supplier: 'Fernlow Trimmings',
    priceMinor: 1_580,
    received: 2,
  },
  {
    id: 'lot-snap-12',
    itemId: 'item-snap-12',
    receivedOn: '2026-09-17',
    supplier: 'Fernlow Trimmings',
    priceMinor: 2_250,
    received: 100,
    used: 27,
    usedOn: '2026-10-05',
  },
  {
    id: 'lot-cord',
    itemId: 'item-cord',
    receivedOn: '2026-09-17',
    supplier: 'Tallow Lane Notions',
    priceMinor: 1_020,
    received: 12,
    used: 3,
    usedOn: '2026-10-05',
  },
  {
    id: 'lot-label',
    itemId: 'item-label',
    receivedOn: '2026-02-16',
    supplier: 'Tallow Lane Notions',
    priceMinor: 4_150,
    received: 100,
    used: 61,
    usedOn: '2026-10-05',
  },
  {
    id: 'lot-hang-loop',
    itemId: 'item-hang-loop',
    receivedOn: '2026-06-17',
    supplier: 'Tallow Lane Notions',
    priceMinor: 640,
    received: 20,
    used: 16,
    usedOn: '2026-10-05',
  },
  {
    id: 'lot-corozo',
    itemId: 'item-corozo',
    receivedOn: '2026-01-26',
    supplier: 'Tallow Lane Notions',
    priceMinor: 1_240,
    received: 24,
    used: 5,
    usedOn: '2026-03-12',
  },
];

function receivedOf(given: GivenLot): number {
  return given.lengths?.reduce((sum, length) => sum + length.receivedMm, 0) ?? given.received ?? 0;
}

export function demoLots(): Lot[] {
  return givenLots.map((given) => ({
    id: given.id,
    itemId: given.itemId,
    receivedOn: given.receivedOn,
    supplier: given.supplier,
    dyeLot: given.dyeLot ?? '',
    receivedMilli: toMilli(receivedOf(given)),
    priceMinor: given.priceMinor,
  }));
}

export function demoLengths(): Length[] {
  return givenLots.flatMap((given) =>
    (given.lengths ?? []).map(({ id, widthMm, form, flaws = [] }) => ({
      id,
      lotId: given.id,
      widthMm,
      flaws,
      form,
    })),
  );
}

/** Rows in the order they were written. */
export function demoMovements(): Movement[] {
  const rows = givenLots.flatMap((given) =>
    given.lengths
      ? given.lengths.flatMap((length) =>
          history(given, length.id, length.receivedMm, length.cutMm ?? 0, length.cutOn ?? given.receivedOn),
        )
      : history(given, null, given.received ?? 0, given.used ?? 0, given.usedOn ?? given.receivedOn),
  );
  return rows
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
    .map((row, index) => ({ ...row, id: `movement-${String(index + 1).padStart(3, '0')}` }));
}

function history(
  given: GivenLot,
  lengthId: string | null,
  received: number,
  used: number,
  usedOn: string,
): Omit<Movement, 'id'>[] {
  const row = { lotId: given.id, lengthId, reservedMilli: 0, planId: null };
  const rows: Omit<Movement, 'id'>[] = [
    {
      ...row,
      at: `${given.receivedOn}T10:20:00.000Z`,
      kind: 'received',
      onHandMilli: toMilli(received),
      reason: `bought from ${given.supplier}`,
    },
  ];
  if (used > 0) {
    rows.push({
      ...row,
      at: `${usedOn}T15:45:00.000Z`,
      kind: 'cut',
      onHandMilli: -toMilli(used),
      reason: 'used for an earlier coat',
    });
  }
  return rows;
}
