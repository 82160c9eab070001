/** What a form does not ask for first: shut until it is wanted, with what is inside told on it. */
import { type ReactNode, useEffect, useState } from 'react';
import style from './Disclosure.module.css';

export interface DisclosureProps {
  readonly title: string;
  /** What is inside, in a few words. */
  readonly inside: string;
  /** Something inside has a value: opens it when this becomes true; it stays the maker's to shut. */
  readonly hasValue: boolean;
  /** Opens it each time that something inside is refused anew; null where nothing is. */
  readonly refusal: object | null;
  readonly children: ReactNode;
}

export function Disclosure({ title, inside, hasValue, refusal, children }: DisclosureProps) {
  const [isOpen, setIsOpen] = useState(hasValue);
  useEffect(() => {
    if (hasValue || refusal) setIsOpen(true);
  }, [hasValue, refusal]);
  return (
    <details
      className={style.disclosure}
      open={isOpen}
      onToggle={(event) => setIsOpen(event.currentTarget.open)}
    >
      <summary>
        <span className={style.title}>{title}</span>
        {!isOpen && <span className={style.inside}>{inside}</span>}
      </summary>
      <div className={style.body}>{children}</div>
    </details>
  );
}
