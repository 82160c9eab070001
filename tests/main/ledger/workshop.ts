/** A real workshop file and the book beside it, led by the same steps; `differences` says where they part. */
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { openServices } from '../../../main/services/services.ts';
import type { CallInput, CallName, CallOutput } from '../../../shared-core/contract/contract.ts';
import { cover } from '../../../shared-core/cover/cover.ts';
import { cuttingProposal } from '../../../shared-core/cover/cutting-proposal.ts';
import { usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import { slotItems } from '../../../shared-core/flow.ts';
import type { Outcome } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/coat-plan.ts';
import { setMargin } from '../../../shared-core/plan/margin.ts';
import { chooseSize } from '../../../shared-core/plan/sizes.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { stillToCut } from '../../../shared-core/requirement/still-to-cut.ts';
import { piece, plan as smallPlan, rectangle, slot } from '../../fixtures/small-workshop.ts';
import { down, taffeta } from '../asking-inputs.ts';
import { cutBySize, cutCosts, isSound, itemAccount, lineValues, usedUp } from './figures.ts';
import * as book from './model.ts';
import type { Step } from './step.ts';

const sizes = ['40', '42'] as const;
const backs = [rectangle(700, 500), rectangle(740, 520)] as const;
const rings = [
  [0, 0, 700, 0, 700, 500, 0, 500],
  [0, 0, 740, 0, 740, 520, 0, 520],
] as const;
const slotIds = ['shell', 'fill', 'snaps'] as const;
const perCoat = [null, 60, 7] as const;
const clothWidthMm = 1470;

interface PlanState {
  readonly id: string;
  revision: number;
  plan: CoatPlan;
  /** By size, and the size at hand: what the book knows of the plan. */
  counts: [number, number];
  margin: number;
}

export interface Led {
  readonly differences: string[];
  /** What was refused on both sides, and what was done. */
  readonly done: Record<string, number>;
}

export async function lead(
  folder: string,
  steps: readonly Step[],
): Promise<Led & { readonly stepCount: number }> {
  const dataFile = join(folder, 'own.sqlite');
  const logged: unknown[] = [];
  const opened = openServices({
    dataFile,
    demoFile: join(folder, 'demo.sqlite'),
    log: (error) => logged.push(error),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const ask = <Name extends CallName>(call: Name, input: CallInput<Name>) =>
    opened.value.answer({ call, workshop: 'own', input }) as Promise<Outcome<CallOutput<Name>>>;
  const beside = new SqliteDatabase(dataFile, { readonly: true });
  try {
    const workshop = await begin(ask, beside);
    const written = new Map<string, string>();
    const done: Record<string, number> = {};
    let stepCount = 0;
    for (const step of steps) {
      const answer = await take(workshop, step);
      stepCount += 1;
      done[`${step.kind}: ${answer.what}`] = (done[`${step.kind}: ${answer.what}`] ?? 0) + 1;
      const differences = [
        ...answer.differences,
        ...(await compare(workshop)),
        ...rewritten(beside, written),
        ...logged.map((error) => `the program tells of a mistake of its own: ${error}`),
      ];
      if (differences.length > 0)
        return {
          differences: differences.map((each) => `step ${stepCount}, ${step.kind}: ${each}`),
          done,
          stepCount,
        };
    }
    return { differences: [], done, stepCount };
  } finally {
    beside.close();
    opened.value.close();
  }
}

/** Rows of the tables that only grow, where they are not as they were first seen. Learns the new ones. */
function rewritten(beside: SqliteDatabase.Database, written: Map<string, string>): string[] {
  const now = ['movement', 'cutting', 'lot', 'length'].flatMap((table) =>
    (beside.prepare(`SELECT * FROM ${table}`).all() as { id: string }[]).map(
      (row) => [`${table} ${row.id}`, JSON.stringify(row)] as const,
    ),
  );
  const found = now.flatMap(([key, row]) =>
    (written.get(key) ?? row) === row ? [] : [`${key} was rewritten`],
  );
  const isLost = now.length < written.size;
  for (const [key, row] of now) written.set(key, row);
  return isLost ? [...found, 'rows were removed'] : found;
}

type Ask = <Name extends CallName>(call: Name, input: CallInput<Name>) => Promise<Outcome<CallOutput<Name>>>;

interface Workshop {
  readonly ask: Ask;
  readonly beside: SqliteDatabase.Database;
  readonly book: book.Book;
  readonly itemIds: readonly string[];
  readonly plans: readonly PlanState[];
  /** Of the book's lots, places and cuttings. */
  readonly lotIds: string[];
  readonly places: { readonly lotId: string; readonly lengthId: string | null }[];
  readonly cuttingIds: string[];
}

async function get<Name extends CallName>(
  ask: Ask,
  call: Name,
  input: CallInput<Name>,
): Promise<CallOutput<Name>> {
  const outcome = await ask(call, input);
  if (!outcome.ok) throw new Error(`${call} was refused: ${JSON.stringify(outcome.problems)}`);
  return outcome.value;
}

async function begin(ask: Ask, beside: SqliteDatabase.Database): Promise<Workshop> {
  const snaps = { ...down, kind: 'fastening', name: 'Horn snap', facts: { form: 'snap' } } as const;
  const itemIds: string[] = [];
  for (const item of [taffeta, down, snaps]) itemIds.push((await get(ask, 'saveItem', item)).itemId);
  const kinds = ['cloth', 'fill', 'fastening'] as const;
  const plans: PlanState[] = [];
  for (const name of ['Fen coat', 'Tarn coat', 'Heron coat']) {
    const back = (size: 0 | 1) => piece('back', backs[size]);
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

interface Taken {
  readonly what: 'done' | 'refused' | 'nothing to do';
  readonly differences: readonly string[];
}
const nothing: Taken = { what: 'nothing to do', differences: [] };

/** Both sides must do it, or both refuse. */
function agreed(real: Outcome<unknown>, isDone: boolean): Taken {
  if (real.ok === isDone) return { what: isDone ? 'done' : 'refused', differences: [] };
  const why = real.ok ? 'the book refuses it' : `it is refused: ${JSON.stringify(real.problems)}`;
  return { what: 'refused', differences: [why] };
}

async function receive(
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
  learnPlaces(workshop);
}

/** The program's names of places that have come into being, in the order the book made them. */
function learnPlaces(workshop: Workshop): void {
  const read = workshop.beside.prepare('SELECT id FROM length WHERE lot_id = ? ORDER BY entry').pluck();
  for (let at = workshop.places.length; at < workshop.book.places.length; at++) {
    const { lot, widthMm } = workshop.book.places[at]!;
    const lotId = workshop.lotIds[lot]!;
    const known = new Set(workshop.places.map((place) => place.lengthId));
    const lengthId =
      widthMm === null ? null : ((read.all(lotId) as string[]).find((id) => !known.has(id)) ?? 'missing');
    workshop.places.push({ lotId, lengthId });
  }
}

async function take(workshop: Workshop, step: Step): Promise<Taken> {
  const { ask, book: own, places } = workshop;
  const planState = workshop.plans[step.plan]!;
  const at = step.which % own.places.length;
  const place = own.places[at]!;
  const ref = places[at]!;
  const isWhole = own.lots[place.lot]!.item === 2;
  const rounded = (milli: number) => (isWhole ? Math.round(milli / 1000) * 1000 : Math.round(milli));
  const amount = rounded(place.hand * step.share);
  switch (step.kind) {
    case 'receive cloth':
      await receive(workshop, 0, 1000 + Math.round(step.share * 6000), step.price, step.yes);
      return { what: 'done', differences: [] };
    case 'receive fill':
      await receive(workshop, 1, 50 + Math.round(step.share * 900) / 2, step.price, false);
      return { what: 'done', differences: [] };
    case 'receive snaps':
      await receive(workshop, 2, 1 + Math.round(step.share * 50), step.price, false);
      return { what: 'done', differences: [] };
    case 'set aside': {
      const second = step.other % own.places.length;
      const wholeSecond = own.lots[own.places[second]!.lot]!.item === 2;
      const more = Math.round((own.places[second]!.hand * step.part) / 1000) * 1000;
      const uses = [
        { place: at, milli: amount },
        ...(step.yes ? [{ place: second, milli: wholeSecond ? more : more + 500 }] : []),
      ].filter(({ milli }) => milli > 0);
      const real = await ask('setAside', {
        planId: planState.id,
        uses: uses.map((use) => inUnits(workshop, use)),
      });
      return agreed(real, book.setAside(own, step.plan, uses));
    }
    case 'set aside what the cover takes':
      return setAsideByCover(workshop, step.plan);
    case 'release':
      return agreed(
        await ask('setAside', { planId: planState.id, uses: [] }),
        book.setAside(own, step.plan, []),
      );
    case 'write off': {
      if (amount <= 0) return nothing;
      const real = await ask('writeOff', { ...ref, amount: amount / 1000, reason: 'moths' });
      return agreed(real, book.writeOff(own, at, amount));
    }
    case 'count': {
      const counted = step.yes ? amount : amount + rounded(step.part * 9000);
      book.count(own, at, counted);
      return agreed(await ask('correctCount', { ...ref, counted: counted / 1000, reason: 'counted' }), true);
    }
    case 'cut':
      return cut(workshop, step);
    case 'take back': {
      if (own.cuttings.length === 0) return nothing;
      const id = step.yes
        ? own.cuttings.length - 1 - (step.which % Math.min(3, own.cuttings.length))
        : step.which % own.cuttings.length;
      const real = await ask('undoCutting', { cuttingId: workshop.cuttingIds[id]! });
      return agreed(real, book.takeBack(own, id));
    }
    case 'bring another size to hand': {
      const from = sizes.indexOf(planState.plan.size as '40');
      const to = 1 - from;
      // A size of which none was made is made in place of the one at hand.
      if (planState.counts[to] === 0) planState.counts.reverse();
      return save(workshop, planState, chooseSize(planState.plan, sizes[to]!));
    }
    case 'change the coats': {
      const hand = sizes.indexOf(planState.plan.size as '40');
      const [mine, other] = [1 + (step.which % 6), step.other % 6];
      planState.counts = hand === 0 ? [mine, other] : [other, mine];
      const changed = planState.plan.sizes?.map((each) => ({ ...each, coatCount: other })) ?? [];
      const plan = { ...planState.plan, coatCount: mine, sizes: changed };
      return save(workshop, planState, { ok: true, value: { plan, said: '' } });
    }
    case 'change the margin': {
      planState.margin = step.yes ? 0.5 : step.also ? 0.25 : 0;
      return save(
        workshop,
        planState,
        setMargin(planState.plan, 'fill', { kind: 'share', ratio: planState.margin }),
      );
    }
    default:
      return step.kind satisfies never;
  }
}

function inUnits(workshop: Workshop, { place, milli }: { place: number; milli: number }) {
  return { ...workshop.places[place]!, amount: milli / 1000 };
}

async function save(workshop: Workshop, state: PlanState, edited: Outcome<{ plan: CoatPlan; said: string }>) {
  if (!edited.ok) return agreed(edited, true);
  const saved = await workshop.ask('savePlan', { ...edited.value, basedOn: state.revision });
  if (saved.ok) {
    state.plan = edited.value.plan;
    state.revision = saved.value.revision;
  }
  return agreed(saved, true);
}

/** What the book says a plan still needs of its fill (1) or its snaps (2), thousandths. */
function stillNeeded(workshop: Workshop, planAt: number, slotAt: 1 | 2): number {
  const { counts } = workshop.plans[planAt]!;
  return Math.max(
    0,
    (counts[0] + counts[1]) * perCoat[slotAt] * 1000 - usedUp(workshop.book, planAt, slotAt),
  );
}

/** Oldest lot first, as far as it is free for the plan. */
function fromShelf(workshop: Workshop, planAt: number, item: number, milli: number) {
  let open = milli;
  return workshop.book.places.flatMap((place, at) => {
    if (workshop.book.lots[place.lot]!.item !== item) return [];
    const own = place.reserved.find(({ plan }) => plan === planAt)?.milli ?? 0;
    const taken = Math.min(open, place.hand - book.reservedAt(place) + own);
    open -= taken;
    return taken > 0 ? [{ place: at, milli: taken }] : [];
  });
}

async function coverOf(workshop: Workshop, planAt: number) {
  const input = await get(workshop.ask, 'flowInput', { planId: workshop.plans[planAt]!.id });
  const whole = requirement(input.plan, slotItems(input));
  const needs = stillToCut(input.plan, whole, input.cuttings);
  const amounts = needs.filter(({ kind }) => kind === 'amount');
  const covers = await cover({ ...input, needs: amounts, lays: new Map() }, () => {
    throw new Error('nothing of it is laid');
  });
  return { input, needs, covers };
}

/** Fill with its margin, and snaps: what the plan still needs, and what it holds ready beyond. */
async function setAsideByCover(workshop: Workshop, planAt: number): Promise<Taken> {
  const { margin, id } = workshop.plans[planAt]!;
  const fill = stillNeeded(workshop, planAt, 1);
  const uses = [
    ...fromShelf(workshop, planAt, 1, fill + Math.round(fill * margin)),
    ...fromShelf(workshop, planAt, 2, stillNeeded(workshop, planAt, 2)),
  ];
  const { covers } = await coverOf(workshop, planAt);
  const real = await workshop.ask('setAside', { planId: id, uses: usesToSetAside(covers) });
  return agreed(real, book.setAside(workshop.book, planAt, uses));
}

/** Cloth as the maker says, fill as the cover proposes it, snaps by the piece. */
async function cut(workshop: Workshop, step: Step): Promise<Taken> {
  const { book: own } = workshop;
  const { id, revision } = workshop.plans[step.plan]!;
  const cloth = own.places.flatMap((place, at) => (place.widthMm === null ? [] : [at]));
  const lineOn = (at: number, milli: number, keeps: boolean): book.CutLine => {
    const { widthMm } = own.places[at]!;
    const lengthMm = milli / 1000;
    const remnant = [
      Math.round(lengthMm * 500) / 1000,
      Math.round((widthMm ?? 0) * step.part * 5) / 10,
    ] as const;
    return {
      place: at,
      milli,
      pieceMm2: Math.round((lengthMm * (widthMm ?? 0)) / 3),
      kept: keeps && Math.min(...remnant) > 0 ? [remnant] : [],
    };
  };
  const first = cloth[step.which % cloth.length]!;
  const second = cloth[step.other % cloth.length]!;
  const lines = [lineOn(first, Math.round(own.places[first]!.hand * step.share), step.yes)];
  if (step.also) lines.push(lineOn(second, Math.round(own.places[second]!.hand * step.part), !step.yes));
  const shell = lines.filter(({ milli }) => milli > 0 && milli <= 1e9);
  const needed = stillNeeded(workshop, step.plan, 1);
  const fill = step.many > 1 ? fromShelf(workshop, step.plan, 1, needed) : [];
  const snap = own.places.findIndex((place) => own.lots[place.lot]!.item === 2);
  const slots = [
    { slot: 0, lines: shell },
    { slot: 1, lines: fill.map(({ place, milli }) => ({ place, milli, pieceMm2: null, kept: [] })) },
    // Two lines on one lot.
    {
      slot: 2,
      lines:
        step.many === 3
          ? [1000, 2000].map((milli) => ({ place: snap, milli, pieceMm2: null, kept: [] }))
          : [],
    },
  ].filter((each) => each.lines.length > 0);
  if (slots.length === 0) return nothing;
  const coats = [step.many, step.which % 2];
  const backsCut = [step.other % 3, step.many];
  const differences = fill.length > 0 ? await proposalDiffers(workshop, step.plan, fill) : [];
  const real = await workshop.ask('recordCutting', {
    planId: id,
    basedOn: revision,
    coats: sizes.map((size, at) => ({ size, coatCount: coats[at]! })),
    note: '',
    releasesRest: step.share > 0.8,
    slots: slots.map((each) => ({
      slotId: slotIds[each.slot]!,
      met:
        each.slot === 0
          ? {
              kind: 'shapes' as const,
              shapes: sizes.map((size, at) => ({
                pieceId: 'back',
                size,
                name: 'Back',
                ring: [...rings[at]!],
                count: backsCut[at]!,
                mirroredCount: 0,
              })),
            }
          : { kind: 'amount' as const, amount: each.lines.reduce((sum, { milli }) => sum + milli, 0) / 1000 },
      lines: each.lines.map((line) => ({
        ...inUnits(workshop, line),
        pieceAreaMm2: line.pieceMm2,
        kept: line.kept.map(([lengthMm, widthMm]) => ({ x: 0, y: 0, lengthMm, widthMm })),
      })),
    })),
  });
  const isShell = shell.length > 0;
  const isDone = book.cut(
    own,
    { plan: step.plan, coats, backs: isShell ? backsCut : [0, 0], slots },
    step.share > 0.8,
  );
  if (real.ok && isDone) {
    workshop.cuttingIds.push(real.value.id);
    learnPlaces(workshop);
  }
  const taken = agreed(real, isDone);
  return { ...taken, differences: [...differences, ...taken.differences] };
}

/** A margin is held ready, never proposed to be cut. */
async function proposalDiffers(
  workshop: Workshop,
  planAt: number,
  fill: readonly { place: number; milli: number }[],
) {
  const { input, needs, covers } = await coverOf(workshop, planAt);
  const proposed = cuttingProposal(input.plan, needs, covers).find(({ slotId }) => slotId === 'fill');
  const real = proposed?.lines.map(({ lotId, amount }) => [lotId, Math.round(amount * 1000)]);
  return unlike(
    'fill proposed',
    real,
    fill.map(({ place, milli }) => [workshop.places[place]!.lotId, milli]),
  );
}

function unlike(what: string, real: unknown, expected: unknown): string[] {
  const [one, other] = [JSON.stringify(real), JSON.stringify(expected)];
  return one === other ? [] : [`${what} is ${one}, by the book ${other}`];
}

/** Every balance, value, coat count and cost. */
async function compare(workshop: Workshop): Promise<string[]> {
  const { ask, beside, book: own, itemIds, plans, lotIds, places } = workshop;
  const rows = (sql: string) => beside.prepare(sql).raw().all() as (string | number | null)[][];
  const values = lineValues(own);
  const accounts = itemIds.map((_, item) => itemAccount(own, item, values));
  const of = (lot: number) => own.places.filter((place) => place.lot === lot);
  const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
  const byKey = (one: readonly (string | number | null)[][]) => one.map((row) => row.join(' ')).sort();

  const differences = [
    ...(isSound(own) ? [] : ['the book itself sets aside more than there is']),
    ...unlike(
      'lots',
      byKey(rows('SELECT lot_id, on_hand_milli, reserved_milli FROM lot_balance')),
      byKey(
        lotIds.map((id, lot) => [
          id,
          sum(of(lot).map(({ hand }) => hand)),
          sum(of(lot).map(book.reservedAt)),
        ]),
      ),
    ),
    ...unlike(
      'lengths',
      byKey(rows('SELECT length_id, on_hand_milli, reserved_milli FROM length_balance')),
      byKey(
        places.flatMap(({ lengthId }, at) =>
          lengthId === null ? [] : [[lengthId, own.places[at]!.hand, book.reservedAt(own.places[at]!)]],
        ),
      ),
    ),
    ...unlike(
      'items',
      byKey(rows('SELECT item_id, on_hand_milli, reserved_milli, value_minor FROM item_balance')),
      byKey(
        itemIds.map((id, item) => {
          const there = own.places.filter((place) => own.lots[place.lot]!.item === item);
          const [hand, reserved] = [there.map((place) => place.hand), there.map(book.reservedAt)];
          return [id, sum(hand), sum(reserved), accounts[item]!.onHand];
        }),
      ),
    ),
    ...unlike(
      'what coats have set aside',
      byKey(
        rows(
          'SELECT plan_id, lot_id, length_id, sum(reserved_milli) FROM movement WHERE reserved_milli <> 0 GROUP BY 1, 2, 3 HAVING sum(reserved_milli) <> 0',
        ),
      ),
      byKey(
        own.places.flatMap((place, at) =>
          place.reserved.map(({ plan, milli }) => [
            plans[plan]!.id,
            places[at]!.lotId,
            places[at]!.lengthId,
            milli,
          ]),
        ),
      ),
    ),
  ];

  const account = await get(ask, 'readAccount', {});
  const consumed = plans.map(({ id }, plan) => [
    id,
    -sum(
      values
        .filter((line) => line.cutting !== null && own.cuttings[line.cutting]!.plan === plan)
        .map(({ minor }) => minor),
    ) + 0,
  ]);
  differences.push(
    ...unlike(
      'the account',
      itemIds.map((id) => {
        const real = account.items.find((item) => item.itemId === id)?.account;
        return (
          real && [
            real.receivedMinor,
            real.consumedMinor + 0,
            real.writtenOffMinor + 0,
            real.correctedMinor,
            real.onHandMinor,
          ]
        );
      }),
      accounts.map(({ received, consumed: used, writtenOff, corrected, onHand }) => [
        received,
        used,
        writtenOff,
        corrected,
        onHand,
      ]),
    ),
    ...unlike(
      'what coats consumed',
      byKey(
        account.coats
          .map(({ planId, consumedMinor }) => [planId, consumedMinor + 0])
          .filter(([, minor]) => minor !== 0),
      ),
      byKey(consumed.filter(([, minor]) => minor !== 0)),
    ),
  );

  for (const [plan, { id, counts }] of plans.entries()) {
    const { sheet } = await get(ask, 'readCutSheet', { planId: id });
    const costs = cutCosts(own, plan, values);
    const coats = cutBySize(own, plan, 'coats');
    const all = [...costs.values()];
    differences.push(
      ...unlike(
        `cost as cut of ${plans[plan]!.plan.name}`,
        [
          byKey(sheet.slots.map(({ slotId, costMinor, wasteMinor }) => [slotId, costMinor, wasteMinor])),
          sheet.batchMinor,
          sheet.wasteMinor,
          sizes.map((size) => sheet.coats.find((each) => each.size === size)?.coatCount ?? 0),
          sheet.coatCount,
          sum(sheet.perCoatMinor),
        ],
        [
          byKey(
            [...costs].map(([slotAt, { costMinor, wasteMinor }]) => [
              slotIds[slotAt]!,
              costMinor,
              wasteMinor,
            ]),
          ),
          sum(all.map(({ costMinor }) => costMinor)),
          sum(all.map(({ wasteMinor }) => wasteMinor)),
          coats,
          sum(coats),
          sum(coats) === 0 ? 0 : sum(all.map(({ costMinor }) => costMinor)),
        ],
      ),
    );
    const { needs } = await coverOf(workshop, plan);
    const shell = needs.find((need) => need.slotId === 'shell');
    const amount = (slotId: string) => {
      const need = needs.find((each) => each.slotId === slotId);
      return need?.kind === 'amount' ? Math.round(need.amount * 1000) : null;
    };
    const cutBacks = cutBySize(own, plan, 'backs');
    differences.push(
      ...unlike(
        `what is still to cut of ${plans[plan]!.plan.name}`,
        [
          sizes.map((size) =>
            shell?.kind === 'shapes'
              ? sum(shell.shapes.filter((shape) => shape.size === size).map(({ count }) => count))
              : null,
          ),
          amount('fill'),
          amount('snaps'),
        ],
        [
          counts.map((count, size) => Math.max(0, count - cutBacks[size]!)),
          stillNeeded(workshop, plan, 1),
          stillNeeded(workshop, plan, 2),
        ],
      ),
    );
  }
  return differences;
}
