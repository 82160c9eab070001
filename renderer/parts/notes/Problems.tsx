import { say } from '../../../shared-core/wording/say.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { Button } from '../forms/Button.tsx';
import style from './Problems.module.css';

export interface ProblemsProps {
  readonly problems: readonly Problem[];
  /** Where the same can be asked for once more as it is. */
  readonly onTryAgain?: () => void;
  /** Only to the eye, as while the maker is typing what they are about. */
  readonly isQuiet?: boolean;
}

/** Each problem with its place, and below it the mend. Nothing is drawn when there is none. */
export function Problems({ problems, onTryAgain, isQuiet = false }: ProblemsProps) {
  if (problems.length === 0) return null;
  const role = isQuiet ? undefined : 'alert';
  const list = (
    // What is told stands there as new, so that it is read aloud.
    <div key={role} className={style.told} role={role}>
      <ul className={style.list}>
        {problems.map((problem) => (
          <li key={`${problem.where} ${problem.what}`}>
            <strong>
              {problem.where} {problem.what}.
            </strong>{' '}
            {problem.fix}
          </li>
        ))}
      </ul>
    </div>
  );
  if (!onTryAgain) return list;
  return (
    <div className={style.again}>
      {list}
      <Button onClick={onTryAgain}>{say('problems.try-again')}</Button>
    </div>
  );
}
