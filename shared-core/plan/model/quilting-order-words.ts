/** The order of cutting and quilting in words: the same in the plan, in its sentences and in the text for scripts. */
import { say } from '../../wording/say.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { CoatPlan, QuiltingOrder } from './coat-plan.ts';
import { inMm, type LengthText } from '../edits/edited.ts';

/** "cut with 25 mm to spare all round, quilted, and recut to the outline". */
export function orderWords(order: QuiltingOrder, text: LengthText = inMm): string {
  switch (order.kind) {
    case 'outline':
      return say('quilting-order-words.cut-to-the-outline-larger-by');
    case 'rough':
      return say('quilting-order-words.cut-with-to-spare-all-round', { text: text(order.marginMm) });
    case 'panel':
      return say('quilting-order-words.cut-from-one-length-that-is', {
        ifCoats: order.coats === 'each' ? 'yes' : 'no',
      });
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
    ...layers.map(({ name, quiltingOrder }) => ({
      name: say('quilting-order-words.the', { name }),
      quiltingOrder,
    })),
    ...plan.pieces.filter(({ quilted }) => quilted !== null),
  ].flatMap(({ name, quiltingOrder }) => (quiltingOrder ? [{ name, order: quiltingOrder }] : []));
  return [
    say('quilting-order-words.quilted-pieces-are', {
      orderWords: orderWords(quilting.order ?? { kind: 'outline' }, text),
    }),
    ...own.map(({ name, order }) => `${sentenceCase(name)}: ${orderWords(order, text)}.`),
  ];
}
