/** How a figure was got: each of its bases with its kind, the sentence and the source. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { type Basis, howText } from '../../../shared-core/measure/basis.ts';
import { useSystem } from '../../client/workshop.ts';
import style from './BasisNote.module.css';

export function BasisNote({ basis }: { basis: readonly Basis[] }) {
  const system = useSystem();
  if (basis.length === 0)
    return <p className="quiet small">{say('basis-note.computed-from-the-outlines')}</p>;
  return (
    <ul className={`${style.basis} small`}>
      {basis.map((each) => (
        <li key={each.how}>
          <span className={style.kind} data-kind={each.kind}>
            {codeWords(each.kind)}
          </span>{' '}
          {howText(each.how, system)}
          {each.source && <span className={style.source}> ({each.source})</span>}
        </li>
      ))}
    </ul>
  );
}
