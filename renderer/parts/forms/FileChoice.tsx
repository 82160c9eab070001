/** One file from the maker's disk, read into memory and nowhere else. */
import { say } from '../../../shared-core/wording/say.ts';
import { useId, useState } from 'react';
import field from './Field.module.css';
import style from './FileChoice.module.css';

export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface FileChoiceProps {
  readonly label: string;
  readonly hint: string;
  readonly accept: string;
  readonly chosen: ChosenFile | null;
  readonly maxBytes: number;
  readonly onChoose: (file: ChosenFile) => void;
}

export function FileChoice({ label, hint, accept, chosen, maxBytes, onChoose }: FileChoiceProps) {
  const inputId = useId();
  const [problem, setProblem] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    // A little beyond the limit is enough to be refused by it; the rest of a huge file stays on the disk.
    try {
      const bytes = new Uint8Array(await file.slice(0, maxBytes + 1).arrayBuffer());
      setProblem(null);
      onChoose({ name: file.name, bytes });
    } catch {
      setProblem(say('file-choice.cannot-be-read-choose-it-again', { fileName: file.name }));
    }
  };
  return (
    <div className={field.field}>
      <label className={field.label} htmlFor={inputId}>
        {label}
      </label>
      <input
        id={inputId}
        className={style.file}
        type="file"
        accept={accept}
        aria-describedby={`${inputId}-note`}
        onChange={(event) => {
          void take(event.target.files?.[0]);
          // The same file may be chosen again after it was mended.
          event.target.value = '';
        }}
      />
      <p
        id={`${inputId}-note`}
        className={problem ? field.problem : field.hint}
        role={problem ? 'alert' : undefined}
      >
        {problem ?? (chosen ? chosen.name : hint)}
      </p>
    </div>
  );
}
