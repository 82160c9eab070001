import { say } from '../../../shared-core/wording/say.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { RoomHead } from './RoomHead.tsx';
import { Waiting } from './Waiting.tsx';

/** A room whose figures come with the estimate, until that is there. lead: what is being done meanwhile. */
export function RoomAwaited({ title, lead }: { title: string; lead: string }) {
  const { phase } = useCoat('phase');
  const isUnderWay = phase !== 'failed' && phase !== 'stopped';
  return (
    <>
      <RoomHead title={title} {...(isUnderWay && { lead })} />
      <EstimateAwaited />
    </>
  );
}

/** Stands where figures of an estimate will stand. The way on, where none is under way, is at the head of the coat. */
export function EstimateAwaited() {
  const { phase } = useCoat('phase');
  if (phase === 'failed')
    return <p className="quiet">{say('estimate-awaited.there-are-no-figures-to-show')}</p>;
  if (phase === 'stopped')
    return <p className="quiet">{say('estimate-awaited.there-are-no-figures-to-show-2')}</p>;
  return <Waiting />;
}
