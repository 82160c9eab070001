/** Loose fill of which nobody said how much, and channels that do not suit the loft they are stuffed to. */
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { CoatPlan, Piece } from '../../plan/model/coat-plan.ts';
import { listed } from '../../plan/edits/edited.ts';
import { fillSlots, isStuffed } from '../../plan/model/stuffing.ts';
import { isPieceQuilted, lineSpacingMm } from '../../quilting/lines.ts';
import { arcRatio } from '../../quilting/take-up.ts';
import type { Advice } from '../advice.ts';
import { fillingList } from './fill.ts';
import type { SlotItems } from '../need.ts';
import { measuredRiseMm, quiltedRise } from './rise.ts';
import { isStuffedAsUsual } from './stuffed-rise.ts';
import { defaultDownGPerM2, widthOfLoft } from './usual-fill.ts';

const channelBasis: Basis = {
  kind: 'rule of thumb',
  how: `a channel is ${widthOfLoft.min} to ${widthOfLoft.max} times as wide as the fill lofts in it`,
  source:
    'common practice, no source; that light fill wants narrow channels and narrow ones keep it from lofting: timmermade.com, 2021',
};

/** A millimetre is how lines are sewn, not a fault of the plan. */
const slackMm = 1;

interface Channel {
  readonly name: string;
  readonly spacingMm: number;
  readonly loftMm: number;
}

/** Advice on stuffed pieces of the size at hand; none where nothing is stuffed. */
export function fillAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  const stuffed = plan.pieces.filter((piece) => isStuffed(plan, piece));
  if (stuffed.length === 0) return [];
  const guessed = stuffed.filter(
    (piece) => plan.fillAim === undefined && measuredRiseMm(plan, piece) === null,
  );
  const channels = stuffed
    .filter(
      (piece) =>
        isPieceQuilted(plan, piece) && (!guessed.includes(piece) || isStuffedAsUsual(plan, piece, items)),
    )
    .map((piece) => channelOf(plan, piece, items));
  const wide = channels.filter(({ spacingMm, loftMm }) => spacingMm > widthOfLoft.max * loftMm + slackMm);
  const narrow = channels.filter(({ spacingMm, loftMm }) => spacingMm < widthOfLoft.min * loftMm - slackMm);
  return [...askAdvice(plan, guessed, items), ...wideAdvice(wide), ...narrowAdvice(narrow)];
}

function channelOf(plan: CoatPlan, piece: Piece, items: SlotItems): Channel {
  const spacingMm = lineSpacingMm(plan.quilting!, piece);
  return { name: piece.name, spacingMm, loftMm: 2 * quiltedRise(plan, piece, items).riseMm };
}

function askAdvice(plan: CoatPlan, guessed: readonly Piece[], items: SlotItems): readonly Advice[] {
  const slots = fillSlots(plan).filter(
    ({ id, amountPerCoat }) =>
      amountPerCoat === null &&
      guessed.some(({ cutFrom }) => cutFrom.some(({ slotId, plyCount }) => slotId === id && plyCount > 0)),
  );
  return slots.map((slot): Advice => {
    const { gPerM2 } = fillingList(plan, slot, items);
    const { min, max } = defaultDownGPerM2;
    const comes = `${items.get(slot.id)?.name ?? slot.name} comes to ${measureIn('arealMass', Math.round(gPerM2))}`;
    const usual = `${measureIn('arealMass', min)} to ${measureIn('arealMass', max)} of down of 600 to 700 in³/oz`;
    const isUsual = guessed.some(
      (piece) =>
        isStuffedAsUsual(plan, piece, items) && piece.cutFrom.some(({ slotId }) => slotId === slot.id),
    );
    return {
      kind: 'loose fill',
      says: isUsual
        ? `No loft and no weight of fill is given. It is taken as the middle of what coats sewn through usually take, ${usual}, as far as the channels let it loft: ${comes}.`
        : `No loft and no weight of fill is given. By the width of the channels alone ${comes}; coats sewn through usually take ${usual}.`,
      fix: 'Give the loft midway between two lines, or the weight of fill over its area, as a coat that you know has it.',
      basis: [
        {
          kind: 'rule of thumb',
          how: isUsual
            ? 'the middle of usual weights, other fill powers in proportion'
            : 'rise of a face 1/8 of the width of its channel; usual weights',
          source: 'common practice, no source',
        },
      ],
    };
  });
}

function wideAdvice(wide: readonly Channel[]): readonly Advice[] {
  const [first] = wide.toSorted((a, b) => a.loftMm - b.loftMm);
  if (!first) return [];
  return [
    {
      kind: 'loose fill',
      says: `The lines of ${namesOf(wide)} are up to ${maxApart(wide)} apart: fill that lofts to ${rounded(first.loftMm)} shifts in so wide a channel and leaves cold places.`,
      fix: `Bring them to ${rounded(widthOfLoft.max * first.loftMm)} or nearer, or stuff it fuller.`,
      basis: [channelBasis],
    },
  ];
}

function narrowAdvice(narrow: readonly Channel[]): readonly Advice[] {
  const [first] = narrow.toSorted((a, b) => b.loftMm - a.loftMm);
  if (!first) return [];
  const larger = Math.round(100 * arcRatio(first.spacingMm, first.loftMm / 2));
  return [
    {
      kind: 'loose fill',
      says: `The lines of ${namesOf(narrow)} are too near for so much fill: it cannot loft to ${rounded(first.loftMm)} between lines ${rounded(first.spacingMm)} apart, and the cloth is cut ${larger} % larger for it.`,
      fix: `Set them ${rounded(widthOfLoft.min * first.loftMm)} apart or farther, or stuff less.`,
      basis: [channelBasis],
    },
  ];
}

function maxApart(channels: readonly Channel[]): string {
  return rounded(Math.max(...channels.map(({ spacingMm }) => spacingMm)));
}

function namesOf(channels: readonly Channel[]): string {
  return listed(channels.map(({ name }) => name));
}

function rounded(mm: number): string {
  return measureIn('length', Math.round(mm));
}
