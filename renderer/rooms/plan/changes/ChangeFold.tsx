/** A symmetric piece drafted as a half on the fold, or a half opened flat. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { foldPiece, openPiece } from '../../../../shared-core/plan/edits/pieces/fold.ts';
import type { LineDirection } from '../../../../shared-core/plan/geometry/piece-line.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { ChoiceField } from '../../../parts/forms/Field.tsx';
import type { ChangeProps } from '../piece-change.ts';
import { useLineChoice } from './line-choice.ts';
import style from '../PieceSheet.module.css';

export function ChangeFold(props: ChangeProps) {
  const { piece, finish } = props;
  if (piece.foldEdge === null) return <Fold {...props} />;
  return (
    <>
      <p className="quiet">{say('change-fold.drafted-as-a-half-its-fold', { foldEdge: piece.foldEdge })}</p>
      <div className={style.row}>
        <Button onClick={() => void finish((current) => openPiece(current, piece.id))}>
          {say('change-fold.open-it-flat')}
        </Button>
      </div>
    </>
  );
}

function Fold({ piece, finish, onLine }: ChangeProps) {
  const [direction, setDirection] = useState<LineDirection>('along');
  useLineChoice(piece, direction, 1 / 2, onLine);
  return (
    <>
      <p className="quiet">{say('change-fold.where-both-halves-are-alike-the')}</p>
      <ChoiceField
        label={say('change-fold.the-fold-runs')}
        value={direction}
        options={[
          { value: 'along', label: say('common.along-the-grain') },
          { value: 'across', label: say('change-fold.across-the-grain') },
        ]}
        onChange={(next) => next !== '' && setDirection(next)}
      />
      <div className={style.row}>
        <Button onClick={() => void finish((current) => foldPiece(current, piece.id, direction))}>
          {say('change-fold.put-it-on-the-fold')}
        </Button>
      </div>
    </>
  );
}
