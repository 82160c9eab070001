/** Materials that shrink: washed before they are cut and so needed longer, or cut larger for a wash to come. */
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { Prewash } from '../../../shared-core/requirement/law/care.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { finishedOf } from '../../client/coat/finished-coat.ts';
import { routeHash } from '../../client/route.ts';
import { Figure } from '../../parts/figures/Figure.tsx';
import table from '../../parts/tables/table.module.css';
import style from './NeedsRoom.module.css';

export function WashFirst() {
  const { input } = useCoat('input');
  if (!input) return null;
  const { prewash, conflicts } = finishedOf(input).care;
  const mixed = conflicts.find(({ kind }) => kind === 'mixed shrinkage');
  if (prewash.length === 0) return null;
  return (
    <section aria-labelledby="wash" className={style.section}>
      <h2 id="wash">Wash before cutting</h2>
      <p className={style.words}>
        As hot as the coat will ever be washed. What is needed above is longer by need / (1 − shrinkage), so
        that enough is left; it is laid on the width that is left. The{' '}
        <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>plan</a> lets you cut a
        slot unwashed.
      </p>
      {mixed && (
        <p className={style.care}>
          {sentenceCase(mixed.says)} {mixed.fix}
        </p>
      )}
      <table className={`${table.table} ${style.narrow}`}>
        <thead>
          <tr>
            <th scope="col">Slot</th>
            <th scope="col" className={table.amount}>
              Shrinks along
            </th>
            <th scope="col" className={table.amount}>
              Shrinks across
            </th>
            <th scope="col" className={table.amount}>
              Needed longer by
            </th>
            <th scope="col">Washed</th>
            <th scope="col">
              <span className="only-read-aloud">Its item</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {prewash.map((each) => (
            <tr key={each.slotId}>
              <td>{sentenceCase(each.slotName)}</td>
              <Shrunk wash={each} direction="along" />
              <Shrunk wash={each} direction="across" />
              <td className={table.amount}>
                <Figure quantity="ratio" value={1 / (1 - each.alongRatio) - 1} options={{ digits: 1 }} />
              </td>
              <td>{each.isBeforeCutting ? 'before cutting' : 'in the coat'}</td>
              <td>
                <a
                  href={routeHash({
                    kind: 'stash',
                    itemId: input.plan.slots.find(({ id }) => id === each.slotId)?.itemId ?? null,
                  })}
                >
                  Put in what you measured
                </a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Shrunk({ wash, direction }: { wash: Prewash; direction: 'along' | 'across' }) {
  return (
    <td className={table.amount}>
      <Figure
        quantity="ratio"
        value={direction === 'along' ? wash.alongRatio : wash.acrossRatio}
        options={{ digits: 1 }}
      />
      {wash.assumed === direction && (
        <span className="quiet small">
          {' '}
          taken as {direction === 'along' ? 'across' : 'along'}, not written down
        </span>
      )}
    </td>
  );
}
