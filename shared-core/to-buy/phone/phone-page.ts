/**
 * The shopping list as one HTML file for a phone: it needs nothing beside itself and may reach nothing. Its ticks come
 * back as a code (tick-code.ts) or a file (ticks-file.ts).
 */
import { decimalSign, groupingSign } from '../../wording/number-signs.ts';
import { say, spokenLanguage } from '../../wording/say.ts';
import { dayWords } from '../../measure/calendar-date.ts';
import { minorPlaces } from '../../measure/money/currency.ts';
import { showQuantity } from '../../measure/show.ts';
import { xmlText } from '../../measure/text/xml-text.ts';
import {
  type ListOptions,
  type ListSources,
  shoppingGroups,
  unitsWords,
  usedForWords,
} from '../shopping-list.ts';
import type { ListView } from '../shopping-table.ts';
import type { ToBuy, ToBuyLine } from '../to-buy.ts';
import { pageScript, pageScriptHash } from './page-script.ts';
import { pageStyle, pageStyleHash } from './page-style.ts';
import { countedOrder, listMark } from './tick-code.ts';
import { ticksFileKind } from './ticks-file.ts';

/** Nothing is loaded, sent or framed; of scripts and styles only the two of the page itself run. */
const pageRules = [
  "default-src 'none'",
  `script-src 'sha256-${pageScriptHash}'`,
  `style-src 'sha256-${pageStyleHash}'`,
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** today: ISO date. Every word that a maker typed is escaped. */
export function phonePage(
  sources: ListSources,
  toBuy: ToBuy,
  options: ListOptions,
  { arrangement, ticked }: ListView,
  today: string,
): string {
  const { plan } = sources;
  const offerIds = toBuy.lines.map(({ offer }) => offer.id);
  const places = new Map(countedOrder(offerIds).map((offerId, place) => [offerId, place]));
  const mark = listMark(plan.id, offerIds);
  const line = (each: ToBuyLine) => {
    const item = sources.shelf.find((onShelf) => onShelf.item.id === each.itemId)?.item;
    const name = [item?.name ?? '', item?.colour ?? ''].filter(Boolean).join(', ');
    const more = [
      unitsWords(each.offer.unit, each.unitCount, options.system),
      usedForWords(sources, each.slotIds),
      ...(arrangement === 'aisle' ? [each.offer.supplier] : []),
    ].join('; ');
    const price = showQuantity('money', each.priceMinor, options);
    return `<li><label><input type="checkbox" ${attributes({
      'data-offer': each.offer.id,
      'data-place': String(places.get(each.offer.id)),
      'data-minor': String(each.priceMinor),
      'data-name': name,
    })}${ticked.has(each.offer.id) ? ` ${say('phone-page.checked')}` : ''}><span class="name">${xmlText(name)}</span><span class="price">${xmlText(price)}</span><span class="more">${xmlText(more)}</span></label></li>`;
  };
  const groups = shoppingGroups(sources, toBuy, arrangement).map(
    ({ title, lines }) => `<h2>${xmlText(title)}</h2>\n<ul>\n${lines.map(line).join('\n')}\n</ul>`,
  );
  const title = xmlText(say('phone-page.to-buy', { planName: plan.name }));
  const body = attributes({
    'data-plan-id': plan.id,
    'data-plan-mark': mark.plan,
    'data-list-mark': mark.list,
    'data-currency': options.currency,
    'data-decimal-sign': decimalSign(),
    'data-grouping-sign': groupingSign(),
    'data-ticked-words': say('phone-page.of-ticked', { tickedCount: '#', count: '##' }),
    'data-unread-words': say('phone-page.the-ticks-that-were-kept-here'),
    'data-marked-words': say('phone-page.the-code-is-marked-copy-it'),
    'data-copied-words': say('phone-page.copied'),
    'data-saved-words': say('phone-page.saved-as-ticks-json-where-this'),
    'data-places': String(minorPlaces(options.currency)),
    'data-file-kind': ticksFileKind,
  });
  return `<!doctype html>
<html lang="${spokenLanguage()}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${pageRules}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<style>${pageStyle}</style>
</head>
<body ${body}>
<main>
<h1>${title}</h1>
<p class="soft">${xmlText(say('phone-page.as-it-stood-on-this-page', { day: dayWords(today) }))}</p>
<p class="soft" id="kept">${xmlText(say('phone-page.ticks-are-kept-on-this-phone'))}</p>
<p class="soft" id="unkept" hidden>${xmlText(say('phone-page.this-phone-does-not-let-the'))}</p>
<div class="bar" role="status"><span id="count"></span><span id="sum"></span></div>
${groups.join('\n')}
<section class="back">
<h2>${xmlText(say('phone-page.bring-the-ticks-back'))}</h2>
<p class="soft">${xmlText(say('phone-page.in-the-workshop-open-this-coat'))}</p>
<output id="code"></output>
<button type="button" id="copy">${xmlText(say('phone-page.copy-the-code'))}</button>
<button type="button" id="save">${xmlText(say('phone-page.save-as-a-file'))}</button>
<p class="soft" id="said" role="status"></p>
</section>
</main>
<script>${pageScript}</script>
</body>
</html>
`;
}

function attributes(values: Readonly<Record<string, string>>): string {
  return Object.entries(values)
    .map(([name, value]) => `${name}="${xmlText(value)}"`)
    .join(' ');
}
