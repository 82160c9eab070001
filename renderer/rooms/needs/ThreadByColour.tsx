/** Thread by item and colour: how much goes through needles and under them, and how many spools that is. */
import { useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { threadByColour } from '../../../shared-core/requirement/thread/thread-use.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { routeHash } from '../../client/route.ts';
import { Figure } from '../../parts/figures/Figure.tsx';
import table from '../../parts/tables/table.module.css';
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
      <h2 id="thread">Thread by colour</h2>
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">Thread</th>
            <th scope="col">For</th>
            <th scope="col" className={table.amount}>
              In all
            </th>
            <th scope="col" className={table.amount}>
              Needles
            </th>
            <th scope="col" className={table.amount}>
              Bobbins and loopers
            </th>
            <th scope="col" className={table.amount}>
              Spools
            </th>
          </tr>
        </thead>
        <tbody>
          {threads.map((thread) => (
            <tr key={thread.slotNames.join()}>
              <td>
                {thread.item ? (
                  <>
                    <a href={routeHash({ kind: 'stash', itemId: thread.item.id })}>{thread.item.name}</a>
                    {thread.item.colour && <span className="quiet">, {thread.item.colour}</span>}
                  </>
                ) : (
                  'nothing chosen yet'
                )}
              </td>
              <td>{thread.slotNames.join(', ')}</td>
              {[thread.totalM, thread.needleM, thread.underM].map((metres, index) => (
                // Three figures in a fixed order.
                // biome-ignore lint/suspicious/noArrayIndexKey: the columns never move
                <td key={index} className={table.amount}>
                  <Figure quantity="threadLength" value={metres} options={threadUnit} />
                </td>
              ))}
              <td className={table.amount}>
                {thread.spoolM === null ? (
                  <span className="quiet small">length of a spool not known</span>
                ) : (
                  <>
                    <span className="number">{thread.spoolCount}</span>{' '}
                    <span className="quiet">
                      of <Figure quantity="threadLength" value={thread.spoolM} options={threadUnit} />
                      {thread.coneCount > 1 && `; ${thread.coneCount} cones on the machine at once`}
                    </span>
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
