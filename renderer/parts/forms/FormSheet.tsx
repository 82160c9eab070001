/**
 * A sheet with a form: saved by its button or Enter; what is refused stands above the button, with all that was typed.
 * Cancel throws that away; whatever else closes the sheet asks first.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { type ReactNode, useId, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { Button } from './Button.tsx';
import style from './FormSheet.module.css';
import { Problems } from '../notes/Problems.tsx';
import { Sheet } from '../layout/Sheet.tsx';

export interface FormSheetProps {
  readonly title: string;
  readonly saveLabel: string;
  readonly onClose: () => void;
  /** Saves, and gives what was refused; the sheet closes where that is nothing. */
  readonly onSave: () => Promise<readonly Problem[]>;
  /** Something was typed that would be lost; where it is not said, any change in a field counts. */
  readonly isTyped?: boolean;
  readonly children: ReactNode;
}

export function FormSheet({ title, saveLabel, onClose, onSave, isTyped, children }: FormSheetProps) {
  const formId = useId();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [isSaving, setIsSaving] = useState(false);
  const [isChanged, setIsChanged] = useState(false);

  const save = async () => {
    if (isSaving) return;
    setIsSaving(true);
    try {
      const refusals = await onSave();
      setProblems(refusals);
      if (refusals.length === 0) onClose();
    } finally {
      setIsSaving(false);
    }
  };

  return (
    <Sheet
      title={title}
      isOpen
      staysOnOutsidePress
      isTyped={isTyped ?? isChanged}
      onClose={onClose}
      footer={
        <div className={style.foot}>
          <Problems problems={problems} />
          <div className={style.actions}>
            <Button onClick={onClose}>{say('form-sheet.cancel')}</Button>
            <Button look="main" type="submit" form={formId} disabled={isSaving}>
              {saveLabel}
            </Button>
          </div>
        </div>
      }
    >
      <form
        id={formId}
        className={style.form}
        noValidate
        // A file is chosen again in a moment; what was typed is not.
        onChange={({ target }) => !isFileChoice(target) && setIsChanged(true)}
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        {children}
      </form>
    </Sheet>
  );
}

function isFileChoice(target: EventTarget): boolean {
  return target instanceof HTMLInputElement && target.type === 'file';
}
