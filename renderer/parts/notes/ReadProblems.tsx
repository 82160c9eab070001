import { say } from '../../../shared-core/wording/say.ts';
import type { Read } from '../../client/queries/reads.ts';
import { Problems } from './Problems.tsx';

/** Why something could not be read, with a way to try again; where it was read before, that it is what is shown. */
export function ReadProblems({
  read,
}: {
  read: Pick<Read<unknown>, 'problems' | 'again'> & { data?: unknown };
}) {
  if (read.problems.length === 0) return null;
  return (
    <>
      <Problems problems={read.problems} onTryAgain={read.again} />
      {read.data !== undefined && (
        <p className="quiet small">{say('read-problems.what-is-shown-was-read-before')}</p>
      )}
    </>
  );
}
