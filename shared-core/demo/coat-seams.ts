/** The seams of the demo coat: what is sewn to what, with which stitch. Its lining is closed, so nothing is overcast. */
import { places, seam } from '../draft/written-seam.ts';
import type { Seam } from '../plan/model/outline.ts';

/** Ease of both caps together, and how far it may stray from the draft's. */
function capEase(easeMm: number): Seam['ease'] {
  return { leastMm: 2 * Math.min(10, easeMm), maxMm: 2 * Math.max(25, easeMm) };
}

export function fenwalkSeams(capEaseMm: number, pleatMm: number): Seam[] {
  return [
    seam('shoulder', { topstitchRowCount: 1 }),
    seam('side'),
    seam('sleeve front'),
    seam('sleeve back', { topstitchRowCount: 1 }),
    seam('armhole', { firstSide: places('top-sleeve: cap', 'under-sleeve: cap'), ease: capEase(capEaseMm) }),
    seam('cuff end'),
    seam('cuff', { firstSide: places('cuff: sleeve edge') }),
    seam('neck', { firstSide: places('collar: neck edge') }),
    seam('collar edge', { firstSide: places('collar: top', 'collar: front end'), topstitchRowCount: 1 }),
    seam('front edge', { topstitchRowCount: 1 }),
    seam('wind flap'),
    seam('wind flap end'),
    seam('facing shoulder'),
    seam('facing neck', { firstSide: places('collar-facing: neck edge') }),
    seam('facing to lining'),
    seam('lining shoulder'),
    seam('lining side'),
    seam('lining sleeve front'),
    seam('lining sleeve back'),
    seam('lining armhole', {
      firstSide: places('top-sleeve-lining: cap', 'under-sleeve-lining: cap'),
      ease: capEase(capEaseMm),
    }),
    seam('lining neck', {
      label: 'Lining to neck facing, with the pleat',
      firstSide: places('back-lining: neckline'),
      ease: { leastMm: 2 * pleatMm - 1, maxMm: 2 * pleatMm + 1 },
    }),
    seam('cuff lining', { firstSide: places('cuff: lining edge') }),
    seam('hood crown', {
      firstSide: places('hood-centre: right crown', 'hood-centre: left crown'),
      topstitchRowCount: 1,
    }),
    seam('hood lining crown', {
      firstSide: places('hood-centre-lining: right crown', 'hood-centre-lining: left crown'),
    }),
    seam('hood face', { firstSide: places('hood-side: face', 'hood-centre: face'), topstitchRowCount: 2 }),
    seam('hood neck', { firstSide: places('hood-side: neck', 'hood-centre: neck'), topstitchRowCount: 1 }),
    seam('pocket mouth', { topstitchRowCount: 1 }),
    seam('pocket edge', {
      firstSide: places('patch-pocket: front side', 'patch-pocket: back side', 'patch-pocket: bottom'),
      topstitchRowCount: 2,
    }),
    seam('flap edge', {
      firstSide: places('pocket-flap: front side', 'pocket-flap: back side', 'pocket-flap: bottom'),
      topstitchRowCount: 1,
    }),
    seam('flap top', { topstitchRowCount: 1 }),
    seam('belt edge', { topstitchRowCount: 1 }),
    seam('belt end'),
    seam('welt', { topstitchRowCount: 1 }),
    seam('bag mouth', { firstSide: places('bag-front: mouth', 'bag-back: mouth') }),
    seam('bag edge', {
      firstSide: places('bag-front: front side', 'bag-front: back side', 'bag-front: bottom'),
      topstitchRowCount: 1,
    }),
    seam('hem', {
      label: 'Hem of the shell, by hand',
      stitch: 'hand',
      firstSide: places('back: hem', 'front: hem', 'front-facing: hem'),
    }),
    seam('lining hem', { firstSide: places('back-lining: hem', 'front-lining: hem') }),
  ];
}
