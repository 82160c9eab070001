/** One item: what it is, what lies on the shelf of it, what came and went, and what suppliers ask. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type ReactNode, useState } from 'react';
import type { CallOutput } from '../../../../shared-core/contract/contract.ts';
import { listed } from '../../../../shared-core/wording/listed.ts';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Offer } from '../../../../shared-core/stash/offer.ts';
import { itemFree, itemOnHand } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useRead } from '../../../client/queries/reads.ts';
import { useSystem } from '../../../client/workshop.ts';
import { Amount } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { KindMark } from '../../../parts/drawing/KindMark.tsx';
import { Problems } from '../../../parts/notes/Problems.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import style from './ItemDetail.module.css';
import { ItemForm } from './ItemForm.tsx';
import { knownFacts } from './item-words.ts';
import { LearnedOffers } from '../offers/LearnedOffers.tsx';
import { CouldCarry } from '../lots/CouldCarry.tsx';
import { Ledger } from '../lots/Ledger.tsx';
import { Lots } from '../lots/Lots.tsx';
import { OfferForm } from '../offers/OfferForm.tsx';
import { Offers } from '../offers/Offers.tsx';
import { ReceiveForm } from '../lots/ReceiveForm.tsx';
import { SwatchPhoto } from './SwatchPhoto.tsx';
import { TakeForm } from '../lots/TakeForm.tsx';

type Doing =
  | { readonly kind: 'edit' }
  | { readonly kind: 'receive' }
  | { readonly kind: 'write off' }
  | { readonly kind: 'count' }
  | { readonly kind: 'offer'; readonly offer: Offer | null };

export interface ItemDetailProps {
  readonly itemId: string;
  readonly onClose: () => void;
}

export function ItemDetail({ itemId, onClose }: ItemDetailProps) {
  const reading = useRead('readItem', { itemId });
  const { make: archiveItem } = useChange('archiveItem');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [doing, setDoing] = useState<Doing | null>(null);
  const read = reading.data;
  if (!read) return <ReadProblems read={reading} />;

  const putAway = async () => {
    const done = await archiveItem({ itemId, isPutAway: !read.isPutAway });
    setProblems(done.ok ? [] : done.problems);
  };
  const { shelf, movements, offers } = read;
  const { item } = shelf;
  const close = () => setDoing(null);
  const hasLots = shelf.lots.length > 0;

  return (
    <article className={style.item} aria-label={item.name}>
      <header className={style.header}>
        <div className={style.heading}>
          <KindMark kind={item.kind} />
          <div>
            <h2>{item.name}</h2>
            <p className="quiet">
              {[kindRecords[item.kind].label, item.colour, item.place]
                .filter((word) => word !== '')
                .join(' · ')}
            </p>
          </div>
        </div>
        <Button look="quiet" onClick={onClose}>
          {say('common.close')}
        </Button>
      </header>

      <SwatchPhoto key={item.id} item={item} />

      <div className={style.stand}>
        <Stand read={read} />
        <div className={style.actions}>
          <Button look="main" onClick={() => setDoing({ kind: 'receive' })} disabled={read.isPutAway}>
            {say('item-detail.receive')}
          </Button>
          <Button onClick={() => setDoing({ kind: 'write off' })} disabled={!hasLots}>
            {say('item-detail.write-off')}
          </Button>
          <Button onClick={() => setDoing({ kind: 'count' })} disabled={!hasLots}>
            {say('item-detail.count')}
          </Button>
          <Button onClick={() => setDoing({ kind: 'edit' })} disabled={read.isPutAway}>
            {say('common.edit')}
          </Button>
          <Button look="quiet" onClick={() => void putAway()}>
            {read.isPutAway ? say('item-detail.bring-back') : say('item-detail.put-away')}
          </Button>
        </div>
      </div>

      {read.isPutAway && <p className="quiet">{say('item-detail.put-away-it-is-in-no')}</p>}
      <ReadProblems read={reading} />
      <Problems problems={problems} />
      <section className={style.section} aria-labelledby="lots-of-item">
        <h3 id="lots-of-item">{say('item-detail.on-the-shelf')}</h3>
        {hasLots ? (
          <Lots shelf={shelf} />
        ) : (
          <p className="quiet">{say('item-detail.nothing-was-received-yet-receive-a')}</p>
        )}
      </section>

      {kindRecords[item.kind].hasLengths && itemFree(shelf) > 0 && (
        <ToCarry>
          <CouldCarry shelf={shelf} />
        </ToCarry>
      )}

      <Facts read={read} />

      <section className={style.section} aria-labelledby="offers-of-item">
        <div className={style.sectionHead}>
          <h3 id="offers-of-item">{say('item-detail.offers')}</h3>
          <Button look="quiet" onClick={() => setDoing({ kind: 'offer', offer: null })}>
            {say('common.add-an-offer')}
          </Button>
        </div>
        <Offers offers={offers} onEdit={(offer) => setDoing({ kind: 'offer', offer })} />
        <LearnedOffers shelf={shelf} offers={offers} />
      </section>

      {movements.length > 0 && (
        <section className={style.section} aria-labelledby="ledger-of-item">
          <h3 id="ledger-of-item">{say('item-detail.ledger')}</h3>
          <Ledger shelf={shelf} movements={movements} />
        </section>
      )}

      {doing?.kind === 'edit' && <ItemForm item={item} onClose={close} />}
      {doing?.kind === 'receive' && <ReceiveForm item={item} onClose={close} />}
      {doing?.kind === 'write off' && <TakeForm way="write off" shelf={shelf} onClose={close} />}
      {doing?.kind === 'count' && <TakeForm way="count" shelf={shelf} onClose={close} />}
      {doing?.kind === 'offer' && <OfferForm item={item} offer={doing.offer} onClose={close} />}
    </article>
  );
}

/** " for Fenwalk coat and Tarn coat"; nothing where no coat is named. */
function coatWords(setAside: CallOutput<'readItem'>['setAside']): string {
  const names = [...new Set(setAside.map((each) => each.planName))];
  return names.length === 0 ? '' : ` ${say('item-detail.for', { names: listed(names) })}`;
}

function Stand({ read: { shelf, setAside } }: { read: CallOutput<'readItem'> }) {
  const { kind } = shelf.item;
  const reserved = shelf.lots.reduce((sum, lot) => sum + lot.reserved, 0);
  return (
    <p className={style.onHand}>
      <span className={style.figure}>
        <Amount kind={kind} amount={itemOnHand(shelf)} />
      </span>{' '}
      <span className="quiet">
        {say('item-detail.on-hand')}
        {reserved > 0 && (
          <>
            , <Amount kind={kind} amount={reserved} /> {say('item-detail.of-it-set-aside')}
            {coatWords(setAside)}, <Amount kind={kind} amount={itemFree(shelf)} /> {say('item-detail.free')}
          </>
        )}
      </span>
    </p>
  );
}

/** Shut at first: it reads all coats, and is asked for now and then. */
function ToCarry({ children }: { children: ReactNode }) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details
      className={style.section}
      open={isOpen}
      onToggle={(event) => setIsOpen(event.currentTarget.open)}
    >
      <summary className={style.summary}>
        <h3>{say('item-detail.what-it-could-still-carry')}</h3>
      </summary>
      {isOpen && children}
    </details>
  );
}

function Facts({ read: { shelf } }: { read: CallOutput<'readItem'> }) {
  const facts = knownFacts(shelf.item, useSystem());
  const { notes } = shelf.item;
  if (facts.length === 0 && notes === '') return null;
  return (
    <section className={style.section} aria-labelledby="facts-of-item">
      <h3 id="facts-of-item">{say('item-detail.what-is-known')}</h3>
      <dl className={style.facts}>
        {facts.map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {notes !== '' && <p className={style.notes}>{notes}</p>}
    </section>
  );
}
