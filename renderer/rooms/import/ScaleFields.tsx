/** How the file is to be taken: its unit or a length that the maker knows, its size, and the allowance where it has one line alone. */
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
  mm: 'Millimetres',
  cm: 'Centimetres',
  in: 'Inches',
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
      ? 'The file does not say (millimetres)'
      : `As the file says: ${stated ? unitNames[stated as PatternUnit].toLowerCase() : 'to scale'}`;
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
          <strong>{longest.name}</strong> is {lengthText(longest.extentMm.alongMm)} long and{' '}
          {lengthText(longest.extentMm.acrossMm)} wide
          {longest.foldEdge ? ', folded' : ''}. Is that right?
        </p>
      )}
      <div className={style.pair}>
        <ChoiceField<Taken>
          label="Unit of the file"
          value={taken}
          options={[
            { value: 'file', label: asStated },
            ...(Object.keys(mmPerPatternUnit) as PatternUnit[]).map((unit) => ({
              value: unit,
              label: unitNames[unit],
            })),
            { value: 'known', label: 'By a length I know' },
          ]}
          onChange={(next) => take(next || 'file')}
        />
        {taken === 'known' && longest && (
          <DraftField
            label={`Real length of ${longest.name}`}
            quantity="length"
            draft={known}
            onChange={setKnownLength}
            aboveZero
            hint="along the grain, as the file draws it"
          />
        )}
        {sizes.length > 1 && (
          <ChoiceField
            label="Size"
            value={size}
            options={sizes.map((each) => ({ value: each, label: each }))}
            onChange={onSize}
          />
        )}
        {isSingleLine && (
          <>
            <ChoiceField<ReadChoices['outlineIs']>
              label="The drawn line is"
              value={choices.outlineIs}
              options={[
                { value: 'sewing line', label: 'the sewing line: add allowance' },
                { value: 'cutting line', label: 'the cutting line: allowance is in it' },
              ]}
              onChange={(outlineIs) => onChange({ ...choices, outlineIs: outlineIs || 'sewing line' })}
            />
            <DraftField
              label="Seam allowance"
              quantity="length"
              draft={allowance}
              onChange={onAllowance}
              min={0}
              max={200}
              hint={`all round, usually ${lengthText(customaryAllowanceMm)}; none on a fold`}
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
