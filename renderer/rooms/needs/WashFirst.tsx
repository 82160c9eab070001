/** Materials that shrink: washed before they are cut and so needed longer, or cut larger for a wash to come. */
import { say } from '../../../shared-core/wording/say.ts';
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
      <h2 id="wash">{say('wash-first.wash-before-cutting')}</h2>
      <p className={style.words}>
        {say('wash-first.as-hot-as-the-coat-will')}{' '}
        <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>
          {say('wash-first.plan')}
        </a>{' '}
        {say('wash-first.lets-you-cut-a-slot-unwashed')}
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
          { head: say('common.slot'), cell: ({ slotName }) => sentenceCase(slotName) },
          {
            head: say('wash-first.shrinks-along'),
            align: 'end',
            cell: (wash) => <Shrunk wash={wash} direction="along" />,
          },
          {
            head: say('wash-first.shrinks-across'),
            align: 'end',
            cell: (wash) => <Shrunk wash={wash} direction="across" />,
          },
          {
            head: say('wash-first.needed-longer-by'),
            align: 'end',
            cell: ({ alongRatio }) => (
              <Figure quantity="ratio" value={1 / (1 - alongRatio) - 1} options={{ digits: 1 }} />
            ),
          },
          {
            head: say('wash-first.washed'),
            cell: ({ isBeforeCutting }) =>
              isBeforeCutting ? say('wash-first.before-cutting') : say('wash-first.in-the-coat'),
          },
          {
            head: say('wash-first.its-item'),
            isHeadHidden: true,
            cell: ({ slotId }) => (
              <a
                href={routeHash({
                  kind: 'stash',
                  itemId: input.plan.slots.find(({ id }) => id === slotId)?.itemId ?? null,
                })}
              >
                {say('wash-first.put-in-what-you-measured')}
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
        <span className="quiet small">{` ${say('wash-first.taken-as-along-not-written-down', { ifDirection: direction === 'along' ? 'yes' : 'no' })}`}</span>
      )}
    </>
  );
}
