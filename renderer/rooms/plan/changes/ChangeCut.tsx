/** From which slots a piece is cut, in how many plies, and how many one coat needs. */
import { say } from '../../../../shared-core/wording/say.ts';
import { setCutCount } from '../../../../shared-core/plan/edits/pieces/cut-count.ts';
import { setPlies } from '../../../../shared-core/plan/edits/edit.ts';
import { FlagField } from '../../../parts/forms/Field.tsx';
import { SettledField } from '../../../parts/forms/SettledField.tsx';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeCut({ plan, piece, make }: ChangeProps) {
  const slots = plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting');
  return (
    <>
      <div className={style.pair}>
        <SettledField
          label={say('change-cut.how-many-for-one-coat')}
          quantity="count"
          value={piece.cutCount}
          min={1}
          onSet={(count) => void make((current) => setCutCount(current, piece.id, count, piece.isMirrored))}
        />
        {piece.foldEdge === null && (
          <div className={style.beside}>
            <FlagField
              label={say('change-cut.half-of-them-mirrored')}
              value={piece.isMirrored}
              onChange={(isMirrored) =>
                void make((current) => setCutCount(current, piece.id, piece.cutCount, isMirrored))
              }
            />
          </div>
        )}
      </div>
      <h4 className={style.small}>{say('change-cut.plies-of-each')}</h4>
      <div className={style.pair}>
        {slots.map((slot) => (
          <SettledField
            key={slot.id}
            label={slot.name}
            quantity="count"
            value={piece.cutFrom.find((from) => from.slotId === slot.id)?.plyCount ?? 0}
            max={20}
            onSet={(plyCount) => void make((current) => setPlies(current, piece.id, slot.id, plyCount))}
          />
        ))}
      </div>
    </>
  );
}
