/** Thread by item and colour: how much goes through needles and under them, and how many spools that is. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { threadByColour } from '../../../shared-core/requirement/thread/thread-use.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { routeHash } from '../../client/route.ts';
import { Figure } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './NeedsRoom.module.css';

const threadUnit = { unit: { metric: 'threadM', imperial: 'threadYd' }, digits: 0 } as const;

export function ThreadByColour() {
  const { input, estimate } = useCoat('input', 'estimate');
  const panels = estimate?.panels;
  const threads = useMemo(
    () => (input ? threadByColour(input.plan, slotItems(input), panels) : []),
    [input, panels],
  );
  if (!input || threads.length === 0) return null;
  return (
    <section aria-labelledby="thread" className={style.section}>
      <h2 id="thread">{say('thread-by-colour.thread-by-colour')}</h2>
      <DataTable
        rows={threads}
        keyOf={({ slotNames }) => slotNames.join()}
        columns={[
          {
            head: say('common.thread'),
            cell: ({ item }) =>
              item ? (
                <>
                  <a href={routeHash({ kind: 'stash', itemId: item.id })}>{item.name}</a>
                  {item.colour && <span className="quiet">, {item.colour}</span>}
                </>
              ) : (
                say('thread-by-colour.nothing-chosen-yet')
              ),
          },
          { head: say('common.for'), cell: ({ slotNames }) => slotNames.join(', ') },
          { head: say('common.in-all'), align: 'end', cell: ({ totalM }) => <Metres of={totalM} /> },
          {
            head: say('thread-by-colour.needles'),
            align: 'end',
            cell: ({ needleM }) => <Metres of={needleM} />,
          },
          {
            head: say('thread-by-colour.bobbins-and-loopers'),
            align: 'end',
            cell: ({ underM }) => <Metres of={underM} />,
          },
          {
            head: say('thread-by-colour.spools'),
            align: 'end',
            cell: ({ spoolM, spoolCount, coneCount }) =>
              spoolM === null ? (
                <span className="quiet small">{say('thread-by-colour.length-of-a-spool-not-known')}</span>
              ) : (
                <>
                  <span className="number">{spoolCount}</span>{' '}
                  <span className="quiet">
                    {say('common.of')} <Metres of={spoolM} />
                    {coneCount > 1 && say('thread-by-colour.cones-on-the-machine-at-once', { coneCount })}
                  </span>
                </>
              ),
          },
        ]}
      />
    </section>
  );
}

function Metres({ of }: { of: number }) {
  return <Figure quantity="threadLength" value={of} options={threadUnit} />;
}
