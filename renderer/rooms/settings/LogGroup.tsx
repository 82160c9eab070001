/** What failed, for the maker to look at and to send to whoever looks into it. */
import { say } from '../../../shared-core/wording/say.ts';
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
    <Group title={say('log-group.log')} about={say('log-group.when-a-step-fails-the-program')}>
      <section className={style.backups} aria-label={say('log-group.log')}>
        <ReadProblems read={read} />
        {log?.text === '' && <p className="quiet">{say('log-group.nothing-has-failed-yet')}</p>}
        {log && log.text !== '' && (
          <div className={style.head}>
            <Button aria-expanded={isShown} onClick={() => setIsShown(!isShown)}>
              {isShown ? say('log-group.hide') : say('log-group.show')}
            </Button>
            <Button onClick={() => saveFile(`bolt-and-baffle-log-${todayIso()}.txt`, 'text/plain', log.text)}>
              {say('log-group.save-a-copy')}
            </Button>
          </div>
        )}
        {log && isShown && <pre className={style.log}>{log.text}</pre>}
        {log && <code className={style.folder}>{log.file}</code>}
      </section>
    </Group>
  );
}
