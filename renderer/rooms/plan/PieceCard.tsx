import { say } from '../../../shared-core/wording/say.ts';
import { memo } from 'react';
import { type CoatPlan, type Piece, slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import style from './PlanRoom.module.css';

/** How a piece is cut, short: "cut 2, mirrored", "cut 1 on the fold". */
export function cutWords(piece: Piece): string {
  const how = piece.foldEdge
    ? ` ${say('piece-card.on-the-fold')}`
    : piece.isMirrored
      ? say('common.mirrored')
      : '';
  const turn =
    piece.turns === 'one way'
      ? say('piece-card.one-way')
      : piece.turns === 'free'
        ? say('piece-card.any-grain')
        : '';
  return say('piece-card.cut', { cutCount: piece.cutCount, how, turn });
}

export interface PieceCardProps {
  readonly piece: Piece;
  readonly plan: CoatPlan;
  readonly onOpen: () => void;
}

export const PieceCard = memo(
  function PieceCard({ piece, plan, onOpen }: PieceCardProps) {
    const from = piece.cutFrom
      .filter(({ plyCount }) => plyCount > 0)
      .map(({ slotId, plyCount }) => `${slotById(plan, slotId).name}${plyCount > 1 ? ` × ${plyCount}` : ''}`);
    return (
      <li>
        <button type="button" className={`${style.card} eased`} onClick={onOpen}>
          <span className={style.picture}>
            <PieceDrawing piece={piece} />
          </span>
          <span>
            <span className={style.cardName}>{piece.name}</span>
            <span className={style.cardFacts}>
              {cutWords(piece)}
              <br />
              {from.join(', ') || say('piece-card.from-no-slot-yet')}
            </span>
          </span>
        </button>
      </li>
    );
  },
  (before, after) => before.piece === after.piece && before.plan === after.plan,
);
