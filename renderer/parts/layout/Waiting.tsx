import { say } from '../../../shared-core/wording/say.ts';
import type { ReactNode } from 'react';
import style from './Waiting.module.css';

/** Stands where figures will stand, while they are worked out. */
export function Waiting({ children = say('waiting.working-it-out') }: { children?: ReactNode }) {
  return (
    <div className={style.waiting} role="status">
      <span className={style.seam} aria-hidden="true" />
      <p className="quiet">{children}</p>
    </div>
  );
}
