/** Down of whole garments, lines three inches apart, beside what makers put in and what is sold. */
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';
import { fillMassG } from '../../shared-core/quilting/chambers.ts';
import { fillingList } from '../../shared-core/requirement/fill/fill.ts';
import { defaultOverfillFactor } from '../../shared-core/requirement/fill/fill-power.ts';
import { item } from '../fixtures/small-workshop.ts';
import { filled } from '../core/requirement/small-coat.ts';
import { drafted, stuffed } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

const cm3PerIn3 = 16.387064;
const gPerOz = 28.349523125;

/** Grams that are weighed into the chambers of one coat. */
function downG(plan: CoatPlan, in3PerOz: number): number {
  const coat = stuffed(plan);
  const slot = coat.slots.find(({ kind }) => kind === 'fill')!;
  const down = item('fill', 'down', { fillPowerCm3PerG: (in3PerOz * cm3PerIn3) / gPerOz });
  return fillingList(coat, slot, filled({ [slot.id]: down })).filledG;
}

const woman = { kind: 'women', bustMm: 880, waistMm: 720, heightMm: 1680 } as const;
const man = { kind: 'men', bustMm: 1000, waistMm: 880, heightMm: 1780 } as const;
const toThigh = drafted(woman, { coatLengthMm: 850, hood: 'three panels', hasCollar: false }).plan;
const hip = drafted(man).plan;

const guide = 'owtdores.com, down jacket fill weight explained: 3 to 6 oz for light and middling jackets';

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    isMainJob: true,
    name: 'jacket to the thigh with a hood, down of 650, g',
    source: 'functionalclothinglab.com, down jacket 1: 14 oz for two, sewn through',
    expected: 198,
    got: downG(toThigh, 650),
    tolerance: 66,
    toleranceReason: 'neither its girth nor the distance of its lines is told, which each make a sixth',
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'man’s jacket to the hip, down of 800, g',
    source: guide,
    expected: { min: 3 * gPerOz, max: 6 * gPerOz },
    got: downG(hip, 800),
    tolerance: 0,
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'down of 550 that makes a volume of 1,920 in3, oz',
    source: 'backpacking.net forum, 2009, an old sewn-through jacket lying loose in a box: 4 to 5 oz',
    expected: { min: 4, max: 5 },
    got: fillMassG(1920 * cm3PerIn3, (550 * cm3PerIn3) / gPerOz, defaultOverfillFactor) / gPerOz,
    tolerance: 0,
  },
];

export default rows;
