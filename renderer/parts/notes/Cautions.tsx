/** Cautions of the trade that belong to this place of the road; each is shown in one place only. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CautionKind } from '../../../shared-core/requirement/law/caution.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { finishedOf } from '../../client/coat/finished-coat.ts';
import style from './Cautions.module.css';

export function Cautions({ kinds }: { kinds: readonly CautionKind[] }) {
  const { input } = useCoat('input');
  if (!input) return null;
  const shown = finishedOf(input).cautions.filter(({ kind }) => kinds.includes(kind));
  if (shown.length === 0) return null;
  // Who decides is said once where it is the same for all.
  const decide = [...new Set(shown.map(({ defersTo }) => defersTo))];
  return (
    <aside
      className={style.cautions}
      aria-label={say('cautions.take-care', { shown: shown.map(({ kind }) => codeWords(kind)).join(', ') })}
    >
      <ul className={style.list}>
        {shown.map(({ kind, says, source }) => (
          <li key={kind}>
            {says} <span className={`${style.source} small`}>({source})</span>
          </li>
        ))}
      </ul>
      <p>{decide.join(' ')}</p>
    </aside>
  );
}
