import type { ReactNode } from 'react';
import style from './SettingsRoom.module.css';

/** One matter of the settings: what it is about on the left, what is chosen on the right. */
export function Group({ title, about, children }: { title: string; about: string; children: ReactNode }) {
  return (
    <section className={style.group}>
      <div>
        <h2 className={style.title}>{title}</h2>
        <p className={style.about}>{about}</p>
      </div>
      <div className={style.fields}>{children}</div>
    </section>
  );
}
