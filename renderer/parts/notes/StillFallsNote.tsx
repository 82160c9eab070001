/** Says of a figure that it is about to change, and by how much it usually does; opened, how that is known. */
import type { StillFalls } from '../../../shared-core/lay/still-falls/still-falls.ts';
import { BasisNote } from '../figures/BasisNote.tsx';
import style from './StillFallsNote.module.css';

export function StillFallsNote({ falls, sentence }: { falls: StillFalls; sentence: string }) {
  return (
    <details className={style.note} data-testid="still-falls">
      <summary>{sentence}</summary>
      <BasisNote basis={[falls.basis]} />
    </details>
  );
}
