/** The order of cutting and quilting in words: the same in the plan, in its sentences and in the text for scripts. */
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { CoatPlan, QuiltingOrder } from './coat-plan.ts';
import { inMm, type LengthText } from '../edits/edited.ts';

/** "cut with 25 mm to spare all round, quilted, and recut to the outline". */
export function orderWords(order: QuiltingOrder, text: LengthText = inMm): string {
  switch (order.kind) {
    case 'outline':
      return 'cut to the outline, larger by the take-up, and then quilted';
    case 'rough':
      return `cut with ${text(order.marginMm)} to spare all round, quilted, and recut to the outline`;
    case 'panel':
      return `cut from ${order.coats === 'each' ? 'a panel that is quilted for each coat' : 'one length that is quilted for all coats'}`;
    default:
      return order satisfies never;
  }
}

/** How the plan's quilted pieces are made, the rule first and then what differs from it; empty where nothing is quilted. */
export function orderSentences(plan: CoatPlan, text: LengthText = inMm): string[] {
  const { quilting } = plan;
  if (quilting === null || plan.pieces.every(({ quilted }) => quilted === null)) return [];
  const layers = plan.slots.filter(({ isQuilted }) => isQuilted);
  const own = [
    ...layers.map(({ name, quiltingOrder }) => ({ name: `the ${name}`, quiltingOrder })),
    ...plan.pieces.filter(({ quilted }) => quilted !== null),
  ].flatMap(({ name, quiltingOrder }) => (quiltingOrder ? [{ name, order: quiltingOrder }] : []));
  return [
    `Quilted pieces are ${orderWords(quilting.order ?? { kind: 'outline' }, text)}.`,
    ...own.map(({ name, order }) => `${sentenceCase(name)}: ${orderWords(order, text)}.`),
  ];
}
