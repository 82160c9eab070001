/** Asked before a sheet closes over what was typed in it. To go on typing is what Escape and Enter answer. */
import { say } from '../../../shared-core/wording/say.ts';
import { AlertDialog } from '@base-ui/react/alert-dialog';
import { useRef } from 'react';
import { Button } from '../forms/Button.tsx';
import style from './Sheet.module.css';

export interface DiscardQuestionProps {
  readonly isOpen: boolean;
  readonly onKeep: () => void;
  readonly onDiscard: () => void;
}

export function DiscardQuestion({ isOpen, onKeep, onDiscard }: DiscardQuestionProps) {
  const keep = useRef<HTMLButtonElement>(null);
  return (
    <AlertDialog.Root open={isOpen} onOpenChange={(next) => !next && onKeep()}>
      <AlertDialog.Portal>
        <AlertDialog.Backdrop forceRender className={style.backdrop} />
        <AlertDialog.Popup className={style.question} initialFocus={keep}>
          <AlertDialog.Title className={style.title}>
            {say('discard-question.throw-away-what-you-typed')}
          </AlertDialog.Title>
          <AlertDialog.Description className="quiet">
            {say('discard-question.it-has-not-been-saved')}
          </AlertDialog.Description>
          <div className={style.answers}>
            <Button onClick={onDiscard}>{say('discard-question.throw-it-away')}</Button>
            <Button ref={keep} look="main" onClick={onKeep}>
              {say('discard-question.go-on-typing')}
            </Button>
          </div>
        </AlertDialog.Popup>
      </AlertDialog.Portal>
    </AlertDialog.Root>
  );
}
