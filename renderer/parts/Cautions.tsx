/** Cautions of the trade that belong to this place of the road; each is shown in one place only. */
import type { CautionKind } from '../../shared-core/requirement/cautions.ts';
import { useCoat } from '../client/coat-context.ts';
import style from './Cautions.module.css';

export function Cautions({ kinds }: { kinds: readonly CautionKind[] }) {
  const { estimate } = useCoat();
  const shown = estimate?.finished.cautions.filter(({ kind }) => kinds.includes(kind)) ?? [];
  if (shown.length === 0) return null;
  return (
    <ul className={style.cautions} aria-label="Take care">
      {shown.map(({ kind, says, defersTo, source }) => (
        <li key={kind} className={style.caution}>
          <p>{says}</p>
          <p className="small">
            {defersTo} <span className={style.source}>({source})</span>
          </p>
        </li>
      ))}
    </ul>
  );
}
