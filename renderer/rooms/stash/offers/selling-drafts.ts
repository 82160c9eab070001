/** The selling unit of an offer while it is being typed: which figures each way of selling asks for. */
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem, QuantityKind } from '../../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../../shared-core/measure/units.ts';
import type { Offer, SellingUnit } from '../../../../shared-core/stash/offer.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { clothLengthUnit, clothWidthUnit } from '../../../parts/figures/Amount.tsx';
import { draftOf, emptyDraft, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';

/** One figure for each name that a selling unit may have. */
export type FigureName =
  | 'stepMm'
  | 'leastMm'
  | 'widthMm'
  | 'sheetLengthMm'
  | 'threadM'
  | 'stepG'
  | 'leastG'
  | 'pieceCount'
  | 'pieceLengthMm';

export type SellingDrafts = Readonly<Record<FigureName, QuantityDraft>>;

export interface UnitField {
  readonly name: FigureName;
  readonly label: string;
  readonly hint: string;
  readonly quantity: QuantityKind;
  readonly unit: FieldUnit | undefined;
  readonly isOptional: boolean;
}

function field(
  name: FigureName,
  label: string,
  hint: string,
  quantity: QuantityKind,
  unit?: FieldUnit,
  isOptional = false,
): UnitField {
  return { name, label, hint, quantity, unit, isOptional };
}

export const unitFields: Readonly<Record<SellingUnit['kind'], readonly UnitField[]>> = {
  'by length': [
    field('stepMm', 'Step', 'Cut in steps of 1/8 yd, 10 cm, 1 m', 'length', clothLengthUnit),
    field('widthMm', 'Width', 'Of the cloth as sold', 'length', clothWidthUnit),
    field('leastMm', 'Least', 'Least length sold, if any', 'length', clothLengthUnit, true),
  ],
  sheet: [
    field('widthMm', 'Width', 'Of one sheet', 'length', clothWidthUnit),
    field('sheetLengthMm', 'Length', 'Of one sheet', 'length', clothWidthUnit),
  ],
  spool: [field('threadM', 'Thread on a spool', 'Metres or yards', 'threadLength')],
  'by mass': [
    field('stepG', 'Step', 'Weighed in steps of', 'mass'),
    field('leastG', 'Least', 'Least mass sold, if any', 'mass', undefined, true),
  ],
  pack: [field('pieceCount', 'Pieces in a pack', 'How many', 'count')],
  each: [
    field('pieceLengthMm', 'Length', 'Of one piece, where it has one: a zip', 'length', clothWidthUnit, true),
  ],
};

/** The drafts of an offer; for a new one what the item itself already says. */
export function draftOfOffer(item: Item, offer: Offer | null, system: MeasureSystem): SellingDrafts {
  const drafts: Record<FigureName, QuantityDraft> = {
    stepMm: emptyDraft,
    leastMm: emptyDraft,
    widthMm: emptyDraft,
    sheetLengthMm: emptyDraft,
    threadM: emptyDraft,
    stepG: emptyDraft,
    leastG: emptyDraft,
    pieceCount: emptyDraft,
    pieceLengthMm: emptyDraft,
  };
  const known = Object.values(unitFields).flat();
  const put = (name: FigureName, value: number | null, typed?: string) => {
    const of = known.find((each) => each.name === name);
    if (!of || value === null) return;
    drafts[name] = draftOf(
      value,
      typed ?? showQuantity(of.quantity, value, { system, ...(of.unit && { unit: of.unit }) }),
    );
  };
  if (item.kind === 'cloth' || item.kind === 'batting')
    put('widthMm', item.facts.widthMm, item.typed.widthMm);
  if (item.kind === 'batting') put('sheetLengthMm', item.facts.sheetLengthMm, item.typed.sheetLengthMm);
  if (item.kind === 'thread') put('threadM', item.facts.spoolM, item.typed.spoolM);
  if (item.kind === 'fastening') put('pieceLengthMm', item.facts.lengthMm, item.typed.lengthMm);
  if (!offer) return drafts;
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
      drafts.pieceLengthMm = emptyDraft;
      put('pieceLengthMm', unit.lengthMm);
      break;
    default:
      unit satisfies never;
  }
  return drafts;
}

export function offerDrafts(way: SellingUnit['kind'], drafts: SellingDrafts): QuantityDraft[] {
  return unitFields[way].map(({ name }) => drafts[name]);
}

/** The unit that the drafts of this way of selling make, or what is missing. */
export function readUnit(way: SellingUnit['kind'], drafts: SellingDrafts): Result<SellingUnit> {
  const problems: Problem[] = unitFields[way]
    .filter(({ name, isOptional }) => !isOptional && drafts[name].value === null)
    .map(({ label, hint }) => ({
      where: `${label} of what is sold`,
      what: 'is missing',
      fix: `Type it. ${hint}.`,
    }));
  if (problems.length > 0) return err(...problems);
  const value = (name: FigureName) => drafts[name].value ?? 0;
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
      return ok({ kind: way, lengthMm: drafts.pieceLengthMm.value });
    default:
      return way satisfies never;
  }
}
