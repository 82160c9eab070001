/** Whether what the cover takes is kept from other coats, and the two things to do about it. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { setAsideSentence, setAsideStand, usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { SetAside } from '../../../shared-core/stash/cutting.ts';
import { useCoat, useCoatChange } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import style from './CoverRoom.module.css';

export function SetAsideBar() {
  const { input, estimate, phase } = useCoat('input', 'estimate', 'phase');
  const { make: setAside, isUnderWay: isBusy } = useCoatChange('setAside');
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input || !estimate) return null;
  const { plan, shelf } = input;
  const stand = setAsideStand(input.setAside, estimate.cover);
  const wanted = usesToSetAside(estimate.cover);
  // A lay that is still being looked for uses more than the one that will be found.
  const isLooking = phase === 'quick' || phase === 'thorough';
  if (input.setAside.length === 0 && wanted.length === 0) return null;

  const book = async (uses: readonly SetAside[]) => {
    const done = await setAside({ planId: plan.id, uses: [...uses] });
    setProblems(done.ok ? [] : done.problems);
  };

  return (
    <section
      className={style.aside}
      data-state={isLooking ? 'fits' : stand.state}
      aria-label={say('set-aside-bar.set-aside')}
    >
      <p>
        {isLooking && stand.state === 'changed'
          ? say('set-aside-bar.looking-whether-what-is-set-aside')
          : setAsideSentence(stand, plan, { plan, shelf, system })}
      </p>
      <div className={style.asideActions}>
        {stand.state !== 'fits' && wanted.length > 0 && (
          <Button disabled={isBusy || isLooking} onClick={() => void book(wanted)}>
            {stand.state === 'nothing'
              ? say('set-aside-bar.set-aside-what-it-takes')
              : say('set-aside-bar.set-aside-anew')}
          </Button>
        )}
        {input.setAside.length > 0 && (
          <Button look="quiet" disabled={isBusy} onClick={() => void book([])}>
            {say('set-aside-bar.release')}
          </Button>
        )}
      </div>
      <Problems problems={problems} />
    </section>
  );
}
