/** The fibre label against the rules' own examples. */
import type { Fibre } from '../../shared-core/requirement/law/fibre-names.ts';
import { fibreLabel } from '../../shared-core/requirement/law/label.ts';
import { usText } from '../../shared-core/requirement/law/label-text.ts';
import { item, slot } from '../fixtures/small-workshop.ts';
import { filled, smallCoat } from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

const commission = 'US trade commission, "Threading Your Way Through the Labeling Requirements", from memory';
const rule = 'summary of 16 CFR 303.16';
const text = (name: string, source: string, expected: string, got: string): OutsideCheck => ({
  class: 'A',
  name,
  source,
  expected,
  got,
  tolerance: 0,
});

/** Shares from percents, the largest first. */
const mix = (percents: Partial<Record<Fibre, number>>) =>
  Object.entries(percents)
    .map(([fibre, percent]) => ({ fibre: fibre as Fibre, shareRatio: percent / 100 }))
    .sort((x, y) => y.shareRatio - x.shareRatio);

/** The body lined with cotton, the sleeves with a mix of acetate and cotton, both light beside shell and filling. */
const coat = fibreLabel(
  smallCoat({
    slots: [
      slot('shell', 'cloth'),
      slot('body lining', 'cloth'),
      slot('sleeve lining', 'cloth'),
      slot('down', 'fill'),
    ],
  }),
  filled({
    shell: item('cloth', 'taffeta', { fibre: '100 % nylon' }),
    'body lining': item('cloth', 'flannel', { fibre: '100 % cotton' }),
    'sleeve lining': item('cloth', 'satin', { fibre: '60 % acetate, 40 % cotton' }),
    down: item('fill', 'plumage', { fibre: '90 % down, 10 % feathers' }),
  }),
  new Map([
    ['shell', 410],
    ['body lining', 210],
    ['sleeve lining', 70],
    ['down', 160],
  ]),
);

const rows: readonly OutsideCheck[] = [
  text(
    'several fibres under 5 % each, together over it',
    commission,
    '82% polyester, 10% cotton, 8% other fibers',
    usText(mix({ polyester: 82, cotton: 10, silk: 4, linen: 4 })),
  ),
  text(
    '4 % of spandex has a function and is named',
    commission,
    '96% acetate, 4% spandex',
    usText(mix({ acetate: 96, spandex: 4 })),
  ),
  text(
    'one fibre under 5 % is other fiber, last',
    rule,
    '60% rayon, 37% cotton, 3% other fiber',
    usText(mix({ cotton: 37, silk: 3, rayon: 60 })),
  ),
  text('5 % is named', rule, '95% wool, 5% nylon', usText(mix({ nylon: 5, wool: 95 }))),
  text(
    'falling order by weight',
    rule,
    '65% polyester, 35% cotton',
    usText(mix({ cotton: 35, polyester: 65 })),
  ),
  text(
    '4 % of wool is named beside other fiber',
    'Federal Register 79 FR 32157, summary of the Wool Act: wool and recycled wool, and other fibers of 5 % or more',
    '82% polyester, 10% cotton, 4% wool, 4% other fiber',
    usText(mix({ polyester: 82, cotton: 10, silk: 4, wool: 4 })),
  ),
  text(
    '3 % of recycled wool is named',
    'Federal Register 79 FR 32157, summary of the Wool Act',
    '97% cotton, 3% recycled wool',
    usText(mix({ cotton: 97, 'recycled wool': 3 })),
  ),
  text(
    'a filling kept for warmth and linings of other fibres each stand on a line of their own',
    '16 CFR 303.22 and 303.25: separately and distinctly, section by section where mixing would deceive',
    'Shell: 100% nylon / Body lining: 100% cotton / Sleeve lining: 60% acetate, 40% cotton / Filling: 90% down, 10% feathers',
    coat.lines.map((line) => line.us).join(' / '),
  ),
  text(
    'parts that the EU lets out: no lining of body or sleeves, though both are under 30 %',
    'EU 1007/2011 art. 11 (2), from memory',
    '',
    coat.lines.flatMap((line) => (line.mayBeLeftOutInEu ? [line.component] : [])).join(', '),
  ),
];

export default rows;
