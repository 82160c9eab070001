/** One step on both sides: the program's services and the book. Both must do it, or both refuse. */
import type { Result } from '../../../shared-core/measure/problem.ts';
import { cuttingProposal } from '../../../shared-core/cover/cutting-proposal.ts';
import { usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { setMargin } from '../../../shared-core/plan/model/margin.ts';
import { chooseSize } from '../../../shared-core/plan/model/sizes.ts';
import * as book from './model.ts';
import type { Step } from './step.ts';
import { undo } from './undo.ts';
import {
  coverOf,
  get,
  learnPlaces,
  type PlanState,
  receive,
  rings,
  sizes,
  slotIds,
  stillNeeded,
  unlike,
  type Workshop,
} from './workshop.ts';

export interface Taken {
  readonly what: 'done' | 'refused' | 'nothing to do';
  readonly differences: readonly string[];
}
const nothing: Taken = { what: 'nothing to do', differences: [] };

/** Both sides must do it, or both refuse. */
function agreed(real: Result<unknown>, isDone: boolean): Taken {
  if (real.ok === isDone) return { what: isDone ? 'done' : 'refused', differences: [] };
  const why = real.ok ? 'the book refuses it' : `it is refused: ${JSON.stringify(real.problems)}`;
  return { what: 'refused', differences: [why] };
}

export async function take(workshop: Workshop, step: Step): Promise<Taken> {
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
      const real = await ask('correctCount', { ...ref, counted: counted / 1000, reason: 'counted' });
      return agreed(real, book.count(own, at, counted));
    }
    case 'undo': {
      const { change } = await get(ask, 'readLastChange', {});
      if (change === null) {
        return { ...nothing, differences: unlike('what can be undone', null, own.last) };
      }
      return agreed(await ask('undoLastChange', { changeId: change.id }), undo(own));
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

async function save(workshop: Workshop, state: PlanState, edited: Result<{ plan: CoatPlan; said: string }>) {
  if (!edited.ok) return agreed(edited, true);
  const saved = await workshop.ask('savePlan', { ...edited.value, basedOn: state.revision });
  if (saved.ok) {
    state.plan = edited.value.plan;
    state.revision = saved.value.revision;
  }
  return agreed(saved, true);
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
    releasesRest: step.price % 2 === 0,
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
    step.price % 2 === 0,
  );
  if (real.ok && isDone) {
    workshop.cuttingIds.push(real.value.id);
    await learnPlaces(workshop);
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
