/** A piece split in two at a line, with allowance on both parts and a seam between them. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { customaryAllowanceMm } from '../../../../shared-core/plan/edits/pieces/allowance.ts';
import { type LineDirection, sideWord } from '../../../../shared-core/plan/geometry/piece-line.ts';
import { splitPiece, defaultSplitNames } from '../../../../shared-core/plan/edits/pieces/split.ts';
import { useLengthText } from '../../../client/wording/length-text.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { DraftField, draftOf } from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../../parts/forms/Field.tsx';
import { useLineChoice } from './line-choice.ts';
import type { ChangeProps } from '../piece-change.ts';
import style from '../PieceSheet.module.css';

export function ChangeSplit(props: ChangeProps) {
  const [direction, setDirection] = useState<LineDirection>('across');
  return (
    <>
      <ChoiceField
        label={say('change-split.the-line-runs')}
        value={direction}
        options={[
          { value: 'across', label: say('change-split.across-the-grain-as-a-yoke') },
          { value: 'along', label: say('change-split.along-the-grain-as-a-facing') },
        ]}
        onChange={(next) => next !== '' && setDirection(next)}
      />
      <SplitAt key={direction} direction={direction} {...props} />
    </>
  );
}

function SplitAt({ direction, piece, finish, onLine }: ChangeProps & { direction: LineDirection }) {
  const lengthText = useLengthText();
  const line = useLineChoice(piece, direction, direction === 'across' ? 2 / 3 : 1 / 3, onLine);
  const [allowance, setAllowance] = useState(() =>
    draftOf(customaryAllowanceMm, lengthText(customaryAllowanceMm)),
  );
  const [names, setNames] = useState(defaultSplitNames(piece, direction));
  const { distanceMm } = line;
  const allowanceMm = allowance.misread === null ? allowance.value : null;
  const apply = () => {
    if (distanceMm === null || allowanceMm === null) return;
    void finish((current) =>
      splitPiece(current, piece.id, { direction, distanceMm, allowanceMm, names }, lengthText),
    );
  };
  const near =
    direction === 'across'
      ? say('change-split.part-at-the-hem')
      : say('change-split.part-at', { sideWord: sideWord(piece) });
  return (
    <>
      <div className={style.pair}>
        <DraftField
          label={
            direction === 'across'
              ? say('change-split.line-above-the-hem')
              : say('change-split.line-from', { sideWord: sideWord(piece) })
          }
          quantity="length"
          draft={line.draft}
          onChange={line.setDraft}
          aboveZero
        />
        <DraftField
          label={say('change-split.allowance-on-both-parts')}
          quantity="length"
          draft={allowance}
          onChange={setAllowance}
          min={0}
        />
        <TextField label={near} value={names[0]} onChange={(name) => setNames([name, names[1]])} />
        <TextField
          label={say('change-split.other-part')}
          value={names[1]}
          onChange={(name) => setNames([names[0], name])}
        />
      </div>
      <div className={style.row}>
        <Button disabled={distanceMm === null || allowanceMm === null} onClick={apply}>
          {say('change-split.split-the-piece')}
        </Button>
      </div>
    </>
  );
}
