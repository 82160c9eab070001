/** Drafted garments beside the measures of garments that are sold, and of workshops. */
import { ringBox } from '../../shared-core/geometry/ring.ts';
import { type CoatPlan, pieceById } from '../../shared-core/plan/coat-plan.ts';
import { seamRing } from '../../shared-core/plan/outline-ring.ts';
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
    explanation:
      'A drafted sleeve is as long as the arm and 1.5 cm more, with or without padding; those of padded jackets reach 4 to 6 cm further from the neck.',
  };
});

/** A man of chest 112 in a padded coat with the usual ease. */
const large = drafted({ kind: 'men', bustMm: 1120, waistMm: 1000, heightMm: 1830 }, { sleeve: 'one part' });
const charts = 'measurement charts of men’s padded jackets, size XL, from memory';

const rows: readonly OutsideCheck[] = [
  ...sleeveRows,
  {
    class: 'A',
    name: 'armhole of a man’s padded coat XL all round, mm',
    source: charts,
    expected: { least: 620, most: 660 },
    got: large.report.armholeMm,
    tolerance: 20,
    toleranceReason: 'charts of makers allow a centimetre on the half',
    explanation:
      'The armhole is lowered by 22 % of all the ease at the bust and widened by its share of it: 2 cm more round than coats are made with.',
  },
  {
    class: 'A',
    name: 'its sleeve round the upper arm, mm',
    source: charts,
    expected: { least: 480, most: 520 },
    got: large.report.girthMm.upperArm,
    tolerance: 20,
    toleranceReason: 'charts of makers allow a centimetre on the half',
  },
];

export default rows;
