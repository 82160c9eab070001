import { useCoat } from '../client/coat-context.ts';
import { Waiting } from './Waiting.tsx';

/** Stands where the figures of an estimate will stand. The way on, where none is under way, is at the head of the coat. */
export function EstimateAwaited() {
  const { phase } = useCoat();
  if (phase === 'failed') return <p className="quiet">There are no figures to show until that is mended.</p>;
  if (phase === 'stopped') return <p className="quiet">There are no figures to show until the lays go on.</p>;
  return <Waiting />;
}
