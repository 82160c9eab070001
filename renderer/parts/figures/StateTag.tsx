import { say } from '../../../shared-core/wording/say.ts';
import type { CoverState } from '../../../shared-core/cover/slot-cover.ts';
import style from './StateTag.module.css';

const words: Record<CoverState, string> = {
  covered: say('state-tag.covered'),
  'covered with care': say('state-tag.covered-with-care'),
  short: say('state-tag.short'),
  open: say('state-tag.to-choose'),
};

/** How a slot stands, told by word and shape as well as by colour. */
export function StateTag({ state }: { state: CoverState }) {
  return (
    <span className={style.tag} data-state={state}>
      <svg className={style.mark} viewBox="0 0 12 12" aria-hidden="true">
        {state === 'covered' && <path d="M2 6.5 5 9.2 10 3" />}
        {state === 'covered with care' && <path d="M6 1.8v5M6 9.4v.6" />}
        {state === 'short' && <path d="M2.5 6h7" />}
        {state === 'open' && <circle cx="6" cy="6" r="3.4" />}
      </svg>
      {words[state]}
    </span>
  );
}
