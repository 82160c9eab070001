/** Needles for a cloth by its weight, as sewing machine makers print it, and how many the hours of sewing wear out. */
import {
  needleCount,
  needleLifeHours,
  planNeedleChoice,
} from '../../shared-core/requirement/thread/needles.ts';
import { slot } from '../fixtures/small-workshop.ts';
import { item } from '../fixtures/small-workshop.ts';
import { filled, smallCoat } from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

/** Needle for a plain seam in a cloth, NM. */
function plainSeamNm(arealMassGPerM2: number, finish: string, threadTex: number | null): number {
  const coat = smallCoat({ slots: [slot('shell', 'cloth'), slot('thread', 'thread')] });
  const shell = item('cloth', 'cloth', { arealMassGPerM2, finish });
  const thread = item('thread', 'thread', { sizeTex: threadTex });
  return planNeedleChoice(coat, filled({ shell, thread }))?.sizeNm ?? Number.NaN;
}

const brother = 'Brother, manual of a sewing machine, needle types and their uses';
const janome = 'Janome 415, manual, thread and needle chart';
const mardock = 'mardockdesigns.com, garment to needle recommendations';

function row(
  cloth: string,
  source: string,
  [min, max]: readonly [number, number],
  gPerM2: number,
  explanation?: string,
): OutsideCheck {
  return {
    class: 'A',
    name: `needle for ${cloth}, NM`,
    source: `${source}; ${gPerM2} g/m2 from memory`,
    expected: { min, max },
    got: plainSeamNm(gPerM2, /coated/.test(cloth) ? 'coated' : '', null),
    tolerance: 0,
    ...(explanation === undefined ? {} : { explanation }),
  };
}

const byThread = (tex: number, [min, max]: readonly [number, number]): OutsideCheck => ({
  class: 'A',
  name: `needle for a light cloth with thread of tex ${tex}, NM`,
  source: 'thread makers’ charts of needle by tex, from memory',
  expected: { min, max },
  got: plainSeamNm(80, '', tex),
  tolerance: 0,
});

const rows: readonly OutsideCheck[] = [
  row('lawn', brother, [65, 75], 75),
  row('broadcloth', brother, [75, 90], 125),
  row(
    'taffeta',
    brother,
    [75, 90],
    90,
    'Cloth under 120 g/m2 is light here and takes a 70; the machine maker counts a stiff taffeta as middling.',
  ),
  row('flannel', brother, [75, 90], 160),
  row('denim', brother, [90, 100], 400),
  row('corduroy', brother, [90, 100], 330),
  row('gabardine', janome, [90, 100], 250),
  row('coating', janome, [90, 100], 420),
  row('voile', janome, [65, 75], 60),
  row(
    'coated nylon',
    mardock,
    [80, 80],
    80,
    'Goes by the weight of the cloth, 70, where the source has one size for all coated cloth; a finer blade leaves a smaller hole, so it is kept.',
  ),
  byThread(24, [70, 80]),
  byThread(40, [90, 100]),
  {
    class: 'B',
    name: 'needles for a coat of 11 h',
    source: 'derived from 8 h of life',
    expected: 2,
    got: needleCount(11, needleLifeHours.min),
    tolerance: 0,
  },
  {
    class: 'B',
    name: 'needles for ten such coats',
    source: 'derived from 8 h of life',
    expected: 14,
    got: needleCount(110, needleLifeHours.min),
    tolerance: 0,
  },
];

export default rows;
