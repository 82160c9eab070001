/** The sizes of the style: the one at hand, those beside it with their number of coats, and one more from another plan. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Result, Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { addSize, chooseSize, removeSize, setSizeCount } from '../../../shared-core/plan/model/sizes.ts';
import { ask, useRead } from '../../client/queries/reads.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './PlanRoom.module.css';

export function Sizes() {
  const { input, edit } = useCoat('input', 'edit');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input) return null;
  const { plan } = input;
  const make = async (change: (plan: CoatPlan) => Result<Edited>) => {
    const answer = await edit(change);
    setProblems(answer.ok ? [] : answer.problems);
  };
  const others = (plan.sizes ?? []).map(({ size, coatCount }) => ({ size, coatCount, isAtHand: false }));
  return (
    <section aria-labelledby="sizes">
      <h2 id="sizes" className={style.title}>
        {say('common.sizes')}
      </h2>
      <Problems problems={problems} />
      {others.length > 0 && (
        <DataTable
          className={style.sizes}
          rows={[{ size: plan.size, coatCount: plan.coatCount, isAtHand: true }, ...others]}
          keyOf={({ size, isAtHand }) => (isAtHand ? 'at hand' : size)}
          columns={[
            {
              head: say('common.size'),
              cell: ({ size, isAtHand }) =>
                isAtHand ? (
                  <>
                    {size || say('sizes.no-size-named')}{' '}
                    <span className="quiet">{say('sizes.at-hand-its-pieces-are-shown')}</span>
                  </>
                ) : (
                  size
                ),
            },
            {
              head: say('common.coats'),
              isNumber: true,
              cell: ({ size, coatCount, isAtHand }) =>
                isAtHand ? (
                  coatCount
                ) : (
                  <SettledField
                    label={say('sizes.coats-in-size', { size })}
                    isLabelHidden
                    quantity="count"
                    value={coatCount}
                    max={1000}
                    onSet={(count) => void make((current) => setSizeCount(current, size, count))}
                  />
                ),
            },
            {
              head: say('common.actions'),
              isHeadHidden: true,
              align: 'end',
              cell: ({ size, coatCount, isAtHand }) =>
                !isAtHand && (
                  <>
                    <Button look="quiet" onClick={() => void make((current) => chooseSize(current, size))}>
                      {coatCount === 0 ? say('sizes.make-this-instead') : say('sizes.bring-to-hand')}
                    </Button>
                    <Button look="quiet" onClick={() => void make((current) => removeSize(current, size))}>
                      {say('sizes.take-out')}
                    </Button>
                  </>
                ),
            },
          ]}
        />
      )}
      <AddSize
        plan={plan}
        onAdd={(from) => make((current) => addSize(current, from, 1))}
        onProblems={setProblems}
      />
    </section>
  );
}

interface AddSizeProps {
  readonly plan: CoatPlan;
  readonly onAdd: (from: CoatPlan) => Promise<void>;
  readonly onProblems: (problems: readonly Problem[]) => void;
}

/** Takes the pieces of another plan of the same style: one that was drafted, copied or brought in at another size. */
function AddSize({ plan, onAdd, onProblems }: AddSizeProps) {
  const { workshop } = useWorkshop();
  const read = useRead('listPlans', {});
  const [planId, setPlanId] = useState('');
  const others = (read.data?.rows ?? []).filter((row) => row.id !== plan.id && row.size !== plan.size);
  const add = async () => {
    const answer = await ask(workshop, 'readPlan', { planId });
    if (answer.ok) await onAdd(answer.value.plan);
    else onProblems(answer.problems);
    setPlanId('');
  };
  if (others.length === 0) {
    return (
      <>
        <ReadProblems read={read} />
        <p className="quiet">{say('sizes.to-make-several-sizes-in-one')}</p>
      </>
    );
  }
  return (
    <div className={style.addSize}>
      <ChoiceField
        label={say('sizes.another-size-from-the-plan')}
        value={planId}
        options={others.map((row) => ({
          value: row.id as string,
          label: say('sizes.size-4', { rowName: row.name, rowCount: row.size || say('sizes.not-named') }),
        }))}
        onChange={setPlanId}
        emptyLabel={say('sizes.choose-a-plan')}
      />
      <Button disabled={planId === ''} onClick={() => void add()}>
        {say('sizes.add-this-size')}
      </Button>
    </div>
  );
}
