/** What a maker of experience would say at this place of the road, with its mend; nothing where nothing is amiss. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { howText } from '../../../shared-core/measure/basis.ts';
import type { AdviceKind } from '../../../shared-core/requirement/advice.ts';
import { sewingAdvice } from '../../../shared-core/requirement/sewing-advice.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import style from './AdviceNotes.module.css';
import { BasisNote } from '../figures/BasisNote.tsx';

export function AdviceNotes({ kinds }: { kinds: readonly AdviceKind[] }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const advice = useMemo(() => (input ? sewingAdvice(input.plan, slotItems(input)) : []), [input]);
  const shown = advice.filter(({ kind }) => kinds.includes(kind));
  if (shown.length === 0) return null;
  return (
    <ul className={style.advice} aria-label={say('advice-notes.before-you-sew')}>
      {shown.map(({ says, fix, basis }) => (
        <li key={says}>
          <p>{howText(says, system)}</p>
          <p>{howText(fix, system)}</p>
          <BasisNote basis={basis} />
        </li>
      ))}
    </ul>
  );
}
