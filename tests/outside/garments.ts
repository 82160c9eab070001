/** Drafted coats and jackets laid beside the cloth that makers, shops and patterns ask for such a garment. */
import { bodyTables } from '../../shared-core/draft/body-tables.ts';
import type { DraftInput } from '../../shared-core/draft/draft-input.ts';
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';
import type { ShapesNeed } from '../../shared-core/requirement/need.ts';
import { cutFrom, cutToOutline, drafted, laidMm, mmPerIn, mmPerYd, oneWay, unpadded } from './drafted.ts';
import { toBuy, toBuyReason } from './envelope.ts';
import type { OutsideCheck } from './outside.ts';

function amount(
  name: string,
  source: string,
  expected: number,
  got: number,
  explanation?: string,
): OutsideCheck {
  return {
    class: 'A',
    isMainJob: true,
    name,
    source,
    expected,
    got,
    tolerance: toBuy(expected),
    toleranceReason: toBuyReason,
    ...(explanation === undefined ? {} : { explanation }),
  };
}

/** A coat half as long as its wearer is high (from memory, of coats in shops), its hood lined with the lining. */
function child(size: string, choices: Partial<DraftInput> = {}): CoatPlan {
  const row = bodyTables.find(({ kind }) => kind === 'children')!.rows.find((each) => each.size === size)!;
  const { bustMm, waistMm, heightMm = 0 } = row;
  return drafted(
    { kind: 'children', bustMm, waistMm, heightMm },
    {
      coatLengthMm: heightMm / 2,
      hood: 'three panels',
      hasCollar: false,
      sleeve: 'one part',
      pleatMm: 0,
      ...unpadded,
      ...choices,
    },
  ).plan;
}
const isHoodLining = (pieceId: string) => /^hood-.*-lining$/.test(pieceId);
const childMain = (plan: CoatPlan) => cutFrom(plan, ['shell'], (id) => !isHoodLining(id));
/** Cut like the coat, without facings and small pieces: as these patterns have it. */
const childLining = (plan: CoatPlan) =>
  cutFrom(plan, ['shell'], (id) => ['back', 'front', 'sleeve', 'hood-side', 'hood-centre'].includes(id));

const littleCoat = 'moonlightpatterns.com, hooded lined coat, cloth of 140 cm';
const schoolCoat = 'Oliver + S, School Days jacket and coat, as the fold line prints it, sizes 4 to 8';
const openedOut =
  'Laid on folded cloth, as patterns lay it, the same pieces take 1.12 to 1.15 m (three seeds). On open cloth, turned end for end, they take 0.85 to 0.89: there is more to save than was thought, and with more moves more of it is found.';
const littleRows = (
  [
    ['98', '1.5 to 3 years', 1.1, openedOut],
    ['110', '4 to 6 years', 1.2, undefined],
  ] as const
).flatMap(([size, years, m, whyCloth]) => {
  const plan = child(size);
  return [
    amount(`hooded coat for ${years}, m`, littleCoat, m, laidMm(childMain(plan), 1400) / 1000, whyCloth),
    amount(
      `hooded coat for ${years}, its lining, m`,
      littleCoat,
      m,
      laidMm(childLining(plan), 1400) / 1000,
      'The pattern asks for as much lining as cloth, though the lining has no facings and no pockets: the lining was not laid by itself.',
    ),
  ];
});
const cutLarger =
  'By the published amounts a draft of this height would leave half of the cloth (a third at 8 years): the pattern is for a longer and wider coat, whose measures are not printed beside them. For the other hooded coat, of 140 cm, the same draft is a tenth to a fifth under what is asked.';
const schoolRows = (
  [
    ['104', '4 years', 1.5, 1.625],
    ['128', '8 years', 1.875, 1.875],
  ] as const
).flatMap(([size, years, clothYd, liningYd]) => {
  const plan = child(size);
  return [
    amount(
      `hooded coat for ${years}, cloth of 58 in, yd`,
      schoolCoat,
      clothYd,
      laidMm(childMain(plan), 58 * mmPerIn) / mmPerYd,
      cutLarger,
    ),
    amount(
      `hooded coat for ${years}, its lining of 44 in, yd`,
      schoolCoat,
      liningYd,
      laidMm(childLining(plan), 44 * mmPerIn) / mmPerYd,
      cutLarger,
    ),
  ];
});

/** The source quilts one rectangle and cuts the pieces from it: they have nothing to spare each. */
const toddler = cutToOutline(
  child('92', {
    coatLengthMm: 380,
    hood: 'none',
    hasCollar: true,
    battingPlies: { body: 1, sleeve: 1 },
    allowanceMm: 10,
  }),
);
const toddlerPiece = (id: string) => ['back', 'front', 'sleeve'].includes(id);
const oneRectangle =
  'One rectangle is asked for cloth, batting and lining alike, to draw and quilt on before the pieces are cut: there is room round them.';
const smallDream = 'smalldreamfactory.com, quilted jacket for 2 years, 100 cm of each, 80 cm wide';

/** The source cuts cloth and lining by the template before it quilts them. */
const vest = cutToOutline(
  drafted(
    { kind: 'women', bustMm: 42 * mmPerIn, waistMm: 35 * mmPerIn, heightMm: 1680 },
    { easeMm: 4 * mmPerIn, battingPlies: { body: 1, sleeve: 0 } },
  ).plan,
);
const bodyPiece = (id: string) => id === 'back' || id === 'front';
const purl = 'purlsoho.com, quilted vest, for every size from XS to XL';

const sports = drafted(
  { kind: 'men', bustMm: 1000, waistMm: 880, heightMm: 1780 },
  { ...unpadded, coatLengthMm: 760, lapMm: 20 },
).plan;
const sewing = 'sewingiscool.com, how much fabric for a coat: a sports coat for a small to average man';

const french = drafted(
  { kind: 'women', bustMm: 36 * mmPerIn, waistMm: 28 * mmPerIn, heightMm: 1680 },
  {
    ...unpadded,
    coatLengthMm: 26 * mmPerIn,
    easeMm: 4 * mmPerIn,
    allowanceMm: 40,
    hemDepthMm: 50,
  },
).plan;

const down = drafted(
  { kind: 'women', bustMm: 880, waistMm: 720, heightMm: 1680 },
  { coatLengthMm: 850, hood: 'three panels', hasCollar: false },
).plan;

/** Packaged sheets, the smallest first: sizes printed alike by three quilting pages; in. */
const sheetsIn = [
  ['craft', 36, 45],
  ['crib', 45, 60],
  ['twin', 72, 90],
] as const;

function smallestSheet(need: ShapesNeed): string {
  const sheet = sheetsIn.find(
    ([, widthIn, lengthIn]) =>
      Math.min(laidMm(need, widthIn * mmPerIn) / lengthIn, laidMm(need, lengthIn * mmPerIn) / widthIn) <=
      mmPerIn,
  );
  return sheet ? `${sheet[0]}, ${sheet[1]} x ${sheet[2]} in` : 'none';
}

const rows: readonly OutsideCheck[] = [
  ...littleRows,
  ...schoolRows,
  amount(
    'toddler’s quilted jacket, cloth, cm',
    smallDream,
    100,
    laidMm(cutFrom(toddler, ['shell'], toddlerPiece), 800) / 10,
    oneRectangle,
  ),
  amount(
    'toddler’s quilted jacket, batting, cm',
    smallDream,
    100,
    laidMm(cutFrom(toddler, ['batting'], toddlerPiece), 800) / 10,
    oneRectangle,
  ),
  amount(
    'quilted vest, cloth of 44 in, yd',
    `${purl}: 1 1/2 yd`,
    1.5,
    laidMm(oneWay(cutFrom(vest, ['shell'], bodyPiece)), 44 * mmPerIn) / mmPerYd,
  ),
  {
    class: 'A',
    isMainJob: true,
    name: 'quilted vest, smallest packaged sheet of batting that carries it',
    source: `${purl}: a crib sheet`,
    expected: 'crib, 45 x 60 in',
    got: smallestSheet(cutFrom(vest, ['batting'], bodyPiece)),
    tolerance: 0,
  },
  amount(
    'quilted vest, lining of 90 in, yd',
    `${purl}: 1 yd`,
    1,
    laidMm(cutFrom(vest, ['body-lining']), 90 * mmPerIn) / mmPerYd,
  ),
  amount(
    'man’s sports coat, cloth of 45 in, yd',
    sewing,
    2.5,
    laidMm(oneWay(cutFrom(sports, ['shell'])), 45 * mmPerIn) / mmPerYd,
  ),
  amount(
    'man’s sports coat, cloth of 60 in, yd',
    sewing,
    2,
    laidMm(oneWay(cutFrom(sports, ['shell'])), 60 * mmPerIn) / mmPerYd,
  ),
  amount(
    'jacket of 26 in with wide allowances, tweed of 150 cm, yd',
    'lintontweeds.com, how much for a classic jacket: two lengths and a sleeve, 2 1/2 yd',
    2.5,
    laidMm(cutFrom(french, ['shell']), 1500) / mmPerYd,
    'The jacket of the source has thirteen panels, three to a sleeve, each with two inches round it; the draft has five large pieces and its own small ones.',
  ),
  amount(
    'down jacket to the thigh, shell and lining of one cloth of 58 in, yd',
    'functionalclothinglab.com, down jacket 1: about 8 yd for two',
    4,
    laidMm(cutFrom(down, ['shell', 'body-lining', 'sleeve-lining']), 58 * mmPerIn) / mmPerYd,
  ),
];

export default rows;
