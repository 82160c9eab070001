/** Loose fill of which nobody said how much, and channels that do not suit the loft they are stuffed to. */
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { CoatPlan, Piece } from '../../plan/model/coat-plan.ts';
import { listed } from '../../wording/listed.ts';
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
  get how() {
    return say('fill-advice.a-channel-is-to-times-as', { min: widthOfLoft.min, max: widthOfLoft.max });
  },
  get source() {
    return say('fill-advice.common-practice-no-source-that-light');
  },
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
    const comes = say('fill-advice.comes-to', {
      getName: items.get(slot.id)?.name ?? slot.name,
      measureIn: measureIn('arealMass', Math.round(gPerM2)),
    });
    const usual = say('fill-advice.to-of-down-of-600-to', {
      measureIn: measureIn('arealMass', min),
      measureIn2: measureIn('arealMass', max),
    });
    const isUsual = guessed.some(
      (piece) =>
        isStuffedAsUsual(plan, piece, items) && piece.cutFrom.some(({ slotId }) => slotId === slot.id),
    );
    return {
      kind: 'loose fill',
      says: isUsual
        ? say('fill-advice.no-loft-and-no-weight-of', { usual, comes })
        : say('fill-advice.no-loft-and-no-weight-of-2', { comes, usual }),
      fix: say('fill-advice.give-the-loft-midway-between-two'),
      basis: [
        {
          kind: 'rule of thumb',
          how: isUsual
            ? say('fill-advice.the-middle-of-usual-weights-other')
            : say('fill-advice.rise-of-a-face-1-8'),
          source: say('common.common-practice-no-source'),
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
      says: say('fill-advice.the-lines-of-are-up-to', {
        namesOf: namesOf(wide),
        maxApart: maxApart(wide),
        rounded: rounded(first.loftMm),
      }),
      fix: say('fill-advice.bring-them-to-or-nearer-or', {
        rounded: rounded(widthOfLoft.max * first.loftMm),
      }),
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
      says: say('fill-advice.the-lines-of-are-too-near', {
        namesOf: namesOf(narrow),
        rounded: rounded(first.loftMm),
        rounded2: rounded(first.spacingMm),
        larger,
      }),
      fix: say('fill-advice.set-them-apart-or-farther-or', {
        rounded: rounded(widthOfLoft.min * first.loftMm),
      }),
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
