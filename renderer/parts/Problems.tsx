import type { Problem } from '../../shared-core/measure/problem.ts';
import style from './Problems.module.css';

/** Each problem with its place, and below it the mend. Nothing is drawn when there is none. */
export function Problems({ problems }: { problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <ul className={style.list} role="alert">
      {problems.map((problem) => (
        <li key={`${problem.where} ${problem.what}`}>
          <strong>
            {problem.where} {problem.what}.
          </strong>{' '}
          {problem.mend}
        </li>
      ))}
    </ul>
  );
}
