import type { ReactNode } from 'react';
import style from './RoomHead.module.css';

/** The head of a room on a coat's road: its name, its answer in one line, and what can be done with the whole of it. */
export function RoomHead({ title, lead, actions }: { title: string; lead?: ReactNode; actions?: ReactNode }) {
  return (
    <header className={style.head}>
      <div className={style.words}>
        <h1>{title}</h1>
        {lead && <p className={style.lead}>{lead}</p>}
      </div>
      {actions && <div className={style.actions}>{actions}</div>}
    </header>
  );
}
