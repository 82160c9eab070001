/** How the file is to be taken: its unit or a length that the maker knows, its size, and the allowance where it has one line alone. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import {
  type FoundPattern,
  type FoundPiece,
  mmPerPatternUnit,
  type PatternUnit,
  type ReadChoices,
} from '../../../shared-core/exchange/pattern/pattern.ts';
import { customaryAllowanceMm } from '../../../shared-core/plan/edits/pieces/allowance.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { DraftField, emptyDraft, type QuantityDraft } from '../../parts/forms/DraftField.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import style from './import.module.css';

export interface ScaleFieldsProps {
  readonly found: FoundPattern;
  readonly pieces: readonly FoundPiece[];
  readonly choices: ReadChoices;
  readonly onChange: (choices: ReadChoices) => void;
  readonly allowance: QuantityDraft;
  readonly onAllowance: (draft: QuantityDraft) => void;
  readonly size: string;
  readonly onSize: (size: string) => void;
}

type Taken = 'file' | PatternUnit | 'known';

const unitNames: Readonly<Record<PatternUnit, string>> = {
  mm: say('scale-fields.millimetres'),
  cm: say('scale-fields.centimetres'),
  in: say('scale-fields.inches'),
};

export function ScaleFields(props: ScaleFieldsProps) {
  const { found, pieces, choices, onChange, allowance, onAllowance, size, onSize } = props;
  const lengthText = useLengthText();
  const [taken, setTaken] = useState<Taken>('file');
  const [known, setKnown] = useState(emptyDraft);
  const sizes = sizesOf(found);
  const longest = pieces.reduce<FoundPiece | null>(
    (best, piece) => (best && best.extentMm.alongMm >= piece.extentMm.alongMm ? best : piece),
    null,
  );
  const isSingleLine = pieces.some((piece) => !piece.hasSewLine);
  const stated = Object.entries(mmPerPatternUnit).find(([, mm]) => mm === found.statedMmPerUnit)?.[0];
  const asStated =
    found.statedMmPerUnit === null
      ? say('scale-fields.the-file-does-not-say-millimetres')
      : say('scale-fields.as-the-file-says', {
          stated: stated ? nounInSentence(unitNames[stated as PatternUnit]) : say('scale-fields.to-scale'),
        });
  const take = (next: Taken) => {
    setTaken(next);
    if (next !== 'known')
      onChange({ ...choices, mmPerUnit: next === 'file' ? null : mmPerPatternUnit[next] });
  };
  const setKnownLength = (draft: QuantityDraft) => {
    setKnown(draft);
    if (!longest || !draft.value) return;
    onChange({ ...choices, mmPerUnit: (found.mmPerUnit * draft.value) / longest.drawnAlongMm });
  };
  return (
    <>
      {longest && (
        <p className={style.overall} role="status">
          <strong>{longest.name}</strong> {say('scale-fields.is')} {lengthText(longest.extentMm.alongMm)}{' '}
          {say('scale-fields.long-and')} {lengthText(longest.extentMm.acrossMm)} {say('scale-fields.wide')}
          {longest.foldEdge ? say('scale-fields.folded') : ''}
          {say('scale-fields.is-that-right')}
        </p>
      )}
      <div className={style.pair}>
        <ChoiceField<Taken>
          label={say('scale-fields.unit-of-the-file')}
          value={taken}
          options={[
            { value: 'file', label: asStated },
            ...(Object.keys(mmPerPatternUnit) as PatternUnit[]).map((unit) => ({
              value: unit,
              label: unitNames[unit],
            })),
            { value: 'known', label: say('scale-fields.by-a-length-i-know') },
          ]}
          onChange={(next) => take(next || 'file')}
        />
        {taken === 'known' && longest && (
          <DraftField
            label={say('scale-fields.real-length-of', { longestName: longest.name })}
            quantity="length"
            draft={known}
            onChange={setKnownLength}
            aboveZero
            hint={say('scale-fields.along-the-grain-as-the-file')}
          />
        )}
        {sizes.length > 1 && (
          <ChoiceField
            label={say('common.size')}
            value={size}
            options={sizes.map((each) => ({ value: each, label: each }))}
            onChange={onSize}
          />
        )}
        {isSingleLine && (
          <>
            <ChoiceField<ReadChoices['outlineIs']>
              label={say('scale-fields.the-drawn-line-is')}
              value={choices.outlineIs}
              options={[
                { value: 'sewing line', label: say('scale-fields.the-sewing-line-add-allowance') },
                { value: 'cutting line', label: say('scale-fields.the-cutting-line-allowance-is-in') },
              ]}
              onChange={(outlineIs) => onChange({ ...choices, outlineIs: outlineIs || 'sewing line' })}
            />
            <DraftField
              label={say('common.seam-allowance')}
              quantity="length"
              draft={allowance}
              onChange={onAllowance}
              min={0}
              max={200}
              hint={say('scale-fields.all-round-usually-none-on-a', {
                lengthText: lengthText(customaryAllowanceMm),
              })}
            />
          </>
        )}
      </div>
    </>
  );
}

/** The sizes that the file tells apart. */
export function sizesOf(found: FoundPattern): string[] {
  return [...new Set(found.pieces.map((piece) => piece.size))].filter((size) => size !== '');
}
