/** What the tests save and receive: a cloth, a fill, and a lot of each. */
import type { CallInput } from '../../shared-core/contract/contract.ts';

export const taffeta = {
  itemId: null,
  kind: 'cloth',
  name: 'Peatwater taffeta',
  colour: 'moss',
  place: 'shelf B, left',
  notes: '',
  facts: { widthMm: 1470 },
  typed: { widthMm: '58 in' },
} as const satisfies CallInput<'saveItem'>;

export const down = {
  itemId: null,
  kind: 'fill',
  name: 'Fenwalk down',
  colour: '',
  place: 'bin 3',
  notes: '',
  facts: { fillPowerCm3PerG: 375 },
  typed: {},
} as const satisfies CallInput<'saveItem'>;

/** Two lengths of a cloth: 7310.5 mm with a flaw, and 890 mm. */
export function clothLot(itemId: string): CallInput<'receiveLot'> {
  return {
    itemId,
    receivedOn: '2026-03-27',
    supplier: 'Quillstone Cloth',
    dyeLot: 'P-2207',
    priceMinor: 12_345,
    amount: null,
    lengths: [
      {
        widthMm: 1470,
        lengthMm: 7310.5,
        form: 'cut',
        flaws: [{ x: 2140, y: 930, widthX: 65, widthY: 40 }],
        count: 1,
      },
      { widthMm: 1465, lengthMm: 890, form: 'remnant', flaws: [], count: 1 },
    ],
  };
}

export function fillLot(itemId: string, amount: number): CallInput<'receiveLot'> {
  const { lengths: _, ...lot } = clothLot(itemId);
  return { ...lot, dyeLot: '', amount, lengths: [] };
}
