/** The stash: every item the maker keeps, found by what is remembered of it, and one of them opened beside the list. */
import { say } from '../../../shared-core/wording/say.ts';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { goTo } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../parts/notes/ReadProblems.tsx';
import { ItemDetail } from './items/ItemDetail.tsx';
import { ItemForm } from './items/ItemForm.tsx';
import { type StashQuestion, useItemPages } from './item-pages.ts';
import { LabelSheet } from './labels/LabelSheet.tsx';
import style from './Stash.module.css';
import { LastChange } from './LastChange.tsx';
import { StashBar, StashOrder } from './StashBar.tsx';
import { StashFileSheet } from './files/StashFileSheet.tsx';
import { StashFiles } from './files/StashFiles.tsx';
import { StockTake } from './stock-take/StockTake.tsx';
import { StashList } from './StashList.tsx';

const searchPauseMs = 160;
const everything: StashQuestion = { search: '', kinds: [], sortBy: 'name', isDescending: false };

export function Stash({ itemId }: { itemId: string | null }) {
  const { facts } = useWorkshop();
  const [question, setQuestion] = useState(everything);
  /** As it is being typed; it is asked after a pause. */
  const [search, setSearch] = useState('');
  const [isCounting, setIsCounting] = useState(false);
  const [isAdding, setIsAdding] = useState(false);
  const [isLabelling, setIsLabelling] = useState(false);
  const [isBringingIn, setIsBringingIn] = useState(false);
  const [fileProblems, setFileProblems] = useState<readonly Problem[]>([]);
  const listRef = useRef<HTMLDivElement>(null);
  const pages = useItemPages(question);
  useEffect(() => {
    const timer = window.setTimeout(
      () => setQuestion((now) => (now.search === search ? now : { ...now, search })),
      searchPauseMs,
    );
    return () => window.clearTimeout(timer);
  }, [search]);

  // Walking through the list leaves no trail of addresses to go back through.
  const choose = useCallback(
    (id: string) => goTo({ kind: 'stash', itemId: id }, { leavesNoTrail: true }),
    [],
  );
  const close = useCallback(() => goTo({ kind: 'stash', itemId: null }), []);

  const showEverything = () => {
    setSearch('');
    setQuestion({ ...question, search: '', kinds: [], isPutAway: false });
  };

  const isEmpty =
    facts.itemCount === 0 &&
    pages.isRead &&
    pages.total === 0 &&
    question.search === '' &&
    question.kinds.length === 0;
  const isNarrowed = question.search !== '' || question.kinds.length > 0 || question.isPutAway === true;
  const files = (
    <StashFiles isEmpty={isEmpty} onProblems={setFileProblems} onBringIn={() => setIsBringingIn(true)} />
  );
  return (
    <div className={style.stash} data-open={itemId !== null}>
      <header className={style.header}>
        <div className={style.heading}>
          <h1>{say('common.stash')}</h1>
          <p className="quiet number" role="status">
            {pages.isRead && !isEmpty && countText(pages.total, facts.itemCount, question)}
          </p>
        </div>
        <div className={style.actions}>
          {!isEmpty && (
            <>
              {files}
              <Button
                look="quiet"
                aria-pressed={question.isPutAway === true}
                onClick={() => {
                  setIsCounting(false);
                  setQuestion({ ...question, isPutAway: !question.isPutAway });
                }}
              >
                {question.isPutAway ? say('stash.show-the-shelf') : say('stash.show-what-is-put-away')}
              </Button>
              <Button aria-pressed={isCounting} onClick={() => setIsCounting(!isCounting)}>
                {isCounting ? say('stash.back-to-the-list') : say('stash.take-stock')}
              </Button>
              <Button look="main" onClick={() => setIsAdding(true)}>
                {say('stash.new-item')}
              </Button>
            </>
          )}
        </div>
      </header>
      <Problems problems={fileProblems} />
      {isEmpty ? (
        <EmptyState
          title={say('stash.the-shelf-is-empty')}
          action={
            <div className={style.actions}>
              <Button look="main" onClick={() => setIsAdding(true)}>
                {say('stash.new-item')}
              </Button>
              {files}
            </div>
          }
        >
          {say('stash.begin-with-the-cloth-you-would')}
        </EmptyState>
      ) : (
        <>
          <StashBar
            search={search}
            onSearch={setSearch}
            kinds={question.kinds}
            onKinds={(kinds) => setQuestion({ ...question, search, kinds })}
            onLeave={() => listRef.current?.focus()}
          >
            <Button disabled={pages.total === 0} onClick={() => setIsLabelling(true)}>
              {say('common.shelf-labels')}
            </Button>
          </StashBar>
          <ReadProblems read={pages.read} />
          {isCounting ? (
            <StockTake question={question} />
          ) : (
            <div className={style.halves}>
              <section className={style.list} aria-label={say('stash.list')}>
                <StashOrder question={question} onAsk={setQuestion} />
                {pages.isRead && pages.total === 0 ? (
                  <div className={style.nothing}>
                    <p>{say('stash.nothing-in-the-stash-fits-that')}</p>
                    <Button onClick={showEverything}>{say('stash.show-everything')}</Button>
                  </div>
                ) : (
                  <StashList pages={pages} itemId={itemId} onChoose={choose} listRef={listRef} />
                )}
              </section>
              {itemId !== null && (
                <section className={style.detail} aria-label={say('common.item')}>
                  <ItemDetail key={itemId} itemId={itemId} onClose={close} />
                </section>
              )}
            </div>
          )}
        </>
      )}
      <LastChange />
      {isBringingIn && <StashFileSheet onClose={() => setIsBringingIn(false)} />}
      {isLabelling && (
        <LabelSheet
          question={question}
          total={pages.total}
          itemId={itemId}
          onClose={() => setIsLabelling(false)}
        />
      )}
      {isAdding && (
        <ItemForm
          item={null}
          onClose={() => setIsAdding(false)}
          onSaved={(id) => {
            // What is new stands in the list, whatever was searched for before.
            if (isNarrowed) showEverything();
            goTo({ kind: 'stash', itemId: id });
          }}
        />
      )}
    </div>
  );
}

function countText(found: number, all: number, { search, kinds, isPutAway }: StashQuestion): string {
  const items = (count: number) => say('stash.items', { count });
  if (isPutAway) return say('stash.put-away', { items: items(found) });
  const isNarrowed = search !== '' || kinds.length > 0;
  return isNarrowed ? say('stash.of', { found, items: items(all) }) : items(found);
}
