/** At the foot of the stash: what was done last, and a way to undo it until the next change or until it is dismissed. */
import { useEffect, useRef, useState } from 'react';
import type { LastChange as Change } from '../../../shared-core/contract/change-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './LastChange.module.css';
import { isUndoKey } from './undo-key.ts';

type Shown =
  | { readonly kind: 'done'; readonly change: Change; readonly problems: readonly Problem[] }
  | { readonly kind: 'undone'; readonly said: string };

export interface LastChangeProps {
  /** Another number after each change in this room. */
  readonly version: number;
  /** Called once the change is undone: everything is to be read again. */
  readonly onUndone: () => Promise<void>;
}

export function LastChange({ version, onUndone }: LastChangeProps) {
  const { workshop } = useWorkshop();
  const [shown, setShown] = useState<Shown | null>(null);
  /** What was done before this room was entered, or is dealt with, is not spoken of. */
  const known = useRef<string | null | undefined>(undefined);
  const isUndoing = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is what it answers to
  useEffect(() => {
    let isCurrent = true;
    void call('readLastChange', workshop, {}).then((answer) => {
      if (!isCurrent || !answer.ok) return;
      const { change } = answer.value;
      if (known.current === undefined) known.current = change?.id ?? null;
      else if (change && change.id !== known.current) setShown({ kind: 'done', change, problems: [] });
    });
    return () => {
      isCurrent = false;
    };
  }, [workshop, version]);

  const dismiss = () => {
    if (shown?.kind === 'done') known.current = shown.change.id;
    setShown(null);
  };
  const undo = async () => {
    if (shown?.kind !== 'done' || isUndoing.current) return;
    isUndoing.current = true;
    const answer = await call('undoLastChange', workshop, { changeId: shown.change.id });
    isUndoing.current = false;
    if (!answer.ok) return setShown({ ...shown, problems: answer.problems });
    known.current = null;
    setShown({ kind: 'undone', said: answer.value.said });
    await onUndone();
  };

  const latestUndo = useRef(undo);
  latestUndo.current = undo;
  const canUndo = shown?.kind === 'done';
  useEffect(() => {
    if (!canUndo) return;
    const press = (event: KeyboardEvent) => {
      if (!isUndoKey(event, document)) return;
      event.preventDefault();
      void latestUndo.current();
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, [canUndo]);

  return (
    <div className={style.foot} role="status" aria-label="What was done last">
      {shown && (
        <div className={style.line}>
          <p className={style.said}>
            {shown.kind === 'done' ? `${shown.change.said}.` : `Undone: ${shown.said}.`}
          </p>
          <div className={style.actions}>
            {canUndo && (
              <Button look="quiet" aria-keyshortcuts="Control+Z Meta+Z" onClick={() => void undo()}>
                Undo
              </Button>
            )}
            <Button look="quiet" onClick={dismiss}>
              Dismiss
            </Button>
          </div>
          {shown.kind === 'done' && <Problems problems={shown.problems} />}
        </div>
      )}
    </div>
  );
}
