/** What bringing an older file up to date had to assume, for the maker to read and to hide once read. */
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
      <h2 id="upgrade-notes">This file was brought up to date</h2>
      <p className="quiet">
        Nothing was lost, and a copy from before lies beside it. An earlier version had booked some things in
        a way that cannot be read exactly; this is what was assumed:
      </p>
      <ul>
        {notes.map(({ note }) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <Problems problems={problems} />
      {notes.some(({ isSeen }) => !isSeen) && (
        <div>
          <Button onClick={() => void hide()}>I have read this</Button>
        </div>
      )}
    </section>
  );
}
