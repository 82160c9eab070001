/** A piece made wider or narrower at a line along its grain, with those of its neighbours that the maker chooses. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { sideWord } from '../../../../shared-core/plan/geometry/piece-line.ts';
import { piecesSewnAlong, widenPieces } from '../../../../shared-core/plan/edits/pieces/widen.ts';
import { useLengthText } from '../../../client/wording/length-text.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { DraftField } from '../../../parts/forms/DraftField.tsx';
import { FlagField, QuantityField } from '../../../parts/forms/Field.tsx';
import { useLineChoice } from './line-choice.ts';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeWidth({ plan, piece, finish, onLine }: ChangeProps) {
  const lengthText = useLengthText();
  const [byMm, setByMm] = useState<number | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const line = useLineChoice(piece, 'along', 1 / 2, onLine);
  const { distanceMm } = line;
  const neighbours = distanceMm === null ? [] : piecesSewnAlong(plan, piece.id, distanceMm);
  const apply = (sign: 1 | -1) => {
    if (byMm === null || distanceMm === null) return;
    const ids = [piece.id, ...chosen.filter((id) => neighbours.includes(id))];
    void finish((current) => widenPieces(current, ids, sign * byMm, distanceMm, lengthText));
  };
  const isReady = Boolean(byMm) && distanceMm !== null;
  return (
    <>
      <div className={style.pair}>
        <QuantityField
          label={say('change-width.by')}
          quantity="length"
          value={null}
          onChange={({ value }) => setByMm(value)}
          onUnreadable={() => setByMm(null)}
          aboveZero
          {...(piece.foldEdge === null ? {} : { hint: say('change-width.on-each-side-of-the-fold') })}
        />
        <DraftField
          label={say('change-width.line-from', { sideWord: sideWord(piece) })}
          quantity="length"
          draft={line.draft}
          onChange={line.setDraft}
          aboveZero
        />
      </div>
      {neighbours.length > 0 && (
        <fieldset className={style.flags}>
          <legend>{say('change-width.sewn-to-it-over-the-line')}</legend>
          {neighbours.map((id) => (
            <FlagField
              key={id}
              label={plan.pieces.find((each) => each.id === id)?.name ?? id}
              value={chosen.includes(id)}
              onChange={(isOn) => setChosen(isOn ? [...chosen, id] : chosen.filter((each) => each !== id))}
            />
          ))}
        </fieldset>
      )}
      <div className={style.row}>
        <Button disabled={!isReady} onClick={() => apply(1)}>
          {say('change-width.widen')}
        </Button>
        <Button disabled={!isReady} onClick={() => apply(-1)}>
          {say('change-width.narrow')}
        </Button>
      </div>
    </>
  );
}
