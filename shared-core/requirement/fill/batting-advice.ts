/** Batting whose lines are too far apart, that has none, or that is sewn over bare. */
import { say } from '../../wording/say.ts';
import { measureIn } from '../../measure/basis.ts';
import type { CoatPlan, Piece } from '../../plan/model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
import { ringBox } from '../../geometry/ring.ts';
import { isPieceQuilted, lineSpacingMm, wholeSeamRing } from '../../quilting/lines.ts';
import type { Item } from '../../stash/stash.ts';
import type { Advice } from '../advice.ts';
import { lineLimit, needsBacking } from './batting-limits.ts';
import type { SlotItems } from '../need.ts';

/** Less than a millimetre over is how it was typed, not how it is sewn. */
const slackMm = 1;

type Batting = Extract<Item, { kind: 'batting' }>;

/** Advice on each batting of the plan, of the size at hand. */
export function battingAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  return plan.slots.flatMap((slot) => {
    const item = items.get(slot.id);
    if (item?.kind !== 'batting') return [];
    const pieces = plan.pieces.filter(({ cutFrom }) =>
      cutFrom.some(({ slotId, plyCount }) => slotId === slot.id && plyCount > 0),
    );
    return [...lineAdvice(plan, item, pieces), ...backingAdvice(plan, item, pieces)];
  });
}

function lineAdvice(plan: CoatPlan, item: Batting, pieces: readonly Piece[]): readonly Advice[] {
  const limit = lineLimit(item.facts);
  if (limit === null) return [];
  const { limitMm, basis } = limit;
  const max = measureIn('length', limitMm);
  const tooFar = pieces.filter(
    (piece) => isPieceQuilted(plan, piece) && lineSpacingMm(plan.quilting!, piece) > limitMm + slackMm,
  );
  const bare = pieces.filter((piece) => !isPieceQuilted(plan, piece) && narrowMm(piece) > limitMm + slackMm);
  const advice: Advice[] = [];
  if (tooFar.length > 0) {
    const spacingMm = Math.max(...tooFar.map((piece) => lineSpacingMm(plan.quilting!, piece)));
    advice.push({
      kind: 'batting',
      says: say('batting-advice.holds-between-lines-at-most-apart', {
        itemName: item.name,
        max,
        namesOf: namesOf(tooFar),
        measureIn: measureIn('length', spacingMm),
      }),
      fix: say('batting-advice.bring-the-lines-nearer-or-take'),
      basis: [basis],
    });
  }
  if (bare.length > 0) {
    advice.push({
      kind: 'batting',
      says: say('batting-advice.have-and-no-lines-and-are', {
        namesOf: namesOf(bare),
        bareCount: bare.length,
        itemName: item.name,
        max,
      }),
      fix: say('batting-advice.quilt-them-tack-the-batting-to', { bareCount: bare.length }),
      basis: [basis],
    });
  }
  return advice;
}

function backingAdvice(plan: CoatPlan, item: Batting, pieces: readonly Piece[]): readonly Advice[] {
  if (!needsBacking(item.facts)) return [];
  const open = pieces.filter((piece) => isPieceQuilted(plan, piece) && quiltedClothCount(plan, piece) < 2);
  if (open.length === 0) return [];
  return [
    {
      kind: 'batting',
      says: say('batting-advice.lies-bare-behind-without-a-cloth', {
        itemName: item.name,
        namesOf: namesOf(open),
      }),
      fix: say('batting-advice.cut-a-backing-too-and-quilt'),
      basis: [
        item.facts.needsBacking === null
          ? {
              kind: 'rule of thumb',
              how: say('batting-advice.a-batting-that-nothing-holds-together'),
              source: say('common.common-practice-no-source'),
            }
          : { kind: 'measured', how: say('batting-advice.as-you-wrote-it-down'), source: '' },
      ],
    },
  ];
}

/** Plies of cloth that the lines go through. */
function quiltedClothCount(plan: CoatPlan, piece: Piece): number {
  return piece.cutFrom.reduce((sum, { slotId, plyCount }) => {
    const slot = plan.slots.find(({ id }) => id === slotId);
    return slot?.kind === 'cloth' && slot.isQuilted ? sum + plyCount : sum;
  }, 0);
}

/** The shorter side of the box round a piece, mm: its seams hold the batting on both sides of it. */
function narrowMm(piece: Piece): number {
  const box = ringBox(wholeSeamRing(piece));
  return Math.min(box.maxX - box.minX, box.maxY - box.minY);
}

function namesOf(pieces: readonly Piece[]): string {
  return listed(pieces.map(({ name }) => name));
}
