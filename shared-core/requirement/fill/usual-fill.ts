/** How full coats are usually stuffed with down, for where a maker asks for neither loft nor weight. */
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';

/** What sewn-through coats take of down of 600 to 700 in3/oz, g/m2: common practice, no source. */
export const defaultDownGPerM2 = { min: 100, max: 180 } as const;

/** The middle of those fill powers, 650 in3/oz, cm3/g. */
const defaultDownCm3PerG = 375.7;

/** Width of a channel over the loft in it: nearer, and it cannot loft; farther, and it shifts. */
export const widthOfLoft = { min: 1.5, max: 4 } as const;

/** The middle of the usual weights, of down of another fill power as much as lofts alike, g/m2. */
export function defaultMiddleGPerM2(cm3PerG: number): number {
  return (((defaultDownGPerM2.min + defaultDownGPerM2.max) / 2) * defaultDownCm3PerG) / cm3PerG;
}

/** gPerM2: what is usual of this fill; isHeld: its channels are too narrow to let so much loft. */
export function defaultBasis(gPerM2: number, isHeld: boolean): Basis {
  const { min, max } = defaultDownGPerM2;
  return {
    kind: 'rule of thumb',
    how: say('usual-fill.no-loft-and-no-weight-of', {
      measureIn: measureIn('arealMass', min),
      measureIn2: measureIn('arealMass', max),
      measureIn3: measureIn('arealMass', Math.round(gPerM2)),
      isHeld: isHeld ? say('usual-fill.less-where-a-channel-is-not', { min: widthOfLoft.min }) : '',
    }),
    source: say('common.common-practice-no-source'),
  };
}
