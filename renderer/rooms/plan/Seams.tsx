/** Whether the pieces still fit each other: every seam of the size at hand walked anew after each change. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { SeamsInWords, SeamTable } from '../../parts/tables/SeamTable.tsx';
import style from './PlanRoom.module.css';

export function Seams({ plan }: { plan: CoatPlan }) {
  const seams = useMemo(() => seamWalk(plan), [plan]);
  if (seams.length === 0) return null;
  return (
    <section aria-labelledby="seams">
      <h2 id="seams" className={style.title}>
        {say('seams.seams')}
      </h2>
      <p>
        <SeamsInWords seams={seams} />
      </p>
      <details className={style.walked}>
        <summary>{say('seams.every-seam-for-one-coat')}</summary>
        <SeamTable seams={seams} />
      </details>
    </section>
  );
}
