/** What is sewn to what in a drafted coat, with which stitch. */
import type { Seam } from '../plan/model/outline.ts';
import type { DraftInput } from './draft-input.ts';
import { places, seam } from './written-seam.ts';

/**
 * The seams of the coat's own layer and then those of its lining; only those that the chosen pieces have. No edge is
 * overcast: a closed lining hides them all.
 */
export function draftSeams(input: DraftInput): Seam[] {
  const hasStrip = input.sideStripMm > 0;
  const hoodNeck = input.hood === 'three panels' ? ['side', 'centre'] : ['side'];
  const capEase = { leastMm: 2 * input.capEaseMm - 1, maxMm: 2 * input.capEaseMm + 1 };
  const sleeve = (prefix: '' | 'lining '): Seam[] =>
    input.sleeve === 'one part'
      ? [seam(`${prefix}sleeve`)]
      : [seam(`${prefix}sleeve front`), seam(`${prefix}sleeve back`)];
  const side = (prefix: '' | 'lining '): Seam[] =>
    hasStrip ? [seam(`${prefix}side front`), seam(`${prefix}side back`)] : [seam(`${prefix}side`)];
  const caps = (suffix: '' | '-lining') =>
    input.sleeve === 'one part'
      ? places(`sleeve${suffix}: cap`)
      : places(`top-sleeve${suffix}: cap`, `under-sleeve${suffix}: cap`);
  const neckFirst = (suffix: '' | '-facing' | '-lining') =>
    input.hasCollar
      ? places(`collar${suffix}: neck edge`)
      : places(...hoodNeck.map((part) => `hood-${part}${suffix}: neck`));
  return [
    seam('shoulder', { topstitchRowCount: 1 }),
    ...side(''),
    ...sleeve(''),
    seam('armhole', { firstSide: caps(''), ease: capEase }),
    seam('cuff end'),
    seam('cuff', { firstSide: places('cuff: sleeve edge') }),
    seam('neck', { firstSide: neckFirst('') }),
    ...(input.hasCollar
      ? [seam('collar edge', { firstSide: places('collar: top', 'collar: front end'), topstitchRowCount: 1 })]
      : []),
    ...hoodSeams(input, hoodNeck),
    seam('front edge', {
      firstSide: places('front: front edge', ...(input.lapMm > 0 ? ['front: lap top'] : [])),
      topstitchRowCount: 1,
    }),
    seam('placket'),
    seam('placket end'),
    seam('welt', { topstitchRowCount: 1 }),
    seam('bag mouth', { firstSide: places('bag-front: mouth', 'bag-back: mouth') }),
    seam('bag edge', {
      firstSide: places('bag-front: front side', 'bag-front: back side', 'bag-front: bottom'),
      topstitchRowCount: 1,
    }),
    seam('hem', {
      label: 'Hem of the shell, by hand',
      stitch: 'hand',
      firstSide: places(
        'back: hem',
        'front: hem',
        'front-facing: hem',
        ...(hasStrip ? ['side-strip: hem'] : []),
      ),
    }),
    seam('facing shoulder'),
    seam('facing neck', { firstSide: neckFirst(input.hasCollar ? '-facing' : '-lining') }),
    seam('facing to lining'),
    seam('lining shoulder'),
    ...side('lining '),
    ...sleeve('lining '),
    seam('lining armhole', { firstSide: caps('-lining'), ease: capEase }),
    seam('lining neck', {
      label: input.pleatMm > 0 ? 'Lining to neck facing, with the pleat' : 'Lining to neck facing',
      firstSide: places('back-lining: neckline'),
      ...(input.pleatMm > 0 ? { ease: { leastMm: input.pleatMm - 1, maxMm: input.pleatMm + 1 } } : {}),
    }),
    seam('cuff lining', { firstSide: places('cuff: lining edge') }),
    seam('lining hem', {
      firstSide: places(
        'back-lining: hem',
        'front-lining: hem',
        ...(hasStrip ? ['side-strip-lining: hem'] : []),
      ),
    }),
    seam('loop', { label: 'Hanging loop' }),
  ];
}

/** A hood's own seams; under a collar its neck is bound with its lining's. */
function hoodSeams(input: DraftInput, parts: readonly string[]): Seam[] {
  if (input.hood === 'none') return [];
  const hasCentre = input.hood === 'three panels';
  const crown = (suffix: '' | '-lining'): Partial<Seam> =>
    hasCentre
      ? { firstSide: places(`hood-centre${suffix}: right crown`, `hood-centre${suffix}: left crown`) }
      : {};
  return [
    seam('hood crown', { ...crown(''), topstitchRowCount: 1 }),
    seam('hood lining crown', crown('-lining')),
    seam('hood face', {
      firstSide: places(...parts.map((part) => `hood-${part}: face`)),
      topstitchRowCount: 2,
    }),
    ...(input.hasCollar
      ? [
          seam('hood neck', {
            firstSide: places(...parts.map((part) => `hood-${part}: neck`)),
            topstitchRowCount: 1,
          }),
        ]
      : []),
  ];
}
