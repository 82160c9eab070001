/** The fibre label against the rules' own examples. */
import { type Fibre, mixedFibres } from '../../shared-core/requirement/fibre.ts';
import { fibreLabel, usText } from '../../shared-core/requirement/label.ts';
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

const mix = (shares: Partial<Record<Fibre, number>>) =>
  mixedFibres(
    Object.entries(shares).map(([fibre, massG]) => ({
      massG,
      shares: [{ fibre: fibre as Fibre, shareRatio: 1 }],
    })),
  );

const stuffed = fibreLabel(
  smallCoat({ slots: [slot('shell', 'cloth'), slot('down', 'fill')] }),
  filled({
    shell: item('cloth', 'taffeta', { fibre: '100 % nylon' }),
    down: item('fill', 'plumage', { fibre: '90 % down, 10 % feathers' }),
  }),
  new Map([
    ['shell', 180],
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
    'a filling kept for warmth stands on a line of its own',
    '16 CFR 303, legal summary: fillings kept for warmth are disclosed',
    'Filling: 90% down, 10% feathers',
    stuffed.lines.find(({ section }) => section === 'filling')?.us ?? 'missing',
  ),
];

export default rows;
