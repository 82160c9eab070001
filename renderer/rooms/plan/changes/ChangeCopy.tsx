/** The same piece once more for other slots: a lining, a facing, an interlayer. */
import { codeWords } from '../../../../shared-core/wording/code-words.ts';
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { copyPiece } from '../../../../shared-core/plan/edits/pieces/copy-piece.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { FlagField, TextField } from '../../../parts/forms/Field.tsx';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeCopy({ plan, piece, finish }: ChangeProps) {
  const slots = plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting');
  const spare = slots.find((slot) => !piece.cutFrom.some((from) => from.slotId === slot.id));
  const [slotIds, setSlotIds] = useState<readonly string[]>(spare ? [spare.id] : []);
  const [name, setName] = useState(`${piece.name} ${spare?.name ?? codeWords('copy')}`);
  return (
    <>
      <TextField label={say('change-copy.name-of-the-copy')} value={name} onChange={setName} />
      <fieldset className={style.flags}>
        <legend>{say('common.cut-from')}</legend>
        {slots.map((slot) => (
          <FlagField
            key={slot.id}
            label={slot.name}
            value={slotIds.includes(slot.id)}
            onChange={(isOn) =>
              setSlotIds(isOn ? [...slotIds, slot.id] : slotIds.filter((id) => id !== slot.id))
            }
          />
        ))}
      </fieldset>
      <div className={style.row}>
        <Button onClick={() => void finish((current) => copyPiece(current, piece.id, name, slotIds))}>
          {say('change-copy.copy-the-piece')}
        </Button>
      </div>
    </>
  );
}
