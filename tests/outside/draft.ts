/** Drafted garments beside the measures of garments that are sold, and of workshops. */
import { ringBox } from '../../shared-core/geometry/ring.ts';
import { type CoatPlan, pieceById } from '../../shared-core/plan/model/coat-plan.ts';
import { seamRing } from '../../shared-core/plan/geometry/outline-ring.ts';
import { drafted, mmPerIn } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

const padded =
  'Port Authority, product measurements of the ladies’ packable padded jacket L850, with the bust it is made for';

/** Size, the bust that it fits, and as made: round the bust, and from the centre of the neck to the end of the sleeve; in. */
const sold: readonly (readonly [string, number, number, number])[] = [
  ['XS', 33, 39, 32.5],
  ['M', 37.5, 43, 33.5],
  ['XL', 43, 49, 34.75],
];

/** From the centre of the back neck over the end of the shoulder to the end of the cuff, mm. */
function centreBackSleeveMm(plan: CoatPlan): number {
  const back = pieceById(plan, 'back').outline;
  const armhole = back.edges.findIndex(({ name }) => name === 'armhole');
  const shoulderEnd = back.edges[armhole - 1]!.segments.at(-1)!.to;
  const centreNeck = back.edges.find(({ name }) => name === 'centre back')!.segments.at(-1)!.to;
  const lengthMm = (pieceId: string) => {
    const box = ringBox(seamRing(pieceById(plan, pieceId).outline));
    return box.maxX - box.minX;
  };
  const overBackMm = Math.hypot(shoulderEnd.x - centreNeck.x, shoulderEnd.y - centreNeck.y);
  // A cuff is cut twice as deep as it is worn.
  return overBackMm + lengthMm('sleeve') + lengthMm('cuff') / 2;
}

const sleeveRows = sold.map(([size, bustIn, roundIn, sleeveIn]): OutsideCheck => {
  const { plan } = drafted(
    { kind: 'women', bustMm: bustIn * mmPerIn, waistMm: (bustIn - 8) * mmPerIn, heightMm: 1680 },
    { easeMm: (roundIn - bustIn) * mmPerIn, sleeve: 'one part' },
  );
  return {
    class: 'A',
    name: `sleeve of a padded jacket ${size} from the centre back, in`,
    source: padded,
    expected: sleeveIn,
    got: centreBackSleeveMm(plan) / mmPerIn,
    tolerance: 1,
    toleranceReason: 'sleeves of one size are sold an inch shorter and longer (petite and tall)',
    ...(size === 'XL' && {
      explanation:
        'The chart makes sleeves longer with the size; a drafted sleeve follows the arm, and the arm here the height, which the chart does not give and which is 168 cm in all three.',
    }),
  };
});

/** Chest, armhole and sleeve at the upper arm of the down jackets of one workshop, all round, in. */
const workshop =
  'timmermade.com, "Sizing garments": dimensions of the standard sizes S, M, L and XL, as made, of down garments';
const workshopSizes: readonly (readonly [string, number, number, number])[] = [
  ['S', 46, 23, 15.5],
  ['M', 50, 25, 16.5],
  ['L', 53, 26, 17],
  ['XL', 57, 28, 19],
];
const workshopRows = workshopSizes.flatMap(([size, chestIn, armholeIn, upperArmIn]): OutsideCheck[] => {
  // What is worn round the chest over the ease and padding of a coat.
  const bustMm = chestIn * mmPerIn - 180 - 57;
  const { report } = drafted(
    { kind: 'men', bustMm, waistMm: 0.88 * bustMm, heightMm: 1780 },
    { paddingGirthMm: { body: 57, sleeve: 28 } },
  );
  return [
    {
      class: 'A',
      name: `armhole of a down jacket ${size}, ${chestIn} in round the chest, in`,
      source: workshop,
      expected: armholeIn,
      got: report.armholeMm / mmPerIn,
      tolerance: 2,
      toleranceReason: 'the page says that numbers vary with the build; a hung tape takes a curve shorter',
    },
    {
      class: 'A',
      name: `its sleeve round the upper arm, ${size}, in`,
      source: workshop,
      expected: upperArmIn,
      got: report.girthMm.upperArm / mmPerIn,
      tolerance: 2,
      toleranceReason: 'garments for movement under load are cut closer at the arm than coats for the street',
      ...(size === 'L' && {
        explanation:
          'By a fifth of an inch: the workshop cuts its sleeves to 0.65 to 0.68 of the armhole, the draft to 0.72, as wide as a cap of a third asks for.',
      }),
    },
  ];
});

/** A man of chest 112 in a padded coat with the usual ease. */
const large = drafted({ kind: 'men', bustMm: 1120, waistMm: 1000, heightMm: 1830 }, { sleeve: 'one part' });
const charts = 'measurement charts of men’s padded jackets, size XL, from memory';

const rows: readonly OutsideCheck[] = [
  ...sleeveRows,
  ...workshopRows,
  {
    class: 'A',
    name: 'armhole of a man’s padded coat XL all round, mm',
    source: charts,
    expected: { min: 620, max: 660 },
    got: large.report.armholeMm,
    tolerance: 20,
    toleranceReason: 'charts of makers allow a centimetre on the half',
  },
  {
    class: 'A',
    name: 'its sleeve round the upper arm, mm',
    source: charts,
    expected: { min: 480, max: 520 },
    got: large.report.girthMm.upperArm,
    tolerance: 20,
    toleranceReason: 'charts of makers allow a centimetre on the half',
  },
];

export default rows;
