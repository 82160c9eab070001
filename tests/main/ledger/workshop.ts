/** A real workshop file with its plans, and the book beside it. */
import type { CallInput, CallName, CallOutput } from '../../../shared-core/contract/contract.ts';
import { cover } from '../../../shared-core/cover/cover.ts';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { stillToCut } from '../../../shared-core/requirement/cut/still-to-cut.ts';
import { piece, plan as smallPlan, rectangle, slot } from '../../fixtures/small-workshop.ts';
import { down, taffeta } from '../asking-inputs.ts';
import type { Beside } from '../beside.ts';
import { usedUp } from './figures.ts';
import * as book from './model.ts';

export const sizes = ['40', '42'] as const;
export const backPieces = [rectangle(700, 500), rectangle(740, 520)] as const;
export const rings = [
  [0, 0, 700, 0, 700, 500, 0, 500],
  [0, 0, 740, 0, 740, 520, 0, 520],
] as const;
export const slotIds = ['shell', 'fill', 'snaps'] as const;
export const perCoat = [null, 60, 7] as const;
export const clothWidthMm = 1470;

export interface PlanState {
  readonly id: string;
  revision: number;
  plan: CoatPlan;
  /** By size, and the size at hand: what the book knows of the plan. */
  counts: [number, number];
  margin: number;
}

export type Ask = <Name extends CallName>(
  call: Name,
  input: CallInput<Name>,
) => Promise<Result<CallOutput<Name>>>;

export interface Workshop {
  readonly ask: Ask;
  readonly beside: Beside;
  readonly book: book.Book;
  readonly itemIds: readonly string[];
  readonly plans: readonly PlanState[];
  /** Of the book's lots, places and cuttings. */
  readonly lotIds: string[];
  readonly places: { readonly lotId: string; readonly lengthId: string | null }[];
  readonly cuttingIds: string[];
}

export async function get<Name extends CallName>(
  ask: Ask,
  call: Name,
  input: CallInput<Name>,
): Promise<CallOutput<Name>> {
  const outcome = await ask(call, input);
  if (!outcome.ok) throw new Error(`${call} was refused: ${JSON.stringify(outcome.problems)}`);
  return outcome.value;
}

export async function begin(ask: Ask, beside: Beside): Promise<Workshop> {
  const snaps = { ...down, kind: 'fastening', name: 'Horn snap', facts: { form: 'snap' } } as const;
  const itemIds: string[] = [];
  for (const item of [taffeta, down, snaps]) itemIds.push((await get(ask, 'saveItem', item)).itemId);
  const kinds = ['cloth', 'fill', 'fastening'] as const;
  const plans: PlanState[] = [];
  for (const name of ['Fen coat', 'Tarn coat', 'Heron coat']) {
    const back = (size: 0 | 1) => piece('back', backPieces[size]);
    const plan = smallPlan({
      name,
      size: sizes[0],
      coatCount: 4,
      pieces: [back(0)],
      sizes: [{ size: sizes[1], coatCount: 3, pieces: [back(1)] }],
      slots: kinds.map((kind, at) =>
        slot(slotIds[at]!, kind, { itemId: itemIds[at] ?? null, amountPerCoat: perCoat[at] ?? null }),
      ),
    });
    const { planId, revision } = await get(ask, 'savePlan', { plan, basedOn: null, said: '' });
    plans.push({ id: planId, revision, plan: { ...plan, id: planId }, counts: [4, 3], margin: 0 });
  }
  const workshop: Workshop = {
    ask,
    beside,
    book: book.emptyBook(),
    itemIds,
    plans,
    lotIds: [],
    places: [],
    cuttingIds: [],
  };
  await receive(workshop, 0, 9000, 12_345, true);
  await receive(workshop, 1, 640, 6_401, false);
  await receive(workshop, 2, 40, 901, false);
  return workshop;
}

export async function receive(
  workshop: Workshop,
  item: number,
  amount: number,
  priceMinor: number,
  isFlawed: boolean,
) {
  const isCloth = item === 0;
  const lengths = isCloth
    ? [
        {
          widthMm: clothWidthMm,
          lengthMm: amount,
          form: 'roll' as const,
          flaws: isFlawed ? [{ x: amount / 4, y: 100, widthX: 65, widthY: 40 }] : [],
          count: 1,
        },
        { widthMm: clothWidthMm, lengthMm: 890.5, form: 'remnant' as const, flaws: [], count: 1 },
      ]
    : [];
  const received = await get(workshop.ask, 'receiveLot', {
    itemId: workshop.itemIds[item] ?? '',
    receivedOn: '2026-03-27',
    supplier: 'Quillstone Cloth',
    dyeLot: '',
    priceMinor,
    amount: isCloth ? null : amount,
    lengths,
  });
  const milli = (mm: number) => Math.round(mm * 1000);
  const places = isCloth
    ? [
        {
          widthMm: clothWidthMm,
          hand: milli(amount),
          flaw: isFlawed ? ([milli(amount / 4), milli(amount / 4) + 65_000] as const) : null,
        },
        { widthMm: clothWidthMm, hand: 890_500, flaw: null },
      ]
    : [{ widthMm: null, hand: milli(amount), flaw: null }];
  const all = places.reduce((sum, { hand }) => sum + hand, 0);
  book.receive(workshop.book, { item, received: all, priceMinor }, places);
  workshop.lotIds.push(received.lotId);
  await learnPlaces(workshop);
}

/** The program's names of places that have come into being, in the order the book made them. */
export async function learnPlaces(workshop: Workshop): Promise<void> {
  const read = async (lotId: string) =>
    (await workshop.beside.ask('SELECT id FROM length WHERE lot_id = ? ORDER BY entry', lotId)).map(
      ({ id }) => String(id),
    );
  for (let at = workshop.places.length; at < workshop.book.places.length; at++) {
    const { lot, widthMm } = workshop.book.places[at]!;
    const lotId = workshop.lotIds[lot]!;
    const known = new Set(workshop.places.map((place) => place.lengthId));
    const lengthId =
      widthMm === null ? null : ((await read(lotId)).find((id) => !known.has(id)) ?? 'missing');
    workshop.places.push({ lotId, lengthId });
  }
}

/** What the book says a plan still needs of its fill (1) or its snaps (2), thousandths. */
export function stillNeeded(workshop: Workshop, planAt: number, slotAt: 1 | 2): number {
  const { counts } = workshop.plans[planAt]!;
  return Math.max(
    0,
    (counts[0] + counts[1]) * perCoat[slotAt] * 1000 - usedUp(workshop.book, planAt, slotAt),
  );
}

export async function coverOf(workshop: Workshop, planAt: number) {
  const input = await get(workshop.ask, 'flowInput', { planId: workshop.plans[planAt]!.id });
  const whole = requirement(input.plan, slotItems(input));
  const needs = stillToCut(input.plan, whole, input.cuttings);
  const amounts = needs.filter(({ kind }) => kind === 'amount');
  const covers = await cover({ ...input, needs: amounts, lays: new Map() }, () => {
    throw new Error('nothing of it is laid');
  });
  return { input, needs, covers };
}

export function unlike(what: string, real: unknown, expected: unknown): string[] {
  const [one, other] = [JSON.stringify(real), JSON.stringify(expected)];
  return one === other ? [] : [`${what} is ${one}, by the book ${other}`];
}
