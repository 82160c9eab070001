/** The fibre label against the rules' own examples, and a coat worked by hand. */
import { type Fibre, mixedFibres, readFibre } from '../../shared-core/requirement/fibre.ts';
import {
  euText,
  fibreLabel,
  isWithinLabelTolerance,
  statableRatios,
  usText,
  wholePercents,
} from '../../shared-core/requirement/label.ts';
import { item, slot } from '../fixtures/small-workshop.ts';
import { filled, smallCoat } from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

const commission = 'US trade commission, "Threading Your Way Through the Labeling Requirements", from memory';
const rule = 'summary of 16 CFR 303.16';
const eu = 'EU 1007/2011 art. 9 and Annex I, from memory';
const text = (name: string, source: string, expected: string, got: string): OutsideCheck => ({
  name,
  source,
  expected,
  got,
  tolerance: 0,
});

const mix = (shares: Partial<Record<Fibre, number>>) =>
  mixedFibres(
    Object.entries(shares).map(([fibre, massG]) => ({
      massG,
      shares: [{ fibre: fibre as Fibre, shareRatio: 1 }],
    })),
  );

/** A coat by hand: lining 210 g of cotton and 70 g of 60/40 acetate and cotton: 238 of 280 g cotton, 42 acetate. */
const worked = fibreLabel(
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
    ['shell', 180],
    ['body lining', 210],
    ['sleeve lining', 70],
    ['down', 160],
  ]),
);
const printed = (section: string, form: 'us' | 'eu') =>
  worked.lines.find((line) => line.section === section)?.[form] ?? 'missing';
const byHand = `worked by hand to ${rule}`;
const isFound = (content: string) => (readFibre(content, 'label').ok ? 'read' : 'refused');

const rows: readonly OutsideCheck[] = [
  text(
    'several fibres under 5 % each, together over it',
    commission,
    '82% polyester, 10% cotton, 8% other fibers',
    usText(mix({ polyester: 82, cotton: 10, silk: 4, wool: 4 })),
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
    'EU names: polyamide and elastane',
    eu,
    '92 % polyamide, 8 % elastane',
    euText(mix({ nylon: 92, spandex: 8 })),
  ),
  text('EU names: viscose', eu, '60 % viscose, 40 % linen', euText(mix({ rayon: 60, linen: 40 }))),
  text(
    'EU: every fibre by name, also under 5 %',
    eu,
    '60 % viscose, 37 % cotton, 3 % silk',
    euText(mix({ cotton: 37, silk: 3, rayon: 60 })),
  ),
  text('worked coat, shell', byHand, 'Shell: 100% nylon', printed('shell', 'us')),
  text('worked coat, lining', byHand, 'Lining: 85% cotton, 15% acetate', printed('lining', 'us')),
  text(
    'worked coat, filling on a line of its own',
    '16 CFR 303, legal summary: fillings kept for warmth are disclosed',
    'Filling: 90% down, 10% feathers',
    printed('filling', 'us'),
  ),
  text('worked coat, shell for the EU', eu, 'Shell: 100 % polyamide', printed('shell', 'eu')),
  text(
    'worked coat, what is printed beside a filling of down in the EU',
    'EU 1007/2011 art. 12, from memory',
    'Contains non-textile parts of animal origin',
    worked.euNotes.join(', '),
  ),
  text(
    'worked coat, what a label may state of the cotton in its lining',
    '16 CFR 303.43 and EU 1007/2011 art. 20, from memory: 3 % of the total, 85 % found',
    '82 to 88 %',
    `${Math.round(statableRatios(0.85).leastRatio * 100)} to ${Math.round(statableRatios(0.85).mostRatio * 100)} %`,
  ),
  {
    name: 'lining mass of the worked coat, g',
    source: byHand,
    expected: 280,
    got: worked.lines[1]?.massG ?? Number.NaN,
    tolerance: 1e-9,
  },
  text(
    '40 % stated, 43 % found',
    '16 CFR 303.43, from memory',
    'true',
    String(isWithinLabelTolerance(0.4, 0.43)),
  ),
  text(
    '40 % stated, 37 % found',
    '16 CFR 303.43, from memory',
    'true',
    String(isWithinLabelTolerance(0.4, 0.37)),
  ),
  text(
    '40 % stated, 43.5 % found',
    '16 CFR 303.43, from memory',
    'false',
    String(isWithinLabelTolerance(0.4, 0.435)),
  ),
  text(
    'three equal thirds as whole percents',
    'derived: whole percents that add up to 100',
    '34, 33, 33',
    wholePercents([1 / 3, 1 / 3, 1 / 3]).join(', '),
  ),
  text(
    '65 % cotton, 35 % polyester',
    'common practice, no source',
    'read',
    isFound('65 % cotton, 35 % polyester'),
  ),
  text(
    'a trade name is no fibre',
    '16 CFR 303, generic names',
    'refused',
    isFound('70 % cotton, 30 % sunweave'),
  ),
];

export default rows;
