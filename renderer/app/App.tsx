/** Opens a workshop, then shows the room that the address names. */
import { useCallback, useMemo, useState } from 'react';
import type { Workshop } from '../../shared-core/contract/contract.ts';
import type { Problem } from '../../shared-core/measure/problem.ts';
import { goTo, type Route, useRoute } from '../client/route.ts';
import { type OpenWorkshop, WorkshopContext } from '../client/workshop.ts';
import { readFacts, useFacts } from '../client/workshop-facts.ts';
import { Problems } from '../parts/notes/Problems.tsx';
import { ReadProblems } from '../parts/notes/ReadProblems.tsx';
import { Frame } from './Frame.tsx';
import { ShutWorkshop } from './ShutWorkshop.tsx';

const openWorkshopKey = 'bolt-and-baffle.workshop';

/** Why another workshop could not be opened, and how that is tried once more. */
interface Refused {
  readonly problems: readonly Problem[];
  readonly openAgain: () => void;
}

export function App() {
  const route = useRoute();
  const [workshop, setWorkshop] = useState<Workshop>(() =>
    window.sessionStorage.getItem(openWorkshopKey) === 'demo' ? 'demo' : 'own',
  );
  const read = useFacts(workshop);
  const [refused, setRefused] = useState<Refused | null>(null);

  const become = useCallback((next: Workshop) => {
    window.sessionStorage.setItem(openWorkshopKey, next);
    setWorkshop(next);
  }, []);
  const open = useCallback(
    async (next: Workshop, first: Route): Promise<void> => {
      const answer = await readFacts(next);
      if (!answer.ok)
        return setRefused({ problems: answer.problems, openAgain: () => void open(next, first) });
      setRefused(null);
      become(next);
      goTo(first);
    },
    [become],
  );

  const facts = read.data;
  const opened = useMemo<OpenWorkshop | null>(
    () => (facts ? { workshop: facts.workshop, facts, open } : null),
    [facts, open],
  );

  if (!opened) {
    return (
      read.problems.length > 0 && (
        <ShutWorkshop
          workshop={workshop}
          problems={read.problems}
          onTryAgain={read.again}
          onOwn={() => become('own')}
        />
      )
    );
  }
  // What was read before stays in use: one refusal takes no room away.
  const notice = refused ? (
    <Problems problems={refused.problems} onTryAgain={refused.openAgain} />
  ) : (
    read.problems.length > 0 && <ReadProblems read={read} />
  );
  return (
    <WorkshopContext value={opened}>
      <Frame key={opened.workshop} route={route} notice={notice} />
    </WorkshopContext>
  );
}
