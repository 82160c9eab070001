/** Choice and life of needles against sewing guides. */
import {
  needleChoice,
  needleCount,
  needleLifeHours,
  type NeedleWork,
} from '../../shared-core/requirement/needles.ts';
import type { OutsideCheck } from './outside.ts';

const guides = 'several sewing guides';
const plain: NeedleWork = {
  arealMassGPerM2: 54,
  plyCount: 2,
  threadTex: null,
  isDense: false,
  isKnit: false,
};
const size = (work: Partial<NeedleWork>) => needleChoice({ ...plain, ...work }).sizeNm;
const point = (work: Partial<NeedleWork>) => needleChoice({ ...plain, ...work }).point;
const check = (
  name: string,
  source: string,
  expected: number | string,
  got: number | string,
): OutsideCheck => ({
  name,
  source,
  expected,
  got,
  tolerance: 0,
});
const ozPerYd2 = 33.905747475;

const rows: readonly OutsideCheck[] = [
  check('very fine sheer, 25 g/m2', guides, 60, size({ arealMassGPerM2: 25 })),
  check('light coat nylon, 1.6 oz/yd2', guides, 70, size({ arealMassGPerM2: 1.6 * ozPerYd2 })),
  check('medium cloth, 4.5 oz/yd2, the most used', guides, 80, size({ arealMassGPerM2: 4.5 * ozPerYd2 })),
  check('bulky layered seam of light cloth, 6 plies', guides, 90, size({ plyCount: 6 })),
  check('mid-heavy cloth, 8 oz/yd2', guides, 90, size({ arealMassGPerM2: 8 * ozPerYd2 })),
  check('denim, 12 oz/yd2', guides, 100, size({ arealMassGPerM2: 12 * ozPerYd2 })),
  check('canvas, 18 oz/yd2', guides, 110, size({ arealMassGPerM2: 18 * ozPerYd2 })),
  check(
    'tex 25 on light cloth',
    "needle maker's thread sizing guide: 75/11 with 240 denier, tex 25",
    75,
    size({ threadTex: 25 }),
  ),
  check('tex 24 on light cloth', 'common practice, no source', 70, size({ threadTex: 24 })),
  check('tex 30 on light cloth', 'common practice, no source', 80, size({ threadTex: 30 })),
  check('tex 40, load-bearing', 'common practice, no source', 90, size({ threadTex: 40 })),
  check('tex 60', 'common practice, no source', 100, size({ threadTex: 60 })),
  check('tex 80', 'common practice, no source', 110, size({ threadTex: 80 })),
  check(
    'point for a dense, down-proof shell',
    'sewing blog on rainwear: sharp, 70 or 80',
    'sharp',
    point({ isDense: true }),
  ),
  check('point for a knit lining', guides, 'ball point', point({ isKnit: true })),
  check('point for plain woven cloth', guides, 'universal', point({})),
  check('least life of a needle, h', 'sewing magazine overview: 8 to 12 h', 8, needleLifeHours.least),
  check('most life of a needle, h', 'sewing magazine overview: 8 to 12 h', 12, needleLifeHours.most),
  check('needles for a coat of 11 h', 'derived from 8 h of life', 2, needleCount(11, needleLifeHours.least)),
  check(
    'needles for ten such coats',
    'derived from 8 h of life',
    14,
    needleCount(110, needleLifeHours.least),
  ),
];

export default rows;
