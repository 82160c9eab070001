/** An estimate as plain text, for the headless command and the clipboard: the road from need to cost. */
import { amountWords, coverHeadline, coverSentences, type WordsContext } from '../../cover/cover-words.ts';
import { marginOf } from '../../cover/held-back.ts';
import { type PriceRules, priceSheet, defaultPriceRules } from '../../cost/price.ts';
import { priceRows } from '../../cost/price-words.ts';
import { stillEnoughSentence } from '../../cover/still-enough.ts';
import { type Estimate, type FlowSources, slotItems } from '../estimate.ts';
import { listSentence, slotsBought, slotsStillFall } from '../falls-of-estimate.ts';
import { layWords } from '../../lay/lay-words.ts';
import { layStillFalls, stillFallsWords } from '../../lay/still-falls/still-falls.ts';
import { howText } from '../../measure/basis.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { showQuantity } from '../../measure/show.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';
import { orderSentences } from '../../plan/model/quilting-order-words.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import {
  careLimitWords,
  cloWords,
  massWords,
  packedWords,
} from '../../requirement/finished/finished-words.ts';
import { adviceText, sewingAdvice } from '../../requirement/sewing-advice.ts';
import { bandLines } from '../../requirement/need-detail.ts';
import { panelSentence } from '../../requirement/cut/panel-words.ts';
import { trimmingsOf, trimmingsWords } from '../../requirement/cut/trimmings.ts';
import { needWords } from '../../requirement/need-words.ts';
import { basketCautions, fewerSentence, whySentence } from '../../to-buy/basket-words.ts';
import { shoppingText } from '../../to-buy/shopping-list.ts';

export interface TextOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
  /** Absent: the maker has said nothing of it, so there is no price. */
  readonly pricing?: PriceRules;
}

export function estimateText(
  sources: FlowSources & { readonly today: string },
  estimate: Estimate,
  { system, currency, pricing }: TextOptions,
): string {
  const { plan } = sources;
  const context: WordsContext = { plan, shelf: sources.shelf, system };
  const money = (amountMinor: number) => showQuantity('money', amountMinor, { system, currency });
  const name = (slotId: string) => slotById(plan, slotId).name;
  const items = slotItems(sources);
  const needs = estimate.requirement.map((need) => {
    const slotLay = estimate.lays.find((candidate) => candidate.slotId === need.slotId);
    const marginAmount = marginOf(need, slotLay);
    const margin =
      marginAmount > 0 ? `; beside it ${amountWords(need, marginAmount, context)} as margin for safety` : '';
    if (need.kind === 'amount')
      return row(
        name(need.slotId),
        [
          `${amountWords(need, need.amount, context)}${need.isFloor ? ' at least' : ''}${margin}`,
          needWords(plan, need.slotId, slotItems(sources), system),
        ]
          .filter(Boolean)
          .join('; '),
      );
    if (!slotLay) return row(name(need.slotId), 'nothing to cut');
    const bands = bandLines(plan, need.slotId).map((band) =>
      row('', howText(`${band.name}: ${band.how}`, system)),
    );
    const falls = layStillFalls(slotLay.result, false);
    const still = falls ? `; usually ${stillFallsWords(falls)} shorter when looked for longer` : '';
    const trimmings = trimmingsOf(need, items.get(need.slotId));
    const trimmed = trimmings
      ? `; of the pieces ${trimmingsWords(trimmings, system)} is trimmed off after quilting`
      : '';
    const laid = row(
      name(need.slotId),
      layWords(slotLay.result, system, slotLay.washed) + still + margin + trimmed,
    );
    return [laid, ...bands].join('\n');
  });
  const costs = estimate.cost.lines.map((line) =>
    row(
      name(line.slotId),
      `${money(line.costMinor)}${line.wasteMinor > 0 ? `, of it ${money(line.wasteMinor)} between the pieces` : ''}${line.trimmings ? `, ${money(line.trimmings.costMinor)} in trimmings` : ''}${line.isIncomplete ? ', not complete' : ''}`,
    ),
  );
  const listFalls = slotsStillFall(estimate, slotsBought(estimate), false);
  const perCoat = estimate.cost.perCoatMinor[0] ?? 0;
  return [
    sizesWords(plan),
    ...orderSentences(plan, (mm) => showQuantity('length', mm, { system })),
    section('What it needs', needs),
    ...(estimate.panels.length > 0
      ? [
          section(
            'Quilted before it is cut',
            estimate.panels.map((panel) => `  ${panelSentence(panel, plan, system)}`),
          ),
        ]
      : []),
    ...adviceSections(sources, system),
    section(`Cover: ${coverHeadline(estimate.cover)}`, [
      ...estimate.still.map((still) => `  ${stillEnoughSentence(still, context)}`),
      ...estimate.cover.flatMap((slotCover) =>
        coverSentences(slotCover, context).map((sentence) => `  ${sentence}`),
      ),
    ]),
    section('To buy', [
      ...(listFalls ? [`  ${listSentence(listFalls)}`] : []),
      indented(shoppingText(sources, estimate.toBuy, { system, currency })),
    ]),
    ...basketSections(sources, estimate, { system, currency }),
    section('Cost of material', [
      ...costs,
      row('the batch', money(estimate.cost.batchMinor)),
      row('one coat', money(perCoat)),
    ]),
    section(
      'Price of one coat',
      priceRows(priceSheet(plan, estimate.cost, pricing ?? defaultPriceRules), { system, currency }).map(
        ([of, text]) => row(of, text),
      ),
    ),
    section('The finished coat', finishedRows(plan, estimate, system)),
    ...(estimate.cost.isIncomplete ? ['\nSome of it has no price yet: the cost is not complete.'] : []),
  ].join('\n');
}

/** What to mind before sewing; nothing where nothing is amiss. */
function adviceSections(sources: FlowSources, system: MeasureSystem): string[] {
  const advice = sewingAdvice(sources.plan, slotItems(sources));
  return advice.length === 0
    ? []
    : [
        section(
          'Before you sew',
          advice.map((each) => `  ${adviceText(each, system)}`),
        ),
      ];
}

/** Weight, label, warmth and packed size of one coat of each size, then care and cautions of them all. */
function finishedRows(plan: CoatPlan, { finished }: Estimate, system: MeasureSystem): string[] {
  const coats = finished.coats.flatMap((coat) => [
    row(finished.coats.length > 1 ? `weight, ${coat.size}` : 'weight', massWords(coat, system)),
    ...coat.label.lines.map((line) => row('label', `US ${line.us}; EU ${line.eu}`)),
    ...[...coat.label.euNotes.map((note) => `EU ${note}`), ...coat.label.asides].map((note) => row('', note)),
    row('warmth', cloWords(coat) ?? 'not known'),
    row('packed', packedWords(coat, system) ?? 'not known'),
  ]);
  return [
    ...coats,
    ...finished.care.limits.map((limit) => row(limit.name.toLowerCase(), careLimitWords(plan, limit))),
    row('care label', finished.care.label.lines.map(({ text }) => text).join(' ') || 'not known'),
    ...finished.care.label.asides.map((aside) => row('', aside)),
    ...finished.care.conflicts.map(({ says, fix }) => row('', `${says} ${fix}`)),
    ...finished.cautions.map(({ kind, says, defersTo }) => row(kind, `${says} ${defersTo}`)),
  ];
}

/** Why this basket, what is next best, and what to mind; nothing where nothing is bought. */
function basketSections(
  { shelf, today }: FlowSources & { readonly today: string },
  { toBuy }: Estimate,
  options: TextOptions,
): string[] {
  const words = { shelf, ...options };
  const rows = (sentences: readonly string[]) => sentences.map((sentence) => `  ${sentence}`);
  const parts: readonly (readonly [title: string, sentences: readonly string[]])[] = [
    ['Why this basket', toBuy.whys.map((why) => whySentence(why, words))],
    ['With fewer suppliers', toBuy.fewer.map((other) => fewerSentence(toBuy, other, words))],
    ['Before you order', basketCautions(toBuy, today, words)],
  ];
  return parts.flatMap(([title, sentences]) =>
    sentences.length > 0 ? [section(title, rows(sentences))] : [],
  );
}

function row(name: string, text: string): string {
  return `  ${name.padEnd(20)}${text}`;
}

function section(title: string, rows: readonly string[]): string {
  return `\n${title}\n${rows.join('\n')}`;
}

function indented(text: string): string {
  return text
    .split('\n')
    .map((line) => (line === '' ? line : `  ${line}`))
    .join('\n');
}

/** "Fenwalk coat, size 40: 6 coats, size 42: 2 coats". */
function sizesWords(plan: CoatPlan): string {
  const sizes = plansBySize(plan).map(
    ({ size, coatCount }) => `${size && `size ${size}: `}${coatCount} ${coatCount === 1 ? 'coat' : 'coats'}`,
  );
  return [plan.name, ...sizes].join(', ');
}
