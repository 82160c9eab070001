/** Opens a workshop, then shows the room that the address names. */
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { Workshop, WorkshopFacts } from '../../shared-core/contract/contract.ts';
import type { Problem } from '../../shared-core/measure/problem.ts';
import { call } from '../client/api.ts';
import { withFirstUnits } from '../client/new-workshop-units.ts';
import { type OpenWorkshop, WorkshopContext } from '../client/workshop.ts';
import { Problems } from '../parts/notes/Problems.tsx';
import { Frame } from './Frame.tsx';
import { ShutWorkshop } from './ShutWorkshop.tsx';
import { goTo, type Route, readRoute } from '../client/route.ts';

const openWorkshopKey = 'bolt-and-baffle.workshop';

function useRoute(): Route {
  const hash = useSyncExternalStore(onHash, () => window.location.hash);
  return useMemo(() => readRoute(hash), [hash]);
}

function onHash(follow: () => void): () => void {
  window.addEventListener('hashchange', follow);
  return () => window.removeEventListener('hashchange', follow);
}

/** Why the facts of a workshop could not be read, and how they are asked for once more. */
interface Refusal {
  readonly workshop: Workshop;
  readonly problems: readonly Problem[];
  readonly askAgain: () => void;
}

export function App() {
  const route = useRoute();
  const [facts, setFacts] = useState<WorkshopFacts | null>(null);
  const [refusal, setRefusal] = useState<Refusal | null>(null);

  const read = useCallback(async (workshop: Workshop, onRead?: () => void): Promise<void> => {
    const answer = await call('workshopFacts', workshop, {});
    if (!answer.ok) {
      return setRefusal({
        workshop,
        problems: answer.problems,
        askAgain: () => void read(workshop, onRead),
      });
    }
    setRefusal(null);
    onRead?.();
    setFacts(await withFirstUnits(answer.value));
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
        open: (workshop, first) =>
          read(workshop, () => {
            window.sessionStorage.setItem(openWorkshopKey, workshop);
            goTo(first);
          }),
      },
    [facts, read],
  );

  if (!opened) {
    return (
      refusal && (
        <ShutWorkshop
          workshop={refusal.workshop}
          problems={refusal.problems}
          onTryAgain={refusal.askAgain}
          onOwn={() => void read('own', () => window.sessionStorage.setItem(openWorkshopKey, 'own'))}
          onBroughtBack={(now) => {
            setRefusal(null);
            setFacts(now);
          }}
        />
      )
    );
  }
  // What was read before stays in use: one refusal takes no room away.
  const notice = refusal && <Problems problems={refusal.problems} onTryAgain={refusal.askAgain} />;
  return (
    <WorkshopContext value={opened}>
      <Frame key={opened.workshop} route={route} notice={notice} />
    </WorkshopContext>
  );
}
