/** Thread of whole garments: a shirt seam by seam, and drafted coats, beside what the trade reckons with. */
import { bodyTables } from '../../shared-core/draft/body-tables.ts';
import { slotById } from '../../shared-core/plan/model/coat-plan.ts';
import type { CoatPlan, Piece } from '../../shared-core/plan/model/coat-plan.ts';
import type { Seam, StitchType } from '../../shared-core/plan/model/outline.ts';
import { estimatedPerCoat } from '../../shared-core/requirement/requirement.ts';
import { item, piece } from '../fixtures/small-workshop.ts';
import { filled, nothingChosen, panel, sideSeam, smallCoat } from '../core/requirement/small-coat.ts';
import { drafted, mmPerIn, unpadded } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

const shirtSource = 'textilecalculation.blogspot.com, thread consumption of a full sleeve woven shirt, 2015';

/** Lines of the source, in its order: what, inches of a seam, how often in the shirt. Buttons and holes are left out. */
const lockstitch: readonly (readonly [string, number, number])[] = [
  ['collar, long', 16, 2],
  ['collar, short', 3, 4],
  ['collar band, long', 16, 4],
  ['collar band, short', 1, 4],
  ['shoulder', 8, 4],
  ['armhole', 20, 4],
  ['cuff, long', 10, 8],
  ['cuff, short', 2, 8],
  ['pocket, down', 5, 2],
  ['pocket, across', 5, 2],
  ['upper placket, long', 6, 2],
  ['upper placket, short', 1, 4],
  ['lower placket, long', 5, 4],
  ['lower placket, short', 5, 1],
  ['box plate', 30, 2],
  ['button plate', 30, 1],
  ['label', 1.5, 6],
  ['yoke', 21, 1],
  ['side', 20, 2],
  ['hem', 48, 1],
  ['under sleeve', 21, 2],
];
const overlocked: readonly (readonly [string, number, number])[] = [
  ['armhole, overlocked', 20, 2],
  ['under sleeve, overlocked', 21, 2],
];

/** The shirt as a plan: each line a pair of strips that a seam joins, so often. */
function shirt(): CoatPlan {
  const lines = [
    ...lockstitch.map(([name, lengthIn, count]) => ({ name, lengthIn, count, stitch: '301' as StitchType })),
    ...overlocked.map(([name, lengthIn, count]) => ({ name, lengthIn, count, stitch: '504' as StitchType })),
  ];
  const seams = lines.map(({ name, stitch }): Seam => ({ ...sideSeam, id: name, label: name, stitch }));
  const pieces = lines.flatMap(({ name, lengthIn, count }): Piece[] =>
    ['upper', 'under'].map((side) =>
      piece(`${name} ${side}`, panel(lengthIn * mmPerIn, 100, 'edge', { side: name }), { cutCount: count }),
    ),
  );
  return smallCoat({ pieces, seams });
}
const shirtPlan = shirt();
const shirtM = (stitch: StitchType): number =>
  estimatedPerCoat(
    { ...shirtPlan, seams: shirtPlan.seams.filter((seam) => seam.stitch === stitch) },
    'thread',
    nothingChosen,
  );

/** Sewing thread of a drafted coat without quilting, of an ordinary coat cloth and its lining, m. */
function sewnM(plan: CoatPlan): number {
  const cloth = item('cloth', 'gabardine', { arealMassGPerM2: 250 });
  const lining = item('cloth', 'taffeta', { arealMassGPerM2: 70 });
  const items = filled({ shell: cloth, 'body-lining': lining, 'sleeve-lining': lining, pocketing: lining });
  return estimatedPerCoat({ ...plan, quilting: null }, slotById(plan, 'sewing-thread').id, items);
}

const factory =
  'A draft is sewn once along each seam with a lockstitch, which takes 2.5 to 4 m to the metre with its ends and waste: 20 to 30 m of seam make 70 to 120 m. The lists are those of factories, which overcast every edge (14 m to the metre), pad lapels, and sew pockets, buttonholes and labels that a draft does not have.';
const woman = { kind: 'women', bustMm: 920, waistMm: 760, heightMm: 1680 } as const;
const man = { kind: 'men', bustMm: 1000, waistMm: 880, heightMm: 1780 } as const;
const boy = bodyTables.find(({ kind }) => kind === 'children')!.rows.find(({ size }) => size === '122')!;
const child = {
  kind: 'children',
  bustMm: boy.bustMm,
  waistMm: boy.waistMm,
  heightMm: boy.heightMm ?? 0,
} as const;

const list = 'garmentsmarchandising.blogspot.com, sewing thread for some garments, 2018';
const thirdReason =
  'for one garment such lists differ by a third (adult jeans 180 and 204 m, a man’s shirt 100 to 130), as they do not say its seams';

function whole(
  name: string,
  source: string,
  expected: OutsideCheck['expected'],
  got: number,
  aThird: number,
  explanation?: string,
): OutsideCheck {
  return {
    class: 'A',
    isMainJob: true,
    name,
    source,
    expected,
    got,
    tolerance: aThird / 3,
    toleranceReason: thirdReason,
    ...(explanation === undefined ? {} : { explanation }),
  };
}
const listed = (name: string, expected: number, got: number) =>
  whole(name, list, expected, got, expected, factory);

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    isMainJob: true,
    name: 'a shirt with long sleeves, lockstitch, m',
    source: `${shirtSource}: 1,577.5 of its 2,487 in`,
    expected: 40.07,
    got: shirtM('301'),
    tolerance: 0.005,
    toleranceReason: 'half of the last printed place',
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'a shirt with long sleeves, overlock, m',
    source: `${shirtSource}: 738 in, 9 in to the inch`,
    expected: 18.75,
    got: shirtM('504'),
    tolerance: 0.1 * 18.75,
    toleranceReason: 'a ratio for a stitch holds to a tenth between cloths of one weight',
    explanation:
      'The source reckons 9 in of thread to the inch of overlock, our table 14 for the type 504 of ISO 4915, as a thread maker prints it at 7 stitches to the cm; at 4 stitches it would be near 9.',
  },
  whole(
    'a shirt with long sleeves, its listed seams with a fifth for waste, m',
    'onlineclothingstudy.com, how many metres of thread for a shirt: 100 to 300, about 130 for a medium one',
    { min: 100, max: 300 },
    1.2 * (shirtM('301') + shirtM('504') + 171.5 * 0.0254),
    100,
  ),
  listed('man’s jacket, m', 200, sewnM(drafted(man, { ...unpadded, coatLengthMm: 760, lapMm: 20 }).plan)),
  listed(
    'woman’s overcoat, m',
    315,
    sewnM(drafted(woman, { ...unpadded, coatLengthMm: 1100, lapMm: 60 }).plan),
  ),
  listed('man’s overcoat, m', 520, sewnM(drafted(man, { ...unpadded, coatLengthMm: 1150, lapMm: 60 }).plan)),
  listed(
    'child’s overcoat, m',
    135,
    sewnM(drafted(child, { ...unpadded, coatLengthMm: 620, lapMm: 50 }).plan),
  ),
  listed(
    'raincoat with a hood, m',
    285,
    sewnM(drafted(woman, { ...unpadded, coatLengthMm: 1000, hood: 'three panels', lapMm: 40 }).plan),
  ),
  whole(
    'lined jacket, m',
    'sewing thread by garment, from memory: 150 to 260 m',
    { min: 150, max: 260 },
    sewnM(drafted(woman, unpadded).plan),
    150,
    factory,
  ),
];

export default rows;
