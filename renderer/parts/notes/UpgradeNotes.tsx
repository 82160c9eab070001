/** What bringing an older file up to date had to assume, for the maker to read and to hide once read. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { UpgradeNote } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { Button } from '../forms/Button.tsx';
import { Problems } from './Problems.tsx';
import style from './UpgradeNotes.module.css';

/** Nothing where there is no note to show. */
export function UpgradeNotes({ notes }: { notes: readonly UpgradeNote[] }) {
  const { make: markSeen } = useChange('markUpgradeNotesSeen');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (notes.length === 0) return null;
  const hide = async () => {
    const done = await markSeen({});
    setProblems(done.ok ? [] : done.problems);
  };
  return (
    <section className={style.notes} aria-labelledby="upgrade-notes">
      <h2 id="upgrade-notes">{say('upgrade-notes.this-file-was-brought-up-to')}</h2>
      <p className="quiet">{say('upgrade-notes.nothing-was-lost-and-a-copy')}</p>
      <ul>
        {notes.map(({ note }) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <Problems problems={problems} />
      {notes.some(({ isSeen }) => !isSeen) && (
        <div>
          <Button onClick={() => void hide()}>{say('upgrade-notes.i-have-read-this')}</Button>
        </div>
      )}
    </section>
  );
}
