/** Whether a coat is for a child: as the maker said, else by what its size says. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { ringBox } from '../../geometry/ring.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { cutRing } from '../../plan/geometry/outline-ring.ts';

/** Heights that children's sizes are named by, cm. Source: EN 13402-3, steps of 6 cm. */
const heightsCm: readonly number[] = Array.from({ length: 11 }, (_, i) => 92 + 6 * i);

/** Oldest that the rules on cords speak of: EN 14682. */
const oldestYears = 14;

/**
 * True where the maker said so, else for a size such as "4T", "toddler", "age 6", "7-8 years", "height 116", "116 cm"
 * or a plain 116 whose pieces are no larger than a child's. A word such as age or years alone says nothing.
 */
export function isForChild(plan: CoatPlan): boolean {
  if (plan.isForChild !== undefined) return plan.isForChild;
  const { size } = plan;
  if (/\b\d{1,2}\s?T\b/.test(size)) return true;
  if (speaksOf('child', `${plan.name} ${size}`)) return true;
  if (isChildsAge(size)) return true;
  const heightCm = heightOf(size);
  if (heightCm === null) return false;
  return heightCm.isSaid || isSmallFor(plan, heightCm.cm);
}

/** "age 6", "ages 3-4", "8 years", "5/6 yrs", "10 y": a number up to 14 with the word beside it. */
function isChildsAge(size: string): boolean {
  const range = String.raw`(\d{1,2})(?:\s?(?:-|–|\/|to|bis)\s?(\d{1,2}))?`;
  const found =
    new RegExp(String.raw`\b(?:ages?|alter):?\s?${range}\b`, 'i').exec(size) ??
    new RegExp(String.raw`\b${range}\s?(?:years?|yrs?|y|jahren?)\b`, 'i').exec(size);
  if (!found) return false;
  return Number(found[2] ?? found[1]) <= oldestYears;
}

/** A height from the table; isSaid: the size says that it is a height and no girth. */
function heightOf(size: string): { readonly cm: number; readonly isSaid: boolean } | null {
  const found =
    /^(?:EU\s|size\s|größe\s)?(height\s|körpergröße\s)?(\d{2,3})(?:\s?[-–/]\s?(\d{2,3}))?(\s?cm)?(\stall)?$/i.exec(
      size.trim(),
    );
  if (!found) return null;
  const cm = Number(found[3] ?? found[2]);
  if (!heightsCm.includes(cm)) return null;
  return { cm, isSaid: found[1] !== undefined || found[4] !== undefined || found[5] !== undefined };
}

/**
 * The same numbers name grown girths. Round the body, facings counted in, a child's coat measures 0.9 to 1.3 of the
 * height it is named by, a grown person's 1.45 and more of the girth: found with coats drafted here. Round the body go
 * the pieces that are about as long as the longest.
 */
const maxOfHeight = 1.35;
const aboutAsLongRatio = 0.95;

function isSmallFor(plan: CoatPlan, heightCm: number): boolean {
  const cut = plan.pieces
    .filter((piece) => piece.cutFrom.length > 0)
    .map((piece) => ({ piece, box: ringBox(cutRing(piece.outline, piece.foldEdge)) }));
  const lengthMm = ({ box }: (typeof cut)[number]) => box.maxX - box.minX;
  const [longest] = cut.toSorted((a, b) => lengthMm(b) - lengthMm(a));
  if (!longest) return false;
  const { slotId } = longest.piece.cutFrom[0]!;
  const roundMm = cut
    .filter((one) => one.piece.cutFrom.some((from) => from.slotId === slotId))
    .filter((one) => lengthMm(one) >= aboutAsLongRatio * lengthMm(longest))
    .reduce((sum, { piece, box }) => sum + (box.maxY - box.minY) * piece.cutCount, 0);
  return roundMm < maxOfHeight * heightCm * 10;
}
