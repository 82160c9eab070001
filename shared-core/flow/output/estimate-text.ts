/** An estimate as plain text, for the headless command and the clipboard: the road from need to cost. */
import { say } from '../../wording/say.ts';
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
      marginAmount > 0
        ? say('estimate-text.beside-it-as-margin-for-safety', {
            amountWords: amountWords(need, marginAmount, context),
          })
        : '';
    if (need.kind === 'amount')
      return row(
        name(need.slotId),
        [
          `${amountWords(need, need.amount, context)}${need.isFloor ? ` ${say('estimate-text.at-least')}` : ''}${margin}`,
          needWords(plan, need.slotId, slotItems(sources), system),
        ]
          .filter(Boolean)
          .join('; '),
      );
    if (!slotLay) return row(name(need.slotId), say('estimate-text.nothing-to-cut'));
    const bands = bandLines(plan, need.slotId).map((band) =>
      row('', howText(`${band.name}: ${band.how}`, system)),
    );
    const falls = layStillFalls(slotLay.result, false);
    const still = falls
      ? say('estimate-text.usually-shorter-when-looked-for-longer', {
          stillFallsWords: stillFallsWords(falls),
        })
      : '';
    const trimmings = trimmingsOf(need, items.get(need.slotId));
    const trimmed = trimmings
      ? say('estimate-text.of-the-pieces-is-trimmed-off', {
          trimmingsWords: trimmingsWords(trimmings, system),
        })
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
      `${money(line.costMinor)}${line.wasteMinor > 0 ? say('estimate-text.of-it-between-the-pieces', { money: money(line.wasteMinor) }) : ''}${line.trimmings ? say('estimate-text.in-trimmings', { money: money(line.trimmings.costMinor) }) : ''}${line.isIncomplete ? say('estimate-text.not-complete') : ''}`,
    ),
  );
  const listFalls = slotsStillFall(estimate, slotsBought(estimate), false);
  const perCoat = estimate.cost.perCoatMinor[0] ?? 0;
  return [
    sizesWords(plan),
    ...orderSentences(plan, (mm) => showQuantity('length', mm, { system })),
    section(say('estimate-text.what-it-needs'), needs),
    ...(estimate.panels.length > 0
      ? [
          section(
            say('estimate-text.quilted-before-it-is-cut'),
            estimate.panels.map((panel) => `  ${panelSentence(panel, plan, system)}`),
          ),
        ]
      : []),
    ...adviceSections(sources, system),
    section(say('estimate-text.cover', { coverHeadline: coverHeadline(estimate.cover) }), [
      ...estimate.still.map((still) => `  ${stillEnoughSentence(still, context)}`),
      ...estimate.cover.flatMap((slotCover) =>
        coverSentences(slotCover, context).map((sentence) => `  ${sentence}`),
      ),
    ]),
    section(say('common.to-buy-2'), [
      ...(listFalls ? [`  ${listSentence(listFalls)}`] : []),
      indented(shoppingText(sources, estimate.toBuy, { system, currency })),
    ]),
    ...basketSections(sources, estimate, { system, currency }),
    section(say('estimate-text.cost-of-material'), [
      ...costs,
      row(say('estimate-text.the-batch'), money(estimate.cost.batchMinor)),
      row(say('common.one-coat'), money(perCoat)),
    ]),
    section(
      say('estimate-text.price-of-one-coat'),
      priceRows(priceSheet(plan, estimate.cost, pricing ?? defaultPriceRules), { system, currency }).map(
        ([of, text]) => row(of, text),
      ),
    ),
    section(say('estimate-text.the-finished-coat'), finishedRows(plan, estimate, system)),
    ...(estimate.cost.isIncomplete
      ? [
          `
${say('estimate-text.some-of-it-has-no-price')}`,
        ]
      : []),
  ].join('\n');
}

/** What to mind before sewing; nothing where nothing is amiss. */
function adviceSections(sources: FlowSources, system: MeasureSystem): string[] {
  const advice = sewingAdvice(sources.plan, slotItems(sources));
  return advice.length === 0
    ? []
    : [
        section(
          say('estimate-text.before-you-sew'),
          advice.map((each) => `  ${adviceText(each, system)}`),
        ),
      ];
}

/** Weight, label, warmth and packed size of one coat of each size, then care and cautions of them all. */
function finishedRows(plan: CoatPlan, { finished }: Estimate, system: MeasureSystem): string[] {
  const coats = finished.coats.flatMap((coat) => [
    row(
      finished.coats.length > 1 ? say('estimate-text.weight', { coatCount: coat.size }) : 'weight',
      massWords(coat, system),
    ),
    ...coat.label.lines.map((line) => row('label', say('estimate-text.us-eu', { us: line.us, eu: line.eu }))),
    ...[...coat.label.euNotes.map((note) => say('estimate-text.eu', { note })), ...coat.label.asides].map(
      (note) => row('', note),
    ),
    row('warmth', cloWords(coat) ?? say('common.not-known')),
    row('packed', packedWords(coat, system) ?? say('common.not-known')),
  ]);
  return [
    ...coats,
    ...finished.care.limits.map((limit) => row(limit.name.toLowerCase(), careLimitWords(plan, limit))),
    row(
      say('estimate-text.care-label'),
      finished.care.label.lines.map(({ text }) => text).join(' ') || say('common.not-known'),
    ),
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
    [say('estimate-text.why-this-basket'), toBuy.whys.map((why) => whySentence(why, words))],
    [
      say('estimate-text.with-fewer-suppliers'),
      toBuy.fewer.map((other) => fewerSentence(toBuy, other, words)),
    ],
    [say('estimate-text.before-you-order'), basketCautions(toBuy, today, words)],
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
    ({ size, coatCount }) =>
      `${size && `${say('estimate-text.size', { size })} `}${coatCount} ${say('estimate-text.coats', { coatCount })}`,
  );
  return [plan.name, ...sizes].join(', ');
}
