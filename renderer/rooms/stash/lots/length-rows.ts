/** The lengths of a parcel in its form. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import { factFields } from '../../../../shared-core/stash/kinds.ts';
import type { Item, Length } from '../../../../shared-core/stash/stash.ts';
import { clothLengthUnit, clothWidthUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { nothingShown, readAt, type Shown, type Units } from '../../../parts/forms/quantity-text.ts';
import { factText } from '../items/item-words.ts';

export interface TypedFlaw {
  /** How far from the start of the length, how far from its edge, and how large, along and across. */
  fromStart: string;
  fromEdge: string;
  along: string;
  across: string;
}

export interface TypedLength {
  form: Length['form'];
  width: string;
  along: string;
  count: string;
  flaws: TypedFlaw[];
  /** Its first wash is over. */
  isWashed: boolean;
  /** What stood in its fields at first. */
  shown: { width: Shown; along: Shown };
}

export interface ReadLength extends Pick<TypedLength, 'form' | 'isWashed'> {
  readonly widthMm: number | null;
  readonly alongMm: number | null;
  readonly count: number | null;
  readonly flaws: readonly { readonly [Name in keyof TypedFlaw]: number | null }[];
}

export const lengthFields = {
  width: { label: say('common.width'), quantity: 'length', unit: clothWidthUnit, aboveZero: true },
  along: { label: say('common.length'), quantity: 'length', unit: clothLengthUnit, aboveZero: true },
  count: { label: say('common.how-many'), quantity: 'count', aboveZero: true },
} as const satisfies Record<string, QuantityAsked>;

export const flawFields = {
  fromStart: { label: say('length-rows.from-start'), quantity: 'length', unit: clothLengthUnit },
  fromEdge: { label: say('length-rows.from-edge'), quantity: 'length', unit: clothWidthUnit },
  along: { label: say('length-rows.long'), quantity: 'length', unit: clothWidthUnit, aboveZero: true },
  across: { label: say('length-rows.wide'), quantity: 'length', unit: clothWidthUnit, aboveZero: true },
} as const satisfies Record<keyof TypedFlaw, QuantityAsked>;

export const emptyFlaw: TypedFlaw = { fromStart: '', fromEdge: '', along: '', across: '' };

/** The first line of a parcel: as wide as the item is known to be; for a packaged sheet as long, too. */
export function firstRow(item: Item, system: MeasureSystem): TypedLength {
  const facts = item.facts as Readonly<Record<string, unknown>>;
  const known = (factName: string): Shown => {
    const field = factFields(item.kind).find(([candidate]) => candidate === factName)?.[1];
    const value = facts[factName];
    if (!field || typeof value !== 'number') return nothingShown;
    return { value, text: factText(item, factName, field, system) ?? '' };
  };
  const [width, along] = [known('widthMm'), known('sheetLengthMm')];
  return {
    form: along.value === null ? 'roll' : 'sheet',
    width: width.text,
    along: along.text,
    count: '1',
    flaws: [],
    isWashed: false,
    shown: { width, along },
  };
}

/** Another line like the last one, its length still to be typed. */
export function nextRow(last: TypedLength): TypedLength {
  return { ...last, along: last.form === 'sheet' ? last.along : '', count: '1', flaws: [] };
}

export function lengthsSchema(units: Units): z.ZodType<ReadLength[], TypedLength[]> {
  const flaw = z.object({
    fromStart: z.string(),
    fromEdge: z.string(),
    along: z.string(),
    across: z.string(),
  });
  const length = z
    .object({
      form: z.enum(['roll', 'cut', 'remnant', 'sheet']),
      width: z.string(),
      along: z.string(),
      count: z.string(),
      flaws: z.array(flaw),
      isWashed: z.boolean(),
      shown: z.custom<TypedLength['shown']>(),
    })
    .transform(({ form, isWashed, width, along, count, flaws, shown }, context): ReadLength => {
      const ofFlaw = (at: number, name: keyof TypedFlaw, text: string) =>
        readAt(context, ['flaws', at, name], flawFields[name], units, { text });
      return {
        form,
        isWashed,
        widthMm: readAt(context, ['width'], lengthFields.width, units, { text: width, shown: shown.width }),
        alongMm: readAt(context, ['along'], lengthFields.along, units, { text: along, shown: shown.along }),
        count: readAt(context, ['count'], lengthFields.count, units, { text: count }),
        flaws: flaws.map((each, at) => ({
          fromStart: ofFlaw(at, 'fromStart', each.fromStart),
          fromEdge: ofFlaw(at, 'fromEdge', each.fromEdge),
          along: ofFlaw(at, 'along', each.along),
          across: ofFlaw(at, 'across', each.across),
        })),
      };
    });
  return z.array(length);
}

/** What is sent, or what is still missing. */
export function lengthsIn(rows: readonly ReadLength[]): Result<CallInput<'receiveLot'>['lengths']> {
  const problems: Problem[] = [];
  const needed = (value: number | null, where: string): number => {
    if (value === null)
      problems.push({
        where,
        what: say('common.is-missing'),
        fix: say('length-rows.type-it-or-remove-the-line'),
      });
    return value ?? Number.NaN;
  };
  const lengths = rows.map((row, index) => {
    const place = rows.length === 1 ? '' : ` ${say('length-rows.of-line', { index: index + 1 })}`;
    return {
      widthMm: needed(row.widthMm, `Width${place}`),
      lengthMm: needed(row.alongMm, `Length${place}`),
      count: needed(row.count, `Number${place}`),
      form: row.form,
      ...(row.isWashed && { isWashed: true as const }),
      flaws: row.flaws.map((flaw) => ({
        x: needed(flaw.fromStart, say('length-rows.place-of-a-flaw', { place })),
        y: needed(flaw.fromEdge, say('length-rows.place-of-a-flaw', { place })),
        widthX: needed(flaw.along, say('length-rows.size-of-a-flaw', { place })),
        widthY: needed(flaw.across, say('length-rows.size-of-a-flaw', { place })),
      })),
    };
  });
  return problems.length > 0 ? err(...problems) : ok(lengths);
}
