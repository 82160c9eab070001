/** The selling unit of an offer in its form: which figures each way of selling asks for, and the unit that they make. */
import { say } from '../../../../shared-core/wording/say.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem, QuantityKind } from '../../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../../shared-core/measure/units.ts';
import type { Offer, SellingUnit } from '../../../../shared-core/stash/offer.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { clothLengthUnit, clothWidthUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { nothingShown, type Shown } from '../../../parts/forms/quantity-text.ts';

/** One figure for each name that a selling unit may have. */
export const figureNames = [
  'stepMm',
  'leastMm',
  'widthMm',
  'sheetLengthMm',
  'threadM',
  'stepG',
  'leastG',
  'pieceCount',
  'pieceLengthMm',
] as const;
export type FigureName = (typeof figureNames)[number];

export type Figures<Value> = Readonly<Record<FigureName, Value>>;

export interface UnitField extends QuantityAsked {
  readonly name: FigureName;
  readonly hint: string;
}

function needed(
  name: FigureName,
  label: string,
  hint: string,
  quantity: QuantityKind,
  unit?: FieldUnit,
): UnitField {
  return { name, label, hint, quantity, unit, aboveZero: true };
}

/** One that may be left empty. */
function optional(
  name: FigureName,
  label: string,
  hint: string,
  quantity: QuantityKind,
  unit?: FieldUnit,
): UnitField {
  return { name, label, hint, quantity, unit };
}

export const unitFields: Readonly<Record<SellingUnit['kind'], readonly UnitField[]>> = {
  'by length': [
    needed(
      'stepMm',
      say('selling-fields.step'),
      say('selling-fields.cut-in-steps-of-1-8'),
      'length',
      clothLengthUnit,
    ),
    needed(
      'widthMm',
      say('common.width'),
      say('selling-fields.of-the-cloth-as-sold'),
      'length',
      clothWidthUnit,
    ),
    optional(
      'leastMm',
      say('selling-fields.least'),
      say('selling-fields.least-length-sold-if-any'),
      'length',
      clothLengthUnit,
    ),
  ],
  sheet: [
    needed('widthMm', say('common.width'), say('selling-fields.of-one-sheet'), 'length', clothWidthUnit),
    needed(
      'sheetLengthMm',
      say('common.length'),
      say('selling-fields.of-one-sheet'),
      'length',
      clothWidthUnit,
    ),
  ],
  spool: [
    needed(
      'threadM',
      say('selling-fields.thread-on-a-spool'),
      say('selling-fields.metres-or-yards'),
      'threadLength',
    ),
  ],
  'by mass': [
    needed('stepG', say('selling-fields.step'), say('selling-fields.weighed-in-steps-of'), 'mass'),
    optional('leastG', say('selling-fields.least'), say('selling-fields.least-mass-sold-if-any'), 'mass'),
  ],
  pack: [needed('pieceCount', say('selling-fields.pieces-in-a-pack'), say('common.how-many'), 'count')],
  each: [
    optional(
      'pieceLengthMm',
      say('common.length'),
      say('selling-fields.of-one-piece-where-it-has'),
      'length',
      clothWidthUnit,
    ),
  ],
};

/** The figures of an offer; for a new one what the item itself already says. */
export function figuresOfOffer(item: Item, offer: Offer | null, system: MeasureSystem): Figures<Shown> {
  const figures = Object.fromEntries(figureNames.map((name) => [name, nothingShown])) as Record<
    FigureName,
    Shown
  >;
  const known = Object.values(unitFields).flat();
  const put = (name: FigureName, value: number | null, typed?: string) => {
    const of = known.find((each) => each.name === name);
    if (!of || value === null) return;
    const text = typed ?? showQuantity(of.quantity, value, { system, ...(of.unit && { unit: of.unit }) });
    figures[name] = { value, text };
  };
  if (item.kind === 'cloth' || item.kind === 'batting')
    put('widthMm', item.facts.widthMm, item.typed.widthMm);
  if (item.kind === 'batting') put('sheetLengthMm', item.facts.sheetLengthMm, item.typed.sheetLengthMm);
  if (item.kind === 'thread') put('threadM', item.facts.spoolM, item.typed.spoolM);
  if (item.kind === 'fastening') put('pieceLengthMm', item.facts.lengthMm, item.typed.lengthMm);
  if (!offer) return figures;
  const { unit } = offer;
  switch (unit.kind) {
    case 'by length':
      put('stepMm', unit.stepMm);
      put('widthMm', unit.widthMm);
      put('leastMm', unit.leastMm);
      break;
    case 'sheet':
      put('widthMm', unit.widthMm);
      put('sheetLengthMm', unit.lengthMm);
      break;
    case 'spool':
      put('threadM', unit.threadM);
      break;
    case 'by mass':
      put('stepG', unit.stepG);
      put('leastG', unit.leastG);
      break;
    case 'pack':
      put('pieceCount', unit.pieceCount);
      break;
    case 'each':
      figures.pieceLengthMm = nothingShown;
      put('pieceLengthMm', unit.lengthMm);
      break;
    default:
      unit satisfies never;
  }
  return figures;
}

/** The unit that the figures of this way of selling make, or what is missing. */
export function unitOf(
  way: SellingUnit['kind'],
  figures: Partial<Figures<number | null>>,
): Result<SellingUnit> {
  const problems: Problem[] = unitFields[way]
    .filter(({ name, aboveZero }) => aboveZero && figures[name] == null)
    .map(({ label, hint }) => ({
      where: say('selling-fields.of-what-is-sold', { label }),
      what: say('common.is-missing'),
      fix: say('selling-fields.type-it', { hint }),
    }));
  if (problems.length > 0) return err(...problems);
  const value = (name: FigureName) => figures[name] ?? 0;
  switch (way) {
    case 'by length':
      return ok({
        kind: way,
        stepMm: value('stepMm'),
        widthMm: value('widthMm'),
        leastMm: value('leastMm'),
      });
    case 'sheet':
      return ok({ kind: way, widthMm: value('widthMm'), lengthMm: value('sheetLengthMm') });
    case 'spool':
      return ok({ kind: way, threadM: value('threadM') });
    case 'by mass':
      return ok({ kind: way, stepG: value('stepG'), leastG: value('leastG') });
    case 'pack':
      return ok({ kind: way, pieceCount: value('pieceCount') });
    case 'each':
      return ok({ kind: way, lengthMm: figures.pieceLengthMm ?? null });
    default:
      return way satisfies never;
  }
}
