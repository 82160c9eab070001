/** What the coat weighs, slot by slot, and what is missing for a whole figure. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import type { FinishedCoat } from '../../../shared-core/requirement/finished/finished-coat.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './FinishedRoom.module.css';

const small = { unit: { metric: 'g', imperial: 'oz' }, digits: 1 } as const;

export function WeightBySlot({ coat }: { coat: FinishedCoat }) {
  const { mass } = coat;
  return (
    <section aria-labelledby="weight" className={style.section}>
      <h2 id="weight">{say('weight-by-slot.weight-by-slot')}</h2>
      <DataTable
        className={style.narrow}
        rows={mass.lines}
        keyOf={({ slotId }) => slotId}
        columns={[
          { head: say('common.slot'), cell: ({ slotName }) => sentenceCase(slotName) },
          { head: say('common.material'), cell: ({ slotId }) => <Material slotId={slotId} /> },
          {
            head: say('weight-by-slot.in-one-coat'),
            align: 'end',
            cell: ({ slotId, massG }) =>
              massG === null ? (
                <WeightMissing slotId={slotId} />
              ) : (
                <Figure quantity="mass" value={massG} options={small} />
              ),
          },
        ]}
        foot={[
          {
            label: mass.isComplete ? say('common.together') : say('weight-by-slot.together-what-is-known'),
            cells: [<Figure key="known" quantity="mass" value={mass.knownG} options={small} />],
          },
        ]}
      />
      <BasisNote basis={[...mass.basis, ...(coat.packed ? [coat.packed.basis] : [])]} />
    </section>
  );
}

function useItemOf(slotId: string): Item | null {
  const { input } = useCoat('input');
  return input ? itemById(input, slotById(input.plan, slotId).itemId) : null;
}

function Material({ slotId }: { slotId: string }) {
  const item = useItemOf(slotId);
  return item ? (
    <a href={routeHash({ kind: 'stash', itemId: item.id })}>{item.name}</a>
  ) : (
    say('common.nothing-chosen')
  );
}

function WeightMissing({ slotId }: { slotId: string }) {
  const item = useItemOf(slotId);
  return (
    <span className="small quiet">
      {item ? say('weight-by-slot.no-weight-written-down') : say('common.not-known')}
    </span>
  );
}
