/** Search, kinds and order of the list. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { ReactNode } from 'react';
import { type ItemKind, itemKinds, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { TextField } from '../../parts/forms/Field.tsx';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import type { StashQuestion } from './item-pages.ts';
import style from './StashBar.module.css';

export interface StashBarProps {
  readonly search: string;
  readonly onSearch: (search: string) => void;
  readonly kinds: readonly ItemKind[];
  readonly onKinds: (kinds: ItemKind[]) => void;
  /** Arrow down leaves the search for the list. */
  readonly onLeave: () => void;
  /** What can be done with all that is listed. */
  readonly children: ReactNode;
}

export function StashBar({ search, onSearch, kinds, onKinds, onLeave, children }: StashBarProps) {
  const toggle = (kind: ItemKind) =>
    onKinds(kinds.includes(kind) ? kinds.filter((each) => each !== kind) : [...kinds, kind]);

  return (
    <div className={style.bar}>
      <div className={style.top}>
        <search
          className={style.search}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowDown') return;
            event.preventDefault();
            onLeave();
          }}
        >
          <TextField
            label={say('stash-bar.search-the-stash')}
            type="search"
            placeholder={say('stash-bar.name-colour-place-supplier-or-dye')}
            value={search}
            onChange={(text) => onSearch(text.slice(0, 200))}
          />
        </search>
        {children}
      </div>
      <fieldset className={style.kinds}>
        <legend className="only-read-aloud">{say('stash-bar.kinds-shown')}</legend>
        {itemKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            className={`${style.kind} eased`}
            aria-pressed={kinds.includes(kind)}
            onClick={() => toggle(kind)}
          >
            <KindMark kind={kind} />
            {kindRecords[kind].label}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

const columns = [
  { sortBy: 'name', label: say('common.name') },
  { sortBy: 'kind', label: say('stash-bar.kind') },
  { sortBy: 'place', label: say('common.place') },
  { sortBy: 'onHand', label: say('common.on-hand') },
  { sortBy: 'value', label: say('stash-bar.value') },
] as const;

/** Heads of the columns; a press sorts by that column, a second one turns the order round. */
export function StashOrder({
  question,
  onAsk,
}: {
  question: StashQuestion;
  onAsk: (question: StashQuestion) => void;
}) {
  return (
    <div className={style.order}>
      <fieldset className={style.heads}>
        <legend className="only-read-aloud">{say('stash-bar.order-of-the-list')}</legend>
        {columns.map(({ sortBy, label }) => {
          const isChosen = question.sortBy === sortBy;
          return (
            <button
              key={sortBy}
              type="button"
              className={style.head}
              aria-pressed={isChosen}
              aria-label={say('stash-bar.sort-by', {
                label: nounInSentence(label),
                isChosen: isChosen
                  ? question.isDescending
                    ? say('stash-bar.now-falling')
                    : say('stash-bar.now-rising')
                  : '',
              })}
              data-column={sortBy}
              onClick={() =>
                onAsk({
                  ...question,
                  sortBy,
                  isDescending: isChosen ? !question.isDescending : sortBy === 'value',
                })
              }
            >
              {label}
              <svg className={style.arrow} viewBox="0 0 10 10" aria-hidden="true">
                {isChosen && (
                  <path
                    d={question.isDescending ? 'M5 2v6M2.5 5.5 5 8l2.5-2.5' : 'M5 8V2M2.5 4.5 5 2l2.5 2.5'}
                  />
                )}
              </svg>
            </button>
          );
        })}
      </fieldset>
    </div>
  );
}
