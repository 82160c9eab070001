/** One found piece: drawn, named, new or in place of another, and what it is cut from. */
import { say } from '../../../shared-core/wording/say.ts';
import { memo, useMemo } from 'react';
import { pieceOf } from '../../../shared-core/exchange/pattern/found-piece.ts';
import type { FoundPiece } from '../../../shared-core/exchange/pattern/pattern.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { ChoiceField, FlagField, TextField } from '../../parts/forms/Field.tsx';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import type { BroughtDraft } from './brought-drafts.ts';
import style from './import.module.css';

export interface PieceRowProps {
  readonly piece: FoundPiece;
  readonly plan: CoatPlan;
  readonly draft: BroughtDraft;
  readonly onChange: (draft: BroughtDraft) => void;
}

export const PieceRow = memo(function PieceRow({ piece, plan, draft, onChange }: PieceRowProps) {
  const lengthText = useLengthText();
  const drawn = useMemo(
    () => pieceOf(piece, { id: piece.key, name: piece.name, cutFrom: [], turns: 'grain', quilted: null }),
    [piece],
  );
  const { alongMm, acrossMm } = piece.extentMm;
  const slots = plan.slots.filter(({ kind }) => kind === 'cloth' || kind === 'batting');
  const how = piece.foldEdge
    ? ` ${say('piece-row.on-the-fold')}`
    : piece.isMirrored
      ? say('common.mirrored')
      : '';
  const facts = [
    say('piece-row.cut', { cutCount: piece.cutCount, how }),
    `${lengthText(alongMm)} × ${lengthText(acrossMm)}`,
    piece.size && say('piece-row.size', { pieceCount: piece.size }),
    piece.hasSewLine ? say('piece-row.allowances-from-the-file') : '',
    piece.hasGrain ? '' : say('piece-row.no-grain-line-taken-along-the'),
  ].filter((fact) => fact !== '');
  return (
    <li className={style.piece} aria-label={piece.name}>
      <div className={style.picture}>
        <PieceDrawing piece={drawn} />
      </div>
      <div className={style.settings}>
        <FlagField
          label={say('piece-row.bring-in', { pieceName: piece.name })}
          value={draft.isTicked}
          onChange={(isTicked) => onChange({ ...draft, isTicked })}
        />
        <p className={style.facts}>{facts.join(' · ')}</p>
        {draft.isTicked && (
          <>
            <div className={style.pair}>
              <ChoiceField
                label={say('piece-row.as')}
                value={draft.replacesId ?? ''}
                emptyLabel={say('piece-row.a-new-piece')}
                options={plan.pieces.map(({ id, name }) => ({
                  value: id,
                  label: say('piece-row.in-place-of', { name }),
                }))}
                onChange={(id) => onChange({ ...draft, replacesId: id || null })}
              />
              <TextField
                label={say('common.name')}
                value={draft.name}
                onChange={(name) => onChange({ ...draft, name })}
              />
            </div>
            <fieldset className={style.slots}>
              <legend>{say('common.cut-from')}</legend>
              {slots.map(({ id, name }) => (
                <FlagField
                  key={id}
                  label={name}
                  value={draft.slotIds.includes(id)}
                  onChange={(isOn) =>
                    onChange({
                      ...draft,
                      slotIds: isOn ? [...draft.slotIds, id] : draft.slotIds.filter((each) => each !== id),
                    })
                  }
                />
              ))}
            </fieldset>
          </>
        )}
      </div>
    </li>
  );
});
