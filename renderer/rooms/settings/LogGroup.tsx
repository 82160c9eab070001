/** What failed, for the maker to look at and to send to whoever looks into it. */
import { useState } from 'react';
import { useReadIn } from '../../client/queries/reads.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { todayIso } from '../../parts/figures/calendar.ts';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { saveFile } from '../../parts/tables/save-file.ts';
import style from './BackupsGroup.module.css';
import { Group } from './Group.tsx';

export function LogGroup() {
  const read = useReadIn('own', 'readFailureLog', {});
  const log = read.data;
  const [isShown, setIsShown] = useState(false);

  return (
    <Group
      title="Log"
      about="When a step fails, the program writes down which, when and where in the program. No names, measures, amounts or prices. Send it to whoever looks into the fault."
    >
      <section className={style.backups} aria-label="Log">
        <ReadProblems read={read} />
        {log?.text === '' && <p className="quiet">Nothing has failed yet.</p>}
        {log && log.text !== '' && (
          <div className={style.head}>
            <Button aria-expanded={isShown} onClick={() => setIsShown(!isShown)}>
              {isShown ? 'Hide' : 'Show'}
            </Button>
            <Button onClick={() => saveFile(`bolt-and-baffle-log-${todayIso()}.txt`, 'text/plain', log.text)}>
              Save a copy
            </Button>
          </div>
        )}
        {log && isShown && <pre className={style.log}>{log.text}</pre>}
        {log && <code className={style.folder}>{log.file}</code>}
      </section>
    </Group>
  );
}
