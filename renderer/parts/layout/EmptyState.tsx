import type { ReactNode } from 'react';
import style from './EmptyState.module.css';

/** What an empty room says: what belongs here, and what to do to begin. */
export function EmptyState({
  title,
  children,
  action,
}: {
  title: string;
  children: ReactNode;
  action?: ReactNode;
}) {
  return (
    <div className={style.empty}>
      <h2 className="of-card">{title}</h2>
      <p className="quiet">{children}</p>
      {action && <div className={style.action}>{action}</div>}
    </div>
  );
}
