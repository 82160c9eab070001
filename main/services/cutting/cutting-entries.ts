/** The rows of the ledger that a cutting is booked as. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CutSlot, KeptRemnant } from '../../../shared-core/stash/cutting.ts';
import { remnantWorth } from '../../../shared-core/stash/cut-cost.ts';
import type { Shrinkage } from '../../../shared-core/stash/shrinkage.ts';
import { fromMilli, toMilli } from '../../../shared-core/stash/stash.ts';
import { type CallContext, newId } from '../calls/call.ts';
import type { CutPlace } from './cut-place.ts';
import { addMovement } from '../stock/ledger.ts';
import { reservedBy } from './set-aside.ts';

export interface Entry {
  readonly cuttingId: string;
  readonly planId: string;
}

/** One row for each slot and place, using up what the plan had set aside there first. */
export async function takeOff(
  context: CallContext,
  places: readonly CutPlace[],
  slots: readonly CutSlot[],
  entry: Entry,
): Promise<void> {
  const own = new Map(places.map((place) => [place.key, place.ownMilli]));
  for (const { slotName, lines } of slots) {
    for (const { lotId, lengthId, amount } of lines) {
      const key = `${lotId} ${lengthId ?? ''}`;
      const milli = toMilli(amount);
      const usedMilli = Math.min(milli, own.get(key) ?? 0);
      own.set(key, (own.get(key) ?? 0) - usedMilli);
      await addMovement(context, {
        ...entry,
        lotId,
        lengthId,
        kind: 'cut',
        onHandMilli: -milli,
        reservedMilli: usedMilli === 0 ? 0 : -usedMilli,
        reason: slotName,
      });
    }
  }
}

/** washed: what its cloth lost by being washed before it was cut; undefined where it was cut as it lay on the shelf. */
export async function putBack(
  context: CallContext,
  place: CutPlace,
  { remnant, washed }: { readonly remnant: KeptRemnant; readonly washed: Shrinkage | undefined },
  entry: Entry,
): Promise<void> {
  const { lotId } = place;
  await context.queries
    .insertInto('length')
    .values({
      id: remnant.lengthId,
      lot_id: lotId,
      width_mm: remnant.widthMm,
      form: 'remnant',
      flaws: '[]',
      worth_ratio: remnantWorth(
        {
          widthMm: place.widthMm ?? remnant.widthMm,
          worthRatio: place.worthRatio,
          ...(washed && { washed }),
        },
        remnant.widthMm,
      ),
      is_washed: washed || place.isWashed ? 1 : 0,
    })
    .execute();
  const movement = { ...entry, lotId, lengthId: remnant.lengthId, kind: 'returned' } as const;
  await addMovement(context, { ...movement, onHandMilli: toMilli(remnant.lengthMm), reason: 'remnant' });
}

/** Flaws are measured from the start of a length: what is left of a flawed one lies on as a length of its own. */
export async function moveRest(context: CallContext, place: CutPlace, entry: Entry): Promise<void> {
  const { lotId, lengthId, widthMm } = place;
  const restMilli = place.onHandMilli - place.cutMilli;
  if (lengthId === null || widthMm === null || place.flaws.length === 0 || restMilli <= 0) return;
  const cutMm = fromMilli(place.cutMilli);
  const restId = newId();
  await context.queries
    .insertInto('length')
    .values({
      id: restId,
      lot_id: lotId,
      width_mm: widthMm,
      form: place.form ?? 'cut',
      flaws: JSON.stringify(
        place.flaws
          .filter((flaw) => flaw.x + flaw.widthX > cutMm)
          .map((flaw) => ({
            ...flaw,
            x: Math.max(0, flaw.x - cutMm),
            widthX: Math.min(flaw.widthX, flaw.x + flaw.widthX - cutMm),
          })),
      ),
      worth_ratio: place.worthRatio,
      is_washed: place.isWashed ? 1 : 0,
    })
    .execute();
  const reason = say('cutting-entries.what-is-left-its-flaws-measured');
  const reserved = (await reservedBy(context.queries, { lotIds: [lotId] })).filter(
    (each) => each.lengthId === lengthId,
  );
  const from = { ...entry, lotId, lengthId, reason };
  const to = { ...from, lengthId: restId };
  for (const { planId, reservedMilli } of reserved) {
    const released = { kind: 'released', onHandMilli: 0, reservedMilli: -reservedMilli } as const;
    await addMovement(context, { ...from, ...released, planId });
  }
  await addMovement(context, { ...from, kind: 'cut', onHandMilli: -restMilli });
  await addMovement(context, { ...to, kind: 'returned', onHandMilli: restMilli });
  for (const { planId, reservedMilli } of reserved) {
    await addMovement(context, { ...to, kind: 'reserved', onHandMilli: 0, reservedMilli, planId });
  }
}

/** Of the items that were cut, nothing stays set aside for this plan. */
export async function releaseRest(
  context: CallContext,
  places: readonly CutPlace[],
  entry: Entry,
): Promise<void> {
  const itemIds = [...new Set(places.map((place) => place.item.id))];
  const lots = await context.queries.selectFrom('lot').select('id').where('item_id', 'in', itemIds).execute();
  const lotIds = new Set(lots.map((lot) => lot.id));
  for (const { lotId, lengthId, reservedMilli } of await reservedBy(context.queries, entry)) {
    if (!lotIds.has(lotId)) continue;
    const released = { kind: 'released', onHandMilli: 0, reservedMilli: -reservedMilli } as const;
    await addMovement(context, {
      ...entry,
      lotId,
      lengthId,
      ...released,
      reason: say('cutting-entries.not-needed'),
    });
  }
}
