/** The lengths of a lot while they are being typed. */
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import type { MeasureSystem } from '../../../../shared-core/measure/quantity.ts';
import type { Item, Length } from '../../../../shared-core/stash/stash.ts';
import { factFields } from '../../../../shared-core/stash/kinds.ts';
import { draftOf, emptyDraft, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';
import { factText } from '../items/item-words.ts';

export interface FlawDraft {
  readonly key: number;
  /** How far from the start of the length, how far from its edge, and how large, along and across. */
  readonly fromStart: QuantityDraft;
  readonly fromEdge: QuantityDraft;
  readonly along: QuantityDraft;
  readonly across: QuantityDraft;
}

export interface LengthDraft {
  readonly key: number;
  readonly form: Length['form'];
  readonly width: QuantityDraft;
  readonly along: QuantityDraft;
  readonly count: QuantityDraft;
  readonly flaws: readonly FlawDraft[];
  /** Its first wash is over. */
  readonly isWashed: boolean;
}

const one = draftOf(1, '1');

/** The first line of a parcel: as wide as the item is known to be; for a packaged sheet as long, too. */
export function firstRow(item: Item, system: MeasureSystem): LengthDraft {
  const facts = item.facts as Readonly<Record<string, unknown>>;
  const known = (factName: string): QuantityDraft => {
    const field = factFields(item.kind).find(([candidate]) => candidate === factName)?.[1];
    const value = facts[factName];
    if (!field || typeof value !== 'number') return emptyDraft;
    return draftOf(value, factText(item, factName, field, system) ?? '');
  };
  const sheetLength = known('sheetLengthMm');
  return {
    key: 1,
    form: sheetLength.value === null ? 'roll' : 'sheet',
    width: known('widthMm'),
    along: sheetLength,
    count: one,
    flaws: [],
    isWashed: false,
  };
}

/** Another line like the last one, its length still to be typed. */
export function nextRow(rows: readonly LengthDraft[]): LengthDraft {
  const last = rows.at(-1);
  if (!last) throw new Error('a lot being received has at least one line');
  return {
    ...last,
    key: Math.max(...rows.map((row) => row.key)) + 1,
    along: last.form === 'sheet' ? last.along : emptyDraft,
    count: one,
    flaws: [],
  };
}

export function withFlaw(row: LengthDraft): LengthDraft {
  const key = Math.max(0, ...row.flaws.map((flaw) => flaw.key)) + 1;
  return {
    ...row,
    flaws: [
      ...row.flaws,
      { key, fromStart: emptyDraft, fromEdge: emptyDraft, along: emptyDraft, across: emptyDraft },
    ],
  };
}

export function draftsOfRow(row: LengthDraft): QuantityDraft[] {
  return [
    row.width,
    row.along,
    row.count,
    ...row.flaws.flatMap((flaw) => [flaw.fromStart, flaw.fromEdge, flaw.along, flaw.across]),
  ];
}

/** What is sent, or what is still missing. */
export function readRows(rows: readonly LengthDraft[]): Result<CallInput<'receiveLot'>['lengths']> {
  const problems: Problem[] = [];
  const value = (draft: QuantityDraft, where: string): number => {
    if (draft.value !== null) return draft.value;
    problems.push({ where, what: 'is missing', fix: 'Type it, or remove the line.' });
    return Number.NaN;
  };
  const lengths = rows.map((row, index) => {
    const place = rows.length === 1 ? '' : ` of line ${index + 1}`;
    return {
      widthMm: value(row.width, `Width${place}`),
      lengthMm: value(row.along, `Length${place}`),
      count: value(row.count, `Number${place}`),
      form: row.form,
      ...(row.isWashed && { isWashed: true as const }),
      flaws: row.flaws.map((flaw) => ({
        x: value(flaw.fromStart, `Place of a flaw${place}`),
        y: value(flaw.fromEdge, `Place of a flaw${place}`),
        widthX: value(flaw.along, `Size of a flaw${place}`),
        widthY: value(flaw.across, `Size of a flaw${place}`),
      })),
    };
  });
  return problems.length > 0 ? err(...problems) : ok(lengths);
}
