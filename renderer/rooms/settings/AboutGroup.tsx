/** What runs, where its files lie, and whether there is a later version: asked for at a press of the button alone. */
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
    <Group
      title="About"
      about="Bolt & Baffle works on this machine alone and asks nothing of any network by itself."
    >
      <ReadProblems read={read} />
      {program && (
        <dl className={style.facts}>
          <dt>Version</dt>
          <dd>
            {program.version}
            <span className={style.runsOn}>
              {program.runsOn.map(({ name, version }) => `${name} ${version}`).join(', ')}
            </span>
          </dd>
          <dt>Data folder</dt>
          <dd className={style.path}>{program.folder}</dd>
          <dt>Log of failures</dt>
          <dd className={style.path}>{program.logFile}</dd>
          <dt>Later versions</dt>
          <dd>
            {program.newsAddress === null ? (
              'This build knows no place to ask.'
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
    setSaid('Asking.');
    const answer = await ask(workshop, 'askForNews', {});
    setProblems(answer.ok ? [] : answer.problems);
    setNews(answer.ok ? answer.value.news : null);
    setSaid(answer.ok && answer.value.news === null ? 'You have the latest.' : '');
  };
  return (
    <div className={style.news}>
      <Button onClick={() => void askNow()}>Ask now</Button>
      <p role="status">{said}</p>
      <p className={style.from}>Asks {from} for one small file, and sends nothing of yours.</p>
      <Problems problems={problems} />
      {news && (
        <p>
          Version {news.version} came out on {news.date}. {news.words}
        </p>
      )}
    </div>
  );
}
