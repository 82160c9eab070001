/**
 * The columns of a stash file: one line for each length on the shelf (for each lot where the kind has no lengths,
 * for each item where nothing of it is there). What an item is stands in each of its lines. Every measure has its
 * unit in its heading; amounts are in the unit that the line's own column names, as the kind is counted.
 */
import { inEnglish } from '../../wording/say.ts';
import type { UnitId } from '../../measure/units.ts';
import type { FactField, QuantityField } from '../../stash/fact-field.ts';
import { type Counted, factFields, itemKinds } from '../../stash/kinds.ts';

export interface StashColumn {
  readonly key: string;
  readonly heading: string;
}

/** The unit of a quantity in a file. */
export const fileUnits: Readonly<Record<QuantityField, { readonly unit: UnitId; readonly heading: string }>> =
  {
    length: { unit: 'mm', heading: 'mm' },
    mass: { unit: 'g', heading: 'g' },
    arealMass: { unit: 'gPerM2', heading: 'g/m2' },
    fillPower: { unit: 'cm3PerG', heading: 'cm3/g' },
    threadSize: { unit: 'tex', heading: 'tex' },
    threadLength: { unit: 'threadM', heading: 'm' },
    ratio: { unit: 'percent', heading: '%' },
    needleSize: { unit: 'NM', heading: 'NM' },
    count: { unit: 'pcs', heading: 'pcs' },
  };

/** What the column "unit" holds for a kind counted so. */
export const amountUnits: Readonly<Record<Counted, string>> = {
  length: 'mm',
  mass: 'g',
  thread: 'm',
  pieces: 'pcs',
};

/** Facts whose label alone would not tell two kinds apart. */
const plainerLabels: Readonly<Record<string, string>> = {
  sizeTex: 'thread size',
  spoolM: 'thread on a spool',
  sizeNm: 'needle size',
  lengthMm: 'length of one piece',
  massG: 'mass of one piece',
  form: 'form of fastening',
  fillMethod: 'method of the fill power',
};

/** The first field of each fact name, over all kinds: kinds that share a name share its column. */
export const factColumns: ReadonlyMap<string, FactField> = new Map(
  itemKinds.flatMap((kind) => factFields(kind)).toReversed(),
);

export function factHeading(factName: string, field: FactField): string {
  const label = plainerLabels[factName] ?? inEnglish(() => field.label.toLowerCase());
  switch (field.kind) {
    case 'quantity':
      return `${label} (${fileUnits[field.quantity].heading})`;
    case 'flag':
      return `${label} (yes or no)`;
    case 'choice':
    case 'text':
      return label;
    default:
      return field satisfies never;
  }
}

const factColumnList: readonly StashColumn[] = [
  ...new Map(
    itemKinds
      .flatMap((kind) => factFields(kind))
      .map(([key, field]) => [key, { key, heading: factHeading(key, factColumns.get(key) ?? field) }]),
  ).values(),
];

const before: readonly StashColumn[] = [
  { key: 'kind', heading: 'kind' },
  { key: 'name', heading: 'name' },
  { key: 'colour', heading: 'colour' },
  { key: 'place', heading: 'place' },
];

/** The item's own mark comes last: it is never empty in a file from here, so a line that is cut short is seen. */
const after: readonly StashColumn[] = [
  { key: 'receivedOn', heading: 'received on (year-month-day)' },
  { key: 'supplier', heading: 'supplier' },
  { key: 'dyeLot', heading: 'dye lot' },
  { key: 'price', heading: '' },
  { key: 'unit', heading: 'unit' },
  { key: 'received', heading: 'received (in the unit)' },
  { key: 'onHand', heading: 'on hand (in the unit)' },
  { key: 'reason', heading: 'reason for another amount' },
  { key: 'lengthWidth', heading: 'width of this length (mm)' },
  { key: 'lengthForm', heading: 'lies as' },
  { key: 'worthRatio', heading: 'cost share of this length (1 is all of it)' },
  { key: 'washed', heading: 'this length was washed (yes or no)' },
  { key: 'flaws', heading: 'flaws (mm: along, across, long, wide)' },
  { key: 'notes', heading: 'notes' },
  { key: 'lengthId', heading: 'length mark' },
  { key: 'lotId', heading: 'lot mark' },
  { key: 'itemId', heading: 'item mark' },
];

/** Every column in the order of the file. currency: code of the workshop's own. */
export function stashColumns(currency: string): readonly StashColumn[] {
  return [...before, ...factColumnList, ...after].map((column) =>
    column.key === 'price' ? { ...column, heading: `price of the lot (${currency})` } : column,
  );
}

/** Capitals, blanks and raised figures make no difference in a heading. */
export function plainHeading(heading: string): string {
  return heading.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
}
