/** The calls about cuttings: booked in one transaction, read again, taken back by an entry that reverses it. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { type CoatPlan, slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { firstWash, lostBeforeCutting } from '../../../shared-core/requirement/cut/first-wash.ts';
import type { CutLine, CutSlot, Cutting, KeptRemnant } from '../../../shared-core/stash/cutting.ts';
import { cutCost } from '../../../shared-core/stash/cut-cost.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { areaLeftRatio, noShrinkage, type Shrinkage } from '../../../shared-core/stash/shrinkage.ts';
import { toMilli } from '../../../shared-core/stash/stash.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';
import { type CutPlace, placeToCut } from './cut-place.ts';
import { moveRest, putBack, releaseRest, takeOff } from './cutting-entries.ts';
import { readCuttings } from './cutting-read.ts';
import { amountProblem } from '../stock/ledger.ts';
import { undoCutting } from './cutting-undo.ts';
import { latestRevision, noSuchPlan } from '../plans/plans.ts';
import { setAside } from './set-aside.ts';

export const cuttingCalls = {
  setAside,
  recordCutting,
  undoCutting,
  listCuttings: async (context, input) => ok({ rows: await readCuttings(context.queries, input) }),
  readCutting: async (context, input) => answer(context, input.cuttingId),
} satisfies Calls<'setAside' | 'recordCutting' | 'undoCutting' | 'listCuttings' | 'readCutting'>;

async function answer(context: CallContext, cuttingId: string): Promise<Result<Cutting>> {
  const [cutting] = await readCuttings(context.queries, { cuttingId });
  return cutting ? ok(cutting) : err(noSuchCutting);
}

export const noSuchCutting: Problem = {
  get where() {
    return say('common.the-cutting');
  },
  get what() {
    return say('cutting.is-not-in-the-ledger');
  },
  get fix() {
    return say('cutting.open-the-coat-again-and-choose');
  },
};

type Asked = CallInput<'recordCutting'>;
type AskedLine = Asked['slots'][number]['lines'][number];

async function recordCutting(
  context: CallContext,
  input: Asked,
): Promise<Result<CallOutput<'recordCutting'>>> {
  const latest = await latestRevision(context, input.planId);
  if (!latest) return err(noSuchPlan);
  const { plan, revision } = latest;
  if (revision !== input.basedOn) {
    return err({
      where: say('cutting.the-plan', { planName: plan.name }),
      what: say('cutting.was-changed-meanwhile'),
      fix: say('cutting.open-it-again-so-that-what'),
    });
  }
  const problems = askedProblems(plan, input);
  if (problems.length > 0) return err(...problems);
  const cuttingId = newId();
  const places = new Map<string, CutPlace>();
  const slots: CutSlot[] = [];
  const kept: {
    readonly place: CutPlace;
    readonly remnant: KeptRemnant;
    readonly washed: Shrinkage | undefined;
  }[] = [];
  for (const asked of input.slots) {
    const slot = slotById(plan, asked.slotId);
    const lines: CutLine[] = [];
    for (const line of asked.lines) {
      const key = `${line.lotId} ${line.lengthId ?? ''}`;
      const read = places.get(key) ?? (await placeToCut(context, plan.id, line));
      if ('problems' in read) return err(...read.problems);
      const washed = washedBefore(read, slot);
      const wrong = lineProblem(read, line, slot, washed);
      if (wrong) return err(wrong);
      const remnants = line.kept.map((rest): KeptRemnant => ({ ...rest, lengthId: newId() }));
      places.set(key, { ...read, cutMilli: read.cutMilli + toMilli(line.amount) });
      kept.push(...remnants.map((remnant) => ({ place: read, remnant, washed })));
      lines.push(cutLine(read, line, remnants, washed));
    }
    if (lines.length === 0) continue;
    slots.push({ slotId: slot.id, slotName: slot.name, kind: slot.kind, met: asked.met, lines });
  }
  await context.queries
    .insertInto('cutting')
    .values({
      id: cuttingId,
      plan_id: plan.id,
      revision,
      at: context.now().toISOString(),
      coats: JSON.stringify(input.coats),
      slots: JSON.stringify(slots),
      note: input.note,
      undoes: null,
    })
    .execute();
  const entry = { cuttingId, planId: plan.id };
  await takeOff(context, [...places.values()], slots, entry);
  for (const { place, ...back } of kept) await putBack(context, place, back, entry);
  for (const place of places.values()) await moveRest(context, place, entry);
  if (input.releasesRest) await releaseRest(context, [...places.values()], entry);
  return answer(context, cuttingId);
}

function askedProblems(plan: CoatPlan, input: Asked): Problem[] {
  const sizes = new Set([plan.size, ...(plan.sizes ?? []).map((each) => each.size)]);
  const slotIds = input.slots.map((slot) => slot.slotId);
  if (input.slots.every((slot) => slot.lines.length === 0)) {
    return [
      {
        where: say('common.the-cutting'),
        what: say('cutting.takes-nothing'),
        fix: say('cutting.choose-at-least-one-slot-that'),
      },
    ];
  }
  return [
    ...input.coats
      .filter(({ size }) => !sizes.has(size))
      .map(({ size }) => ({
        where: say('cutting.size', { size }),
        what: say('common.is-not-in-the-plan'),
        fix: say('cutting.choose-one-of-its-sizes'),
      })),
    ...slotIds
      .filter(
        (slotId, index) =>
          slotIds.indexOf(slotId) !== index || !plan.slots.some((slot) => slot.id === slotId),
      )
      .map((slotId) => ({
        where: say('cutting.the-slot', { slotId }),
        what: say('cutting.is-not-in-the-plan-or'),
        fix: say('cutting.open-the-coat-again-and-choose'),
      })),
  ];
}

/** What a place loses by being washed before it is cut for a slot; undefined where it is cut as it lies on the shelf. */
function washedBefore({ item, isWashed }: CutPlace, slot: CoatPlan['slots'][number]): Shrinkage | undefined {
  const wash = firstWash(slot, item);
  if (!wash?.isBeforeCutting) return undefined;
  return isWashed ? noShrinkage : lostBeforeCutting(wash);
}

/** Why a line cannot be booked, or null. Remnants and pieces must have room in what is cut, as it is when it is cut. */
function lineProblem(
  place: CutPlace,
  line: AskedLine,
  slot: CoatPlan['slots'][number],
  washed: Shrinkage = noShrinkage,
): Problem | null {
  const { item, show } = place;
  const where = say('cutting.amount-of', { itemName: item.name });
  const notCounted = amountProblem(
    { ...item, facts: JSON.stringify(item.facts) },
    line.amount,
    say('common.amount'),
  );
  if (notCounted) return notCounted;
  if (item.kind !== slot.kind) {
    const wanted = nounInSentence(kindRecords[slot.kind].label);
    return {
      where: say('cutting.slot', { slotName: slot.name }),
      what: say('cutting.cannot-be-cut-from', { itemName: item.name }),
      fix: say('cutting.choose-for-it', { wanted }),
    };
  }
  const amountMilli = toMilli(line.amount);
  const freeMilli = Math.max(0, place.onHandMilli - place.othersMilli - place.cutMilli);
  if (amountMilli > freeMilli) {
    const others =
      place.othersMilli > 0
        ? say('cutting.of-it-set-aside-for-other', { show: show(place.othersMilli) })
        : '';
    return {
      where,
      what: say('cutting.is-more-than-is-there-is', { show: show(place.onHandMilli), others }),
      fix: say('cutting.correct-the-amount-or-count-what'),
    };
  }
  if ((line.trimmedMm2 ?? 0) > (line.pieceAreaMm2 ?? 0) + 1) {
    return {
      where: say('cutting.trimmings-of', { itemName: item.name }),
      what: say('cutting.are-more-than-its-pieces'),
      fix: say('cutting.open-the-coat-again-and-choose'),
    };
  }
  if (line.kept.length === 0) return null;
  if (line.lengthId === null || place.widthMm === null) {
    return {
      where,
      what: say('cutting.has-remnants-but-it-does-not'),
      fix: say('cutting.leave-the-remnants-out'),
    };
  }
  const { widthMm } = place;
  const tooLarge = line.kept.find(
    (rest) =>
      rest.widthMm > widthMm * (1 - washed.acrossRatio) + 0.01 ||
      rest.lengthMm > line.amount * (1 - washed.alongRatio) + 0.01,
  );
  const keptMm2 = line.kept.reduce((sum, rest) => sum + rest.widthMm * rest.lengthMm, 0);
  if (tooLarge || keptMm2 + (line.pieceAreaMm2 ?? 0) > line.amount * widthMm * areaLeftRatio(washed) + 1) {
    return {
      where: say('cutting.remnants-of', { itemName: item.name }),
      what: say('cutting.are-more-than-is-left-beside'),
      fix: say('cutting.measure-them-again-width-across-length'),
    };
  }
  return null;
}

function cutLine(
  place: CutPlace,
  line: AskedLine,
  kept: readonly KeptRemnant[],
  washed: Shrinkage | undefined,
): CutLine {
  const { id: itemId, name: itemName } = place.item;
  const { lotId, lengthId, amount } = line;
  const cost = cutCost({
    item: place.item,
    lot: place.lot,
    widthMm: place.widthMm,
    worthRatio: place.worthRatio,
    amount,
    pieceMm2: line.pieceAreaMm2,
    trimmedMm2: line.trimmedMm2 ?? 0,
    kept,
    ...(washed && { washed }),
  });
  const { dyeLot } = place.lot;
  return { itemId, itemName, lotId, lengthId, dyeLot, amount, kept, ...(washed && { washed }), ...cost };
}
