/** The grain of a piece turned: to the bias, across, or by degrees. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { turnGrain } from '../../../../shared-core/plan/edits/pieces/grain.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { TextField } from '../../../parts/forms/Field.tsx';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeGrain({ piece, finish }: ChangeProps) {
  const [typed, setTyped] = useState('');
  const turn = (turnDeg: number) => void finish((current) => turnGrain(current, piece.id, turnDeg));
  const turnDeg = degrees(typed);
  return (
    <>
      <p className="quiet">{say('change-grain.the-piece-keeps-its-shape-and')}</p>
      <div className={style.row}>
        <Button onClick={() => turn(45)}>{say('change-grain.to-the-bias-45')}</Button>
        <Button onClick={() => turn(90)}>{say('change-grain.across-90')}</Button>
        <Button onClick={() => turn(180)}>{say('change-grain.upside-down')}</Button>
      </div>
      <form
        className={style.inline}
        onSubmit={(event) => {
          event.preventDefault();
          if (turnDeg !== null) turn(turnDeg);
        }}
      >
        <TextField
          label={say('change-grain.degrees')}
          value={typed}
          onChange={setTyped}
          problem={
            typed.trim() !== '' && turnDeg === null ? say('change-grain.type-a-number-such-as-30') : null
          }
        />
        <Button type="submit" disabled={turnDeg === null}>
          {say('change-grain.turn-the-grain')}
        </Button>
      </form>
    </>
  );
}

/** "30", "-12.5", "30°"; null where it is no number. */
function degrees(text: string): number | null {
  const bare = text.trim().replace(/°$/, '').replace(',', '.').trim();
  return /^[+-]?\d+(\.\d+)?$/.test(bare) ? Number(bare) : null;
}
