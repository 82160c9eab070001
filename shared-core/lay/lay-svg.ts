/** A lay as a drawing of its own, true to scale: SVG in mm, lengths one below the other, pieces named. */
import { say } from '../wording/say.ts';
import { type Ring, ringBox, ringMoved, ringTurned } from '../geometry/ring.ts';
import { xmlText } from '../measure/text/xml-text.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { sizedPieceName } from '../plan/model/sizes.ts';
import type { LayJob, Placement } from './job.ts';
import type { SlotLay } from './plan-lay.ts';

/** Where a placement's outline lies on its length; both plies of a piece on the fold of folded cloth are one outline. */
export function placedRing(job: LayJob, placement: Placement): Ring {
  const shape = job.shapes[placement.shape];
  if (!shape) throw new RangeError(`the lay has no shape ${placement.shape}`);
  const ring = placement.onFold && shape.foldRing ? shape.foldRing : shape.ring;
  return ringMoved(ringTurned(ring, placement.turnDeg, placement.mirrored), placement.x, placement.y);
}

/** SVG path of a ring, closed, to 1/100 mm. */
export function ringPath(ring: Ring): string {
  const words: string[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    words.push(
      `${i === 0 ? 'M' : 'L'}${Math.round(ring[i]! * 100) / 100} ${Math.round(ring[i + 1]! * 100) / 100}`,
    );
  }
  return `${words.join('')}Z`;
}

const marginMm = 40;
const captionMm = 60;

/** The drawing as text. One unit is one mm; printed at 100 % it is the cloth itself. */
export function laySvg(plan: CoatPlan, { slotId, job, result, washed }: SlotLay): string {
  const drawn = job.lengths
    .map((length, index) => ({ length, index, usedMm: result.usedLengthMm[index] ?? 0 }))
    .filter(({ length, usedMm }) => usedMm > 0 || length.lengthMm !== null);
  const widthMm = Math.max(1, ...drawn.map(({ length, usedMm }) => length.lengthMm ?? usedMm)) + 2 * marginMm;
  const parts: string[] = [];
  let topMm = marginMm;
  for (const { length, index, usedMm } of drawn) {
    const caption = say('lay-svg.m-of-m', {
      slotByIdName: slotById(plan, slotId).name,
      usedMm: (usedMm / 1000).toFixed(3),
      widthMm: (length.widthMm / 1000).toFixed(3),
      ifWashed: washed ? 'yes' : 'no',
    });
    parts.push(
      `<text x="${marginMm}" y="${topMm + captionMm * 0.6}" font-size="36">${xmlText(caption)}</text>`,
    );
    topMm += captionMm;
    parts.push(`<g transform="translate(${marginMm} ${topMm})">`);
    parts.push(
      `<rect width="${length.lengthMm ?? usedMm}" height="${length.widthMm}" fill="#eef2f0" stroke="#66777b"/>`,
    );
    // The cloth's y runs up and a drawing's runs down: turned over, no piece comes out as its mirror image.
    parts.push(`<g transform="matrix(1 0 0 -1 0 ${length.widthMm})">`);
    for (const flaw of length.flaws) {
      parts.push(
        `<rect x="${flaw.x}" y="${flaw.y}" width="${flaw.widthX}" height="${flaw.widthY}" fill="#d9a9a3"/>`,
      );
    }
    const placed = result.placements
      .filter((placement) => placement.length === index)
      .map((placement) => ({
        ring: placedRing(job, placement),
        name: sizedPieceName(plan, job.shapes[placement.shape]!.id),
      }));
    for (const { ring } of placed) {
      parts.push(`<path d="${ringPath(ring)}" fill="#cfe3da" stroke="#17614f"/>`);
    }
    parts.push('</g>');
    for (const { ring, name } of placed) {
      const box = ringBox(ring);
      parts.push(
        `<text x="${(box.minX + box.maxX) / 2}" y="${length.widthMm - (box.minY + box.maxY) / 2}" font-size="${nameSizeMm(box.maxX - box.minX, name)}" text-anchor="middle" dominant-baseline="middle">${xmlText(name)}</text>`,
      );
    }
    parts.push(`<path d="M${usedMm} 0V${length.widthMm}" stroke="#a92d28" stroke-dasharray="12 8"/>`, '</g>');
    topMm += length.widthMm + marginMm;
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${topMm}mm" viewBox="0 0 ${widthMm} ${topMm}" font-family="sans-serif">\n${parts.join('\n')}\n</svg>\n`;
}

/** Letters that fit the piece's extent, and never larger than a title. */
function nameSizeMm(extentMm: number, name: string): number {
  return Math.max(6, Math.min(32, (1.6 * extentMm) / Math.max(1, name.length)));
}
