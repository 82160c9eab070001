/** One search for everything, opened by Ctrl K (or Cmd K) from anywhere: type, choose with the arrows, go with Enter. */
import { say } from '../../shared-core/wording/say.ts';
import { Dialog } from '@base-ui/react/dialog';
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { isItemCode } from '../../shared-core/stash/item-code.ts';
import { type FindPlace, placeOfFind, placesByName } from '../client/find-places.ts';
import { goTo, type Route, stepNames, steps } from '../client/route.ts';
import { useRead } from '../client/queries/reads.ts';
import style from './Find.module.css';

const namedSteps = steps.map((step) => ({ step, name: stepNames[step] }));

export function Find({ route }: { route: Route }) {
  const [isOpen, setIsOpen] = useState(false);
  const hasGone = useRef(false);
  useEffect(() => {
    const pressed = (event: globalThis.KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'k') return;
      event.preventDefault();
      setIsOpen(true);
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, []);
  return (
    <Dialog.Root
      open={isOpen}
      onOpenChange={setIsOpen}
      onOpenChangeComplete={(isNowOpen) => {
        // The keys go on in the room that was found; where nothing was, they are back where they were.
        if (!isNowOpen && hasGone.current) document.querySelector('main')?.focus();
        hasGone.current = false;
      }}
    >
      <Dialog.Trigger className={`${style.open} eased`}>
        {say('find.find')}
        <kbd>{say('find.ctrl-k')}</kbd>
      </Dialog.Trigger>
      <Dialog.Portal>
        <Dialog.Backdrop className={style.backdrop} />
        <Dialog.Popup className={style.popup} aria-label={say('find.find-anything')}>
          <FindBox
            openPlanId={route.kind === 'coat' ? route.planId : null}
            onGone={() => {
              hasGone.current = true;
              setIsOpen(false);
            }}
          />
        </Dialog.Popup>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

function FindBox({ openPlanId, onGone }: { openPlanId: string | null; onGone: () => void }) {
  const listId = useId();
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState(0);
  const found = useFinds(text);
  const places = [...placesByName(text, openPlanId, namedSteps), ...found.places];
  const [isGoing, setIsGoing] = useState(false);
  const go = (place: FindPlace) => {
    goTo(place.route);
    onGone();
  };
  const pressed = (event: KeyboardEvent) => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      const by = event.key === 'ArrowDown' ? 1 : -1;
      if (places.length > 0) setChosen((chosen + by + places.length) % places.length);
    } else if (event.key === 'Enter') {
      event.preventDefault();
      // A scanner presses Enter before the answer is here.
      if (isItemCode(text) && found.isLooking) setIsGoing(true);
      else if (places[chosen]) go(places[chosen]);
    }
  };
  useEffect(() => {
    if (!isGoing || found.isLooking) return;
    setIsGoing(false);
    if (places[0]) go(places[0]);
  });
  return (
    <>
      <input
        className={style.text}
        type="search"
        role="combobox"
        aria-expanded="true"
        aria-controls={listId}
        aria-activedescendant={places[chosen] ? `${listId} ${chosen}` : undefined}
        aria-label={say('find.find')}
        placeholder={say('find.an-item-a-coat-a-supplier')}
        value={text}
        onChange={(event) => {
          setText(event.target.value);
          setIsGoing(false);
          setChosen(0);
        }}
        onKeyDown={pressed}
      />
      <div id={listId} role="listbox" aria-label={say('find.found')} className={style.list}>
        {places.map((place, index) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys are heard by the field that keeps the focus.
          <div
            key={place.id}
            id={`${listId} ${index}`}
            role="option"
            tabIndex={-1}
            aria-selected={index === chosen}
            className={style.place}
            onPointerMove={() => setChosen(index)}
            onClick={() => go(place)}
          >
            <span>{place.name}</span>
            <span className={style.detail}>{place.detail}</span>
          </div>
        ))}
      </div>
      <p className={style.state} role="status">
        {found.problem ?? (places.length === 0 && !found.isLooking ? nothingWords(text) : '')}
      </p>
    </>
  );
}

function nothingWords(text: string): string {
  return isItemCode(text)
    ? say('find.no-item-of-this-workshop-has')
    : say('find.nothing-is-named', { text: text.trim() });
}

/** What the workshop holds under that text. */
function useFinds(text: string): {
  readonly places: readonly FindPlace[];
  readonly isLooking: boolean;
  readonly problem: string | null;
} {
  const asked = text.trim();
  const found = useRead('find', asked === '' ? null : { text: asked }, { keepsBefore: true });
  const [problem] = found.problems;
  return {
    places: asked === '' || problem ? [] : (found.data?.finds ?? []).map(placeOfFind),
    isLooking: asked !== '' && !problem && (found.data === undefined || found.isOfBefore),
    problem: problem ? `${problem.where} ${problem.what}. ${problem.fix}` : null,
  };
}
