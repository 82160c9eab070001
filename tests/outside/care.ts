/** Shrinkage, ironing heat, and the limits of rules, against what is published of them. */
import { beforeWashMm, ironC } from '../../shared-core/requirement/care.ts';
import {
  cautions,
  flammabilityExemptGPerM2,
  isFlammabilityExempt,
} from '../../shared-core/requirement/cautions.ts';
import { item, slot } from '../fixtures/small-workshop.ts';
import { nothingChosen, smallCoat } from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

const symbols = 'care-symbol page: one dot 110, two 150, three 200 C';
const burning = '16 CFR 1610.1(d), second-hand summary and memory';
const iron = (fibre: keyof typeof ironC, expected: number): OutsideCheck => ({
  name: `iron for ${fibre}, C`,
  source: symbols,
  expected,
  got: ironC[fibre] ?? Number.NaN,
  tolerance: 0,
});
const exempt = (name: string, facts: object, expected: string): OutsideCheck => ({
  name: `${name} is outside the burning test`,
  source: burning,
  expected,
  got: String(isFlammabilityExempt(item('cloth', 'cloth', facts))),
  tolerance: 0,
});
const ozPerYd2 = 33.905747475;
const cord = cautions(smallCoat({ slots: [slot('cord', 'fastening')], size: '5T' }), nothingChosen).find(
  ({ kind }) => kind === 'drawstrings',
)!;

const rows: readonly OutsideCheck[] = [
  {
    name: '3 yd after a shrinkage of 5 %, yd to buy',
    source: 'derived: 3 / 0.95',
    expected: 3.158,
    got: beforeWashMm(3, 0.05),
    tolerance: 0.0005,
  },
  {
    name: '1 yd after a shrinkage of 10 %, yd to buy',
    source: 'derived: 1 / 0.9',
    expected: 1.111,
    got: beforeWashMm(1, 0.1),
    tolerance: 0.0005,
  },
  iron('nylon', 110),
  iron('acrylic', 110),
  iron('acetate', 110),
  iron('polyester', 150),
  iron('wool', 150),
  iron('cotton', 200),
  iron('linen', 200),
  {
    name: 'weight from which plain cloth needs no burning test, g/m2',
    source: '16 CFR 1610 prints 2.6 oz/yd2 as 88.2 g/m2',
    expected: 88.2,
    got: flammabilityExemptGPerM2,
    tolerance: 0.05,
  },
  exempt('a nylon of 1.6 oz/yd2', { fibre: 'nylon', arealMassGPerM2: 1.6 * ozPerYd2 }, 'true'),
  exempt('a cotton of 1.6 oz/yd2', { fibre: 'cotton', arealMassGPerM2: 1.6 * ozPerYd2 }, 'false'),
  exempt('a cotton of 2.6 oz/yd2', { fibre: 'cotton', arealMassGPerM2: 2.6 * ozPerYd2 }, 'true'),
  {
    name: 'a child’s waist or hem cord outside its channel, in',
    source: '16 CFR 1120 and ASTM F1816, told by the US product safety commission',
    expected: '3 in',
    got: /at most (\d in)/.exec(cord.says)?.[1] ?? 'missing',
    tolerance: 0,
  },
  {
    name: 'sizes without a cord at hood or neck',
    source: '16 CFR 1120 and ASTM F1816, told by the US product safety commission',
    expected: '2T to 12',
    got: /neck \(US sizes (2T to \d+)\)/.exec(cord.says)?.[1] ?? 'missing',
    tolerance: 0,
  },
];

export default rows;
