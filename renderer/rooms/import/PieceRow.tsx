/** One found piece: drawn, named, new or in place of another, and what it is cut from. */
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
  const how = piece.foldEdge ? ' on the fold' : piece.isMirrored ? ', mirrored' : '';
  const facts = [
    `cut ${piece.cutCount}${how}`,
    `${lengthText(alongMm)} × ${lengthText(acrossMm)}`,
    piece.size && `size ${piece.size}`,
    piece.hasSewLine ? 'allowances from the file' : '',
    piece.hasGrain ? '' : 'no grain line: taken along the width of the page',
  ].filter((fact) => fact !== '');
  return (
    <li className={style.piece} aria-label={piece.name}>
      <div className={style.picture}>
        <PieceDrawing piece={drawn} />
      </div>
      <div className={style.settings}>
        <FlagField
          label={`Bring in ${piece.name}`}
          value={draft.isTicked}
          onChange={(isTicked) => onChange({ ...draft, isTicked })}
        />
        <p className={style.facts}>{facts.join(' · ')}</p>
        {draft.isTicked && (
          <>
            <div className={style.pair}>
              <ChoiceField
                label="As"
                value={draft.replacesId ?? ''}
                emptyLabel="a new piece"
                options={plan.pieces.map(({ id, name }) => ({ value: id, label: `in place of ${name}` }))}
                onChange={(id) => onChange({ ...draft, replacesId: id || null })}
              />
              <TextField label="Name" value={draft.name} onChange={(name) => onChange({ ...draft, name })} />
            </div>
            <fieldset className={style.slots}>
              <legend>Cut from</legend>
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
