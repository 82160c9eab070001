/** The rail on the left and the room beside it. Inside a coat the rail carries its road, with a live figure at each step. */
import { say } from '../../shared-core/wording/say.ts';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { useWorkshop } from '../client/workshop.ts';
import { Button } from '../parts/forms/Button.tsx';
import { FileProblems } from '../parts/notes/FileProblems.tsx';
import { Boundary } from './Boundary.tsx';
import { Coat } from './Coat.tsx';
import { Find } from './Find.tsx';
import { AccountRoom } from '../rooms/account/AccountRoom.tsx';
import { Coats } from '../rooms/coats/Coats.tsx';
import { DraftRoom } from '../rooms/draft/DraftRoom.tsx';
import { SeasonRoom } from '../rooms/season/SeasonRoom.tsx';
import { SettingsRoom } from '../rooms/settings/SettingsRoom.tsx';
import { Stash } from '../rooms/stash/Stash.tsx';
import { SuppliersRoom } from '../rooms/suppliers/SuppliersRoom.tsx';
import { Welcome } from '../rooms/welcome/Welcome.tsx';
import style from './Frame.module.css';
import { type Route, routeHash } from '../client/route.ts';

/** notice: what went wrong behind all rooms, above the one that is open. */
export function Frame({ route, notice }: { route: Route; notice: ReactNode }) {
  const { workshop, facts, open } = useWorkshop();
  const main = useRef<HTMLElement>(null);
  const [road, setRoad] = useState<Element | null>(null);
  const place = route.kind === 'coat' ? `${route.planId} ${route.step}` : route.kind;
  // Each room begins at its top, wherever the one before was left.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the place is what it answers to
  useEffect(() => {
    main.current?.scrollTo({ top: 0 });
  }, [place]);
  return (
    <div className={style.frame}>
      <nav className={style.rail} aria-label={say('frame.rooms')}>
        <button type="button" className={style.skip} onClick={() => main.current?.focus()}>
          {say('frame.to-the-room')}
        </button>
        <a className={style.name} href={routeHash({ kind: 'welcome' })}>
          <svg className={style.sign} viewBox="0 0 32 32" aria-hidden="true">
            <path d="M3 11c4.3-4 8.7 4 13 0s8.7 4 13 0M3 21c4.3-4 8.7 4 13 0s8.7 4 13 0" />
            <path className={style.stitch} d="M16 3v26" />
          </svg>
          {say('frame.bolt-baffle')}
        </a>
        <Find route={route} />
        <ul className={style.rooms}>
          <RoomLink route={{ kind: 'stash', itemId: null }} isHere={route.kind === 'stash'}>
            {say('common.stash')}
          </RoomLink>
          <RoomLink route={{ kind: 'coats' }} isHere={route.kind === 'coats' || route.kind === 'draft'}>
            {say('common.coats')}
          </RoomLink>
          <RoomLink route={{ kind: 'season' }} isHere={route.kind === 'season'}>
            {say('common.season')}
          </RoomLink>
          <RoomLink route={{ kind: 'suppliers' }} isHere={route.kind === 'suppliers'}>
            {say('common.suppliers')}
          </RoomLink>
          <RoomLink route={{ kind: 'account' }} isHere={route.kind === 'account'}>
            {say('common.account')}
          </RoomLink>
        </ul>
        <div ref={setRoad} />
        <ul className={style.foot}>
          <RoomLink route={{ kind: 'settings' }} isHere={route.kind === 'settings'}>
            {say('common.settings')}
          </RoomLink>
          <li className={style.file} title={facts.dataFile}>
            {facts.settings.workshopName || say('common.your-workshop')}
          </li>
        </ul>
      </nav>
      <div className={style.room}>
        {workshop === 'demo' && (
          <aside className={style.demo}>
            <span>{say('frame.this-is-the-demo-workshop-nothing')}</span>
            <Button look="quiet" onClick={() => void open('own', { kind: 'welcome' })}>
              {say('frame.back-to-your-workshop')}
            </Button>
          </aside>
        )}
        <main ref={main} className={style.main} tabIndex={-1}>
          {(notice || facts.fileProblems.length > 0) && (
            <div className={style.notice}>
              {notice}
              <FileProblems />
            </div>
          )}
          <Boundary place={routeHash(route)}>
            <Room route={route} road={road} />
          </Boundary>
        </main>
      </div>
    </div>
  );
}

function RoomLink({ route, isHere, children }: { route: Route; isHere: boolean; children: string }) {
  return (
    <li>
      <a className={`${style.link} eased`} href={routeHash(route)} aria-current={isHere ? 'page' : undefined}>
        {children}
      </a>
    </li>
  );
}

function Room({ route, road }: { route: Route; road: Element | null }) {
  switch (route.kind) {
    case 'welcome':
      return <Welcome />;
    case 'stash':
      return <Stash itemId={route.itemId} />;
    case 'coats':
      return <Coats />;
    case 'coat':
      return <Coat key={route.planId} planId={route.planId} step={route.step} road={road} />;
    case 'draft':
      return <DraftRoom />;
    case 'season':
      return <SeasonRoom />;
    case 'suppliers':
      return <SuppliersRoom />;
    case 'account':
      return <AccountRoom />;
    case 'settings':
      return <SettingsRoom />;
    default:
      return route satisfies never;
  }
}
