/** A piece made longer or shorter at a line across its grain, with what is sewn to it. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import {
  lengthenPieces,
  piecesSewnAcross,
  defaultLineRatio,
} from '../../../../shared-core/plan/edits/pieces/lengthen.ts';
import { lineRoomMm } from '../../../../shared-core/plan/geometry/piece-line.ts';
import { useLengthText } from '../../../client/wording/length-text.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { DraftField } from '../../../parts/forms/DraftField.tsx';
import { FlagField, QuantityField } from '../../../parts/forms/Field.tsx';
import { useLineChoice } from './line-choice.ts';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeLength({ plan, piece, finish, onLine }: ChangeProps) {
  const lengthText = useLengthText();
  const [byMm, setByMm] = useState<number | null>(null);
  const [isTogether, setIsTogether] = useState(true);
  const [isTyped, setIsTyped] = useState(false);
  const line = useLineChoice(piece, 'across', defaultLineRatio, onLine);
  // Untouched, it is the third itself and not its rounded figure.
  const aboveHemMm = isTyped ? line.distanceMm : lineRoomMm(piece, 'across') * defaultLineRatio;
  const together = aboveHemMm === null ? [piece.id] : piecesSewnAcross(plan, piece.id, aboveHemMm);
  const names = together
    .filter((id) => id !== piece.id)
    .map((id) => plan.pieces.find((each) => each.id === id)?.name);
  const apply = (sign: 1 | -1) => {
    if (byMm === null || aboveHemMm === null) return;
    const ids = isTogether ? together : [piece.id];
    void finish((current) => lengthenPieces(current, ids, sign * byMm, aboveHemMm, lengthText));
  };
  const isReady = Boolean(byMm) && aboveHemMm !== null;
  return (
    <>
      <div className={style.pair}>
        <QuantityField
          label={say('change-length.by')}
          quantity="length"
          value={null}
          onChange={({ value }) => setByMm(value)}
          onUnreadable={() => setByMm(null)}
          aboveZero
        />
        <DraftField
          label={say('change-length.line-above-the-hem')}
          quantity="length"
          draft={line.draft}
          onChange={(draft) => {
            setIsTyped(true);
            line.setDraft(draft);
          }}
          aboveZero
          {...(isTyped ? {} : { hint: say('change-length.the-lower-third') })}
        />
      </div>
      {names.length > 0 && (
        <FlagField
          label={say('change-length.together-with-what-is-sewn-to')}
          hint={names.join(', ')}
          value={isTogether}
          onChange={setIsTogether}
        />
      )}
      <div className={style.row}>
        <Button disabled={!isReady} onClick={() => apply(1)}>
          {say('change-length.lengthen')}
        </Button>
        <Button disabled={!isReady} onClick={() => apply(-1)}>
          {say('change-length.shorten')}
        </Button>
      </div>
    </>
  );
}
