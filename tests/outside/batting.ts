/** How far apart a batting may be quilted, beside what quilters print by its fibre. */
import { lineLimit } from '../../shared-core/requirement/fill/batting-limits.ts';
import { emptyFacts, type FactsOf } from '../../shared-core/stash/kinds.ts';
import { mmPerIn } from './drafted.ts';
import type { OutsideCheck, Range } from './outside.ts';

const chart = 'melodycrust.blogspot.com, more thoughts about batts, 2020: chart by kind of batt';

/** Longest distance of lines, in; not a number where the product says nothing. */
function limitIn(facts: Partial<FactsOf<'batting'>>): number {
  const limit = lineLimit({ ...emptyFacts('batting'), ...facts });
  return limit === null ? Number.NaN : limit.limitMm / mmPerIn;
}

function row(
  batting: string,
  source: string,
  expected: number | Range,
  facts: Partial<FactsOf<'batting'>>,
  explanation?: string,
): OutsideCheck {
  return {
    class: 'A',
    isMainJob: true,
    name: `lines apart at most for ${batting}, in`,
    source,
    expected,
    got: limitIn(facts),
    tolerance: 0.01,
    toleranceReason: 'printed in whole inches; only rounding of mm is let pass',
    ...(explanation === undefined ? {} : { explanation }),
  };
}

const rows: readonly OutsideCheck[] = [
  row('80 % cotton and 20 % polyester', chart, { min: 2, max: 3 }, { fibre: '80 % cotton, 20 % polyester' }),
  row(
    'polyester a sixth of an inch thick',
    chart,
    { min: 2, max: 3 },
    { fibre: '100 % polyester', loftMm: 4 },
    'Nothing is said of a polyester under 6 mm of which it is not known what holds it together: the packets that were read are of high loft.',
  ),
  row(
    'bamboo and cotton half and half',
    'generations-quilt-patterns.com, quilt batting and machine quilting distances: a packet that says up to 8 in',
    8,
    { fibre: '50 % cotton, 50 % rayon' },
    'Without a word on what holds it together it is taken for plain cotton, 2 in, on the safe side; its packet, or that it is needled, would say 8.',
  ),
];

export default rows;
