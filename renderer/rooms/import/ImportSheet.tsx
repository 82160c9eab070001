/**
 * Pieces from a pattern file: what was found is drawn with its size in the maker's own units before anything is saved,
 * so that a wrong unit is seen; then one save brings all ticked pieces in.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo, useState } from 'react';
import { bringInSizes } from '../../../shared-core/exchange/pattern/bring-in-sizes.ts';
import { patternFormats } from '../../../shared-core/exchange/pattern/formats.ts';
import {
  type FoundPattern,
  type ReadChoices,
  defaultChoices,
  defaultLimits,
} from '../../../shared-core/exchange/pattern/pattern.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { listed } from '../../../shared-core/plan/edits/edited.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { emptyDraft, misreadProblems } from '../../parts/forms/DraftField.tsx';
import { type ChosenFile, FileChoice } from '../../parts/forms/FileChoice.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { type BroughtDraft, draftsOf } from './brought-drafts.ts';
import style from './import.module.css';
import { usePatternReading } from './pattern-reading.ts';
import { PieceRow } from './PieceRow.tsx';
import { ScaleFields, sizesOf } from './ScaleFields.tsx';

export function ImportSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [choices, setChoices] = useState<ReadChoices>(defaultChoices);
  const [allowance, setAllowance] = useState(emptyDraft);
  const [size, setSize] = useState('');
  const [isEverySize, setIsEverySize] = useState(false);
  const [drafts, setDrafts] = useState<readonly BroughtDraft[]>([]);
  /** The file whose pieces the drafts are of. */
  const [drafted, setDrafted] = useState<ChosenFile | null>(null);
  const allowanceMm = allowance.value ?? 0;
  const asked = useMemo(() => ({ ...choices, allowanceMm }), [choices, allowanceMm]);
  const reading = usePatternReading(file, asked);
  if (!input) return null;
  const { read } = reading;
  if (read && file && drafted !== file) {
    const sizes = read.found ? sizesOf(read.found) : [];
    setDrafted(file);
    setSize(sizes.length > 1 ? firstSize(sizes, input.plan, read.found) : '');
    setDrafts(read.found ? draftsOf(input.plan, read.found.pieces) : []);
  }
  const found = drafted === file ? (read?.found ?? null) : null;
  // A piece without a size belongs to all.
  const piecesOf = (wanted: string) =>
    found?.pieces.filter((piece) => wanted === '' || piece.size === '' || piece.size === wanted) ?? [];
  const pieces = piecesOf(size);
  const otherSizes = found && size !== '' ? sizesOf(found).filter((each) => each !== size) : [];

  const choose = (chosen: ChosenFile) => {
    setFile(chosen);
    setChoices(defaultChoices);
    setIsEverySize(false);
  };
  const save = async (): Promise<readonly Problem[]> => {
    if (reading.isReading)
      return [
        {
          where: say('common.the-file'),
          what: say('import-sheet.is-still-being-read'),
          fix: say('import-sheet.wait-a-moment-and-try-again'),
        },
      ];
    if (!found)
      return [
        {
          where: say('import-sheet.a-file'),
          what: say('import-sheet.is-not-chosen'),
          fix: say('import-sheet.choose-a-dxf-or-svg-file'),
        },
      ];
    const misread = misreadProblems(say('import-sheet.the-pattern'), [allowance]);
    if (misread.length > 0) return misread;
    const brought = pieces.flatMap((piece) => {
      const draft = drafts.find(({ key }) => key === piece.key);
      return draft?.isTicked ? [{ found: piece, ...draft }] : [];
    });
    const further = isEverySize ? otherSizes.map((each) => ({ size: each, pieces: piecesOf(each) })) : [];
    const answer = await edit((plan) => bringInSizes(plan, size, brought, further));
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet
      title={say('import-sheet.bring-in-pieces')}
      saveLabel={say('import-sheet.bring-them-in')}
      onClose={onClose}
      onSave={save}
    >
      <FileChoice
        label={say('import-sheet.pattern-file')}
        hint={say('import-sheet.with-each-piece-as-a-closed', {
          patternFormats: patternFormats.map(({ name }) => name).join(say('import-sheet.or')),
        })}
        accept={patternFormats.map(({ ending }) => ending).join(',')}
        chosen={file}
        maxBytes={defaultLimits.byteCount}
        onChoose={choose}
      />
      {reading.isSlow && (
        <div className={style.reading}>
          <p role="status">{say('import-sheet.reading-the-pattern')}</p>
          <Button onClick={reading.stop}>{say('import-sheet.stop-reading')}</Button>
        </div>
      )}
      {read && <Problems problems={read.problems} />}
      {found && (
        <>
          <ScaleFields
            key={`${file?.name} ${file?.bytes.length}`}
            found={found}
            pieces={pieces}
            choices={choices}
            onChange={setChoices}
            allowance={allowance}
            onAllowance={setAllowance}
            size={size}
            onSize={setSize}
          />
          {otherSizes.length > 0 && (
            <FlagField
              label={say('import-sheet.bring-its-other-sizes-too')}
              hint={say('import-sheet.kept-beside-this-one-until-you', { otherSizes: listed(otherSizes) })}
              value={isEverySize}
              onChange={setIsEverySize}
            />
          )}
          <ul className={style.pieces} aria-label={say('import-sheet.pieces-found')}>
            {pieces.map((piece) => {
              const draft = drafts.find(({ key }) => key === piece.key);
              return (
                draft && (
                  <PieceRow
                    key={piece.key}
                    piece={piece}
                    plan={input.plan}
                    draft={draft}
                    onChange={(next) =>
                      setDrafts(drafts.map((each) => (each.key === next.key ? next : each)))
                    }
                  />
                )
              );
            })}
          </ul>
          {found.notes.length > 0 && (
            <details className={style.notes}>
              <summary>{say('import-sheet.what-does-not-come-with-it')}</summary>
              <ul>
                {[...new Set(found.notes)].map((note) => (
                  <li key={note}>{note}</li>
                ))}
              </ul>
            </details>
          )}
        </>
      )}
    </FormSheet>
  );
}

/** The plan's own size where the file has it, else its sample size, else its first. */
function firstSize(sizes: readonly string[], plan: CoatPlan, found: FoundPattern | null): string {
  return [plan.size, found?.sampleSize ?? ''].find((each) => sizes.includes(each)) ?? sizes[0] ?? '';
}
