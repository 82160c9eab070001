/** Opens a workshop, then shows the room that the address names. */
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Workshop, WorkshopFacts } from '../../shared-core/contract/contract.ts';
import type { Problem } from '../../shared-core/measure/problem.ts';
import { call } from '../client/api.ts';
import { type OpenWorkshop, WorkshopContext } from '../client/workshop.ts';
import { Problems } from '../parts/Problems.tsx';
import { Frame } from './Frame.tsx';
import { goTo, type Route, readRoute } from '../client/route.ts';

const openWorkshopKey = 'bolt-and-baffle.workshop';

function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(window.location.hash));
  useEffect(() => {
    const follow = () => setRoute(readRoute(window.location.hash));
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, []);
  return route;
}

export function App() {
  const route = useRoute();
  const [facts, setFacts] = useState<WorkshopFacts | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const read = useCallback(async (workshop: Workshop) => {
    const answer = await call('workshopFacts', workshop, {});
    if (!answer.ok) return setProblems(answer.problems);
    setProblems([]);
    setFacts(answer.value);
  }, []);

  useEffect(() => {
    void read(window.sessionStorage.getItem(openWorkshopKey) === 'demo' ? 'demo' : 'own');
  }, [read]);

  const opened = useMemo<OpenWorkshop | null>(
    () =>
      facts && {
        workshop: facts.workshop,
        facts,
        refresh: () => read(facts.workshop),
        open: async (workshop) => {
          window.sessionStorage.setItem(openWorkshopKey, workshop);
          await read(workshop);
          if (workshop === 'own') goTo({ kind: 'welcome' });
        },
      },
    [facts, read],
  );

  if (problems.length > 0) {
    return (
      <main style={{ padding: 'var(--space-7)', maxWidth: 'var(--measure)' }}>
        <Problems problems={problems} />
      </main>
    );
  }
  if (!opened) return null;
  return (
    <WorkshopContext value={opened}>
      <Frame key={opened.workshop} route={route} />
    </WorkshopContext>
  );
}
