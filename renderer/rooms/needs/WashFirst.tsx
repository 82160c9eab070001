/** Materials that shrink: washed before they are cut and so needed longer, or cut larger for a wash to come. */
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { Prewash } from '../../../shared-core/requirement/law/care.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { finishedOf } from '../../client/coat/finished-coat.ts';
import { routeHash } from '../../client/route.ts';
import { Figure } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
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
      <DataTable
        className={style.narrow}
        rows={prewash}
        keyOf={({ slotId }) => slotId}
        columns={[
          { head: 'Slot', cell: ({ slotName }) => sentenceCase(slotName) },
          {
            head: 'Shrinks along',
            align: 'end',
            cell: (wash) => <Shrunk wash={wash} direction="along" />,
          },
          {
            head: 'Shrinks across',
            align: 'end',
            cell: (wash) => <Shrunk wash={wash} direction="across" />,
          },
          {
            head: 'Needed longer by',
            align: 'end',
            cell: ({ alongRatio }) => (
              <Figure quantity="ratio" value={1 / (1 - alongRatio) - 1} options={{ digits: 1 }} />
            ),
          },
          {
            head: 'Washed',
            cell: ({ isBeforeCutting }) => (isBeforeCutting ? 'before cutting' : 'in the coat'),
          },
          {
            head: 'Its item',
            isHeadHidden: true,
            cell: ({ slotId }) => (
              <a
                href={routeHash({
                  kind: 'stash',
                  itemId: input.plan.slots.find(({ id }) => id === slotId)?.itemId ?? null,
                })}
              >
                Put in what you measured
              </a>
            ),
          },
        ]}
      />
    </section>
  );
}

function Shrunk({ wash, direction }: { wash: Prewash; direction: 'along' | 'across' }) {
  return (
    <>
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
    </>
  );
}
