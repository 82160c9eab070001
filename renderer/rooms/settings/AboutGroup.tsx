/** What runs, where its files lie, and whether there is a later version: asked for at a press of the button alone. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { ReleaseNews } from '../../../shared-core/contract/program-calls.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { ask, useRead } from '../../client/queries/reads.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import style from './AboutGroup.module.css';
import { Group } from './Group.tsx';

export function AboutGroup() {
  const read = useRead('programFacts', {});
  const program = read.data;
  return (
    <Group title={say('about-group.about')} about={say('about-group.bolt-baffle-works-on-this-machine')}>
      <ReadProblems read={read} />
      {program && (
        <dl className={style.facts}>
          <dt>{say('about-group.version')}</dt>
          <dd>
            {program.version}
            <span className={style.runsOn}>
              {program.runsOn.map(({ name, version }) => `${name} ${version}`).join(', ')}
            </span>
          </dd>
          <dt>{say('about-group.data-folder')}</dt>
          <dd className={style.path}>{program.folder}</dd>
          <dt>{say('about-group.log-of-failures')}</dt>
          <dd className={style.path}>{program.logFile}</dd>
          <dt>{say('about-group.later-versions')}</dt>
          <dd>
            {program.newsAddress === null ? (
              say('about-group.this-build-knows-no-place-to')
            ) : (
              <News from={program.newsAddress} />
            )}
          </dd>
        </dl>
      )}
    </Group>
  );
}

function News({ from }: { from: string }) {
  const { workshop } = useWorkshop();
  const [news, setNews] = useState<ReleaseNews | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const askNow = async () => {
    setSaid(say('about-group.asking'));
    const answer = await ask(workshop, 'askForNews', {});
    setProblems(answer.ok ? [] : answer.problems);
    setNews(answer.ok ? answer.value.news : null);
    setSaid(answer.ok && answer.value.news === null ? say('about-group.you-have-the-latest') : '');
  };
  return (
    <div className={style.news}>
      <Button onClick={() => void askNow()}>{say('about-group.ask-now')}</Button>
      <p role="status">{said}</p>
      <p className={style.from}>{say('about-group.asks-for-one-small-file-and', { from })}</p>
      <Problems problems={problems} />
      {news && (
        <p>
          {say('about-group.version-came-out-on', {
            version: news.version,
            date: news.date,
            words: news.words,
          })}
        </p>
      )}
    </div>
  );
}
