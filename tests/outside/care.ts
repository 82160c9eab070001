/** Shrinkage, and what a rule on burning asks of a cloth. */
import { beforeWashMm } from '../../shared-core/stash/shrinkage.ts';
import { isFlammabilityExempt } from '../../shared-core/requirement/law/cautions.ts';
import { item } from '../fixtures/small-workshop.ts';
import type { OutsideCheck } from './outside.ts';

const burning =
  '16 CFR 1610.1(d), read in excerpts and as told by a maker of children’s clothes (ladyandlittlebug.com)';
const exempt = (name: string, facts: object, expected: string): OutsideCheck => ({
  class: 'A',
  name: `${name} is outside the burning test`,
  source: burning,
  expected,
  got: String(isFlammabilityExempt(item('cloth', name, facts))),
  tolerance: 0,
});
const ozPerYd2 = 33.905747475;
const rows: readonly OutsideCheck[] = [
  {
    class: 'B',
    name: '3 yd after a shrinkage of 5 %, yd to buy',
    source: 'derived: 3 / 0.95',
    expected: 3.158,
    got: beforeWashMm(3, 0.05),
    tolerance: 0.0005,
  },
  {
    class: 'B',
    name: '1 yd after a shrinkage of 10 %, yd to buy',
    source: 'derived: 1 / 0.9',
    expected: 1.111,
    got: beforeWashMm(1, 0.1),
    tolerance: 0.0005,
  },
  exempt('a nylon of 1.6 oz/yd2', { fibre: 'nylon', arealMassGPerM2: 1.6 * ozPerYd2 }, 'true'),
  exempt('a cotton of 1.6 oz/yd2', { fibre: 'cotton', arealMassGPerM2: 1.6 * ozPerYd2 }, 'false'),
  exempt('a cotton of 2.6 oz/yd2', { fibre: 'cotton', arealMassGPerM2: 2.6 * ozPerYd2 }, 'true'),
  exempt('a polyester fleece of 6 oz/yd2', { fibre: 'polyester', arealMassGPerM2: 6 * ozPerYd2 }, 'true'),
  exempt('a cotton flannel of 5 oz/yd2', { fibre: 'cotton', arealMassGPerM2: 5 * ozPerYd2 }, 'false'),
];

export default rows;
