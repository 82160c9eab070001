/**
 * The ticks of a shopping list as a short text that one reads off a phone: two signs for the coat, four for the list,
 * one for each five lines, and two that tell a slip of the finger. The page's own script (page-script.ts) makes it; a
 * test holds both to each other in a browser.
 */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { OfferId, PlanId } from '../../stash/stash.ts';

/** Digits and letters without those that are read as others (Crockford's base 32). */
export const codeSigns = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

export interface ListMark {
  readonly plan: string;
  readonly list: string;
}

/** FNV-1a over the UTF-16 units, 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193) >>> 0;
  }
  return hash;
}

function signs(hash: number, count: number): string {
  return Array.from({ length: count }, (_, place) => codeSigns[(hash >>> (place * 5)) & 31]).join('');
}

/** The order in which a code counts the lines, however the list is walked. */
export function countedOrder(offerIds: readonly OfferId[]): readonly OfferId[] {
  return [...new Set(offerIds)].sort();
}

export function listMark(planId: PlanId, offerIds: readonly OfferId[]): ListMark {
  return {
    plan: signs(hashOf(planId), 2),
    list: signs(hashOf([planId, ...countedOrder(offerIds)].join('\n')), 4),
  };
}

/** The code of a list with some of its lines ticked, in groups of four signs. */
export function tickCode(planId: PlanId, offerIds: readonly OfferId[], ticked: ReadonlySet<OfferId>): string {
  const mark = listMark(planId, offerIds);
  const order = countedOrder(offerIds);
  let body = mark.plan + mark.list;
  for (let from = 0; from < order.length; from += 5) {
    const bits = order
      .slice(from, from + 5)
      .reduce((sum, id, bit) => sum + (ticked.has(id) ? 1 << bit : 0), 0);
    body += codeSigns[bits];
  }
  return (body + checkSigns(body)).replace(/(.{4})(?=.)/g, '$1-');
}

function checkSigns(body: string): string {
  return signs(hashOf(body), 2);
}

/** lists: each that the coat may have at this moment, by its offers. Gives which offers are ticked and which are not. */
export function readTickCode(
  text: string,
  planId: PlanId,
  lists: readonly (readonly OfferId[])[],
): Result<{ readonly ticked: readonly OfferId[]; readonly open: readonly OfferId[] }> {
  const where = say('tick-code.the-code');
  const typed = text.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
  const strange = [...typed].find((sign) => !codeSigns.includes(sign));
  if (strange !== undefined) {
    return err({
      where,
      what: say('tick-code.has-a-which-no-code-has', { strange }),
      fix: say('tick-code.type-it-as-the-phone-shows'),
    });
  }
  if (typed.length < 9) {
    return err({ where, what: say('tick-code.is-too-short'), fix: say('tick-code.type-all-of-it-as-the') });
  }
  const body = typed.slice(0, -2);
  if (checkSigns(body) !== typed.slice(-2)) {
    return err({
      where,
      what: say('tick-code.is-mistyped-its-signs-do-not'),
      fix: say('tick-code.compare-it-sign-by-sign-with'),
    });
  }
  if (body.slice(0, 2) !== listMark(planId, []).plan) {
    return err({
      where,
      what: say('tick-code.is-of-the-list-of-another'),
      fix: say('tick-code.open-that-coat-s-list-and'),
    });
  }
  const offerIds = lists.find((candidate) => listMark(planId, candidate).list === body.slice(2, 6));
  const order = countedOrder(offerIds ?? []);
  if (!offerIds || body.length !== 6 + Math.ceil(order.length / 5)) {
    return err({
      where,
      what: say('tick-code.is-of-an-older-list-since'),
      fix: say('tick-code.save-the-ticks-as-a-file'),
    });
  }
  const isTicked = (place: number) =>
    ((codeSigns.indexOf(body[6 + Math.floor(place / 5)]!) >> (place % 5)) & 1) === 1;
  return ok({
    ticked: order.filter((_, place) => isTicked(place)),
    open: order.filter((_, place) => !isTicked(place)),
  });
}
