/** At the foot of the stash: what was done last, and a way to undo it until the next change or until it is dismissed. */
import { say } from '../../../shared-core/wording/say.ts';
import { useEffect, useRef, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { useRead } from '../../client/queries/reads.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './LastChange.module.css';
import { isUndoKey } from './undo-key.ts';

export function LastChange() {
  const read = useRead('readLastChange', {});
  const { make: undoChange, isUnderWay } = useChange('undoLastChange');
  /** What was done before this room was entered, or is dealt with, is not spoken of. */
  const [knownId, setKnownId] = useState<string | null | undefined>(undefined);
  /** The sentence of the change that was undone. */
  const [undone, setUndone] = useState<string | null>(null);
  const [refused, setRefused] = useState<{ readonly id: string; readonly problems: readonly Problem[] }>();
  const latest = read.isFresh ? (read.data?.change ?? null) : undefined;
  if (latest !== undefined && knownId === undefined) setKnownId(latest?.id ?? null);
  const change = latest && knownId !== undefined && latest.id !== knownId ? latest : null;

  const dismiss = () => {
    if (change) setKnownId(change.id);
    setUndone(null);
  };
  const undo = async () => {
    if (!change || isUnderWay) return;
    const answer = await undoChange({ changeId: change.id });
    if (!answer.ok) return setRefused({ id: change.id, problems: answer.problems });
    setKnownId(null);
    setUndone(answer.value.said);
  };

  const latestUndo = useRef(undo);
  latestUndo.current = undo;
  const canUndo = change !== null;
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
    <div className={style.foot} role="status" aria-label={say('last-change.what-was-done-last')}>
      {(change || undone !== null) && (
        <div className={style.line}>
          <p className={style.said}>{change ? `${change.said}.` : say('last-change.undone', { undone })}</p>
          <div className={style.actions}>
            {canUndo && (
              <Button look="quiet" aria-keyshortcuts="Control+Z Meta+Z" onClick={() => void undo()}>
                {say('common.undo')}
              </Button>
            )}
            <Button look="quiet" onClick={dismiss}>
              {say('last-change.dismiss')}
            </Button>
          </div>
          {change && refused?.id === change.id && <Problems problems={refused.problems} />}
        </div>
      )}
    </div>
  );
}
