/** What finished garments weigh and how warm they are, beside garments that were weighed and measured. */
import { demoWorkshop } from '../../shared-core/demo/demo-workshop.ts';
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';
import { finishedCoat } from '../../shared-core/requirement/finished/finished-coat.ts';
import type { SlotItems } from '../../shared-core/requirement/need.ts';
import { cloM2KPerW, cloOfThickness } from '../../shared-core/requirement/finished/warmth.ts';
import { item } from '../fixtures/small-workshop.ts';
import { filled } from '../core/requirement/small-coat.ts';
import { drafted, mmPerIn } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

/** Fronts and back alone: shell, the same again as lining, and batting; no facing. */
function vest(plan: CoatPlan): CoatPlan {
  const pieces = plan.pieces
    .filter(({ id }) => id === 'back' || id === 'front')
    .map((piece) => ({ ...piece, cutFrom: [...piece.cutFrom, { slotId: 'body-lining', plyCount: 1 }] }));
  const slots = plan.slots.filter(({ id }) => ['shell', 'body-lining', 'batting'].includes(id));
  return { ...plan, pieces, slots, seams: [], quilting: null };
}

const membrane = item('cloth', 'membrane', { arealMassGPerM2: 22 });
const vestPlan = vest(
  drafted(
    { kind: 'men', bustMm: 1000, waistMm: 880, heightMm: 1780 },
    { easeMm: 270, coatLengthMm: 710, battingPlies: { body: 1, sleeve: 0 }, hemDepthMm: 15.875 },
  ).plan,
);
const vestG = finishedCoat(
  vestPlan,
  filled({
    shell: membrane,
    'body-lining': membrane,
    batting: item('batting', 'sheet', { arealMassGPerM2: 84, loftMm: 15 }),
  }),
).massG;

const workshop = demoWorkshop();
const demoPlan = { ...workshop.plans[0]!, coatCount: 1 };
const demoItems: SlotItems = new Map(
  demoPlan.slots.flatMap((slot) => {
    const found = workshop.items.find(({ id }) => id === slot.itemId);
    return found === undefined ? [] : [[slot.id, found] as const];
  }),
);
const demo = finishedCoat(demoPlan, demoItems);

/** The figure of our range for a thickness that lies nearest to a published one. */
function nearestClo(publishedClo: number, thicknessMm: number): number {
  const { minClo, maxClo } = cloOfThickness(thicknessMm);
  return Math.min(Math.max(publishedClo, minClo), maxClo);
}
/** Conductivity, W/mK, of padding that gives a clo for each inch. */
const conductivity = (cloPerIn: number) => mmPerIn / 1000 / (cloPerIn * cloM2KPerW);
const inch = cloOfThickness(mmPerIn);

const measured = (
  name: string,
  source: string,
  clo: number,
  thicknessMm: number,
  explanation?: string,
): OutsideCheck => ({
  class: 'A',
  isMainJob: true,
  name: `clo of ${name}, nearest of our range`,
  source,
  expected: clo,
  got: nearestClo(clo, thicknessMm),
  tolerance: 0,
  ...(explanation === undefined ? {} : { explanation }),
});

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    isMainJob: true,
    name: 'vest 127 cm round and 73.6 cm long, padding of 84 g/m2 between cloths of 22 g/m2, g',
    source: 'backpackinglight.com, make your own synthetic fill vest: 4.5 oz',
    expected: 127,
    got: vestG,
    tolerance: 19,
    toleranceReason:
      'armholes and neck are cut as deep as one likes, and the fastening is not weighed apart: 15 %',
  },
  measured('down 1.1 in thick', 'chemeurope.com, Thinsulate: 4.8 clo for 1.1 in of down', 4.8, 1.1 * mmPerIn),
  measured(
    '1.15 cm of cloth and still air',
    'AMS Glossary of Meteorology, Clo: 0.64 cm of material and 0.51 cm of air',
    1,
    11.5,
    'The least padding that is reckoned with is a sheet of 0.98 clo for each cm; the clo of this definition is of cloth, nearly half of it still air, at 0.87.',
  ),
  {
    class: 'A',
    isMainJob: true,
    name: 'conductivity of the warmest padding that is reckoned with, W/mK',
    source: 'US patent 4,588,635: under 0.5 Btu in/h ft2 F at 3 to 10 kg/m3; still air 0.026',
    expected: { min: 0.026, max: 0.072 },
    got: conductivity(inch.maxClo),
    tolerance: 0.001,
    toleranceReason: 'half of the last printed place, in W/mK',
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'clo of a knee-length coat with two layers of batting, the least, over what it covers',
    source:
      'engineeringtoolbox.com, after ISO 9920: a coat has 0.60 and a parka 0.70 over the whole body, the bare parts averaged in, so where it covers it has more',
    expected: { min: 0.6, max: 4 },
    got: demo.warmth?.minClo ?? Number.NaN,
    tolerance: 0,
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'mass of the same coat, kg',
    source: 'padded coats to the knee in shops, from memory: 0.9 to 1.3 kg',
    expected: { min: 0.9, max: 1.3 },
    got: demo.massG / 1000,
    tolerance: 0.1,
    toleranceReason: 'sizes of one coat differ by a tenth of a kilogram',
  },
];

export default rows;
