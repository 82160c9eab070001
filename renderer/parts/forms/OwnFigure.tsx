/** A maker's own figure in the place of a computed one: put in, and taken away again. The computed one stays in sight. */
import { say } from '../../../shared-core/wording/say.ts';
import { type ReactNode, useId, useState } from 'react';
import { type Result, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import { Button } from './Button.tsx';
import { DraftField, emptyDraft } from './DraftField.tsx';
import style from './OwnFigure.module.css';

export interface OwnFigureProps {
  /** What is measured: "Weight of one coat". */
  readonly label: string;
  readonly quantity: QuantityKind;
  readonly unit?: FieldUnit;
  readonly hint?: string;
  /** The words of the button that opens the field. */
  readonly ask: string;
  readonly isOwn: boolean;
  /** The computed figure, seen while the maker's own stands; null where there is none. */
  readonly computed: ReactNode | null;
  readonly onSet: (value: number | null) => Promise<Result<unknown>>;
}

export function OwnFigure(props: OwnFigureProps) {
  const { label, ask, isOwn, computed, onSet } = props;
  const [isOpen, setIsOpen] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  if (isOpen) return <OwnFigureForm {...props} onClose={() => setIsOpen(false)} />;
  if (!isOwn) {
    return (
      <Button look="quiet" aria-label={`${ask}: ${label}`} onClick={() => setIsOpen(true)}>
        {ask}
      </Button>
    );
  }
  const goBack = async () => {
    const answer = await onSet(null);
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  return (
    <div className={style.own}>
      <span className="quiet small">
        {say('own-figure.your-own-figure')}
        {computed !== null && (
          <>
            {' '}
            {say('own-figure.computed')} {computed}.
          </>
        )}
      </span>
      <Button
        look="quiet"
        aria-label={say('own-figure.go-back-to-the-computed-one-2', { label })}
        onClick={() => void goBack()}
      >
        {say('own-figure.go-back-to-the-computed-one')}
      </Button>
      {problem && (
        <p role="alert" className={style.problem}>
          {problem}
        </p>
      )}
    </div>
  );
}

function OwnFigureForm({
  label,
  quantity,
  unit,
  hint,
  onSet,
  onClose,
}: OwnFigureProps & { onClose: () => void }) {
  const [draft, setDraft] = useState(emptyDraft);
  const [problem, setProblem] = useState<string | null>(null);
  const problemId = useId();
  const save = async () => {
    if (draft.misread !== null) return setProblem(draft.misread);
    if (draft.value === null) return setProblem(say('own-figure.is-missing', { label }));
    const answer = await onSet(draft.value);
    if (answer.ok) onClose();
    else setProblem(answer.problems.map(problemSentence).join(' '));
  };
  return (
    <form
      className={style.form}
      noValidate
      aria-describedby={problem ? problemId : undefined}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <DraftField
        label={label}
        quantity={quantity}
        draft={draft}
        onChange={setDraft}
        {...(unit === undefined ? {} : { unit })}
        {...(hint === undefined ? {} : { hint })}
      />
      <div className={style.actions}>
        <Button look="main" type="submit">
          {say('own-figure.use-this')}
        </Button>
        <Button onClick={onClose}>{say('own-figure.cancel')}</Button>
      </div>
      {problem && problem !== draft.misread && (
        <p id={problemId} role="alert" className={style.problem}>
          {problem}
        </p>
      )}
    </form>
  );
}
