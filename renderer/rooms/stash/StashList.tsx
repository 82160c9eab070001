/** The rows of the stash: as many as there are, drawn as far as they are in sight. Arrow keys walk through them. */
import { say } from '../../../shared-core/wording/say.ts';
import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import type { ItemRow } from '../../../shared-core/contract/contract.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { Amount } from '../../parts/figures/Amount.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import type { ItemPages } from './item-pages.ts';
import style from './StashList.module.css';

/** As a row with two lines has it, in the letters of the window; a longer one is as high as it needs. */
const rowHeightRem = 3.875;

export interface StashListProps {
  readonly pages: ItemPages;
  readonly itemId: string | null;
  readonly onChoose: (itemId: string) => void;
  readonly listRef: RefObject<HTMLDivElement | null>;
}

export function StashList({ pages, itemId, onChoose, listRef }: StashListProps) {
  const { total, rows, see } = pages;
  const virtual = useVirtualizer({
    count: total,
    getScrollElement: () => listRef.current,
    estimateSize: rowHeightPx,
    overscan: 8,
  });
  const inSight = virtual.getVirtualItems();
  const first = inSight[0]?.index ?? 0;
  const last = inSight.at(-1)?.index ?? 0;
  useEffect(() => see(first, last), [first, last, see]);

  const chosen = [...rows].find(([, row]) => row.id === itemId)?.[0] ?? null;
  useEffect(() => {
    if (chosen !== null) virtual.scrollToIndex(chosen);
  }, [chosen, virtual]);
  // A row that was walked to before it was read is chosen once it is here.
  const walkingTo = useRef<number | null>(null);
  useEffect(() => {
    const row = walkingTo.current === null ? undefined : rows.get(walkingTo.current);
    if (!row) return;
    walkingTo.current = null;
    onChoose(row.id);
  }, [rows, onChoose]);

  // Where the keys have come to: the choice follows a moment later, and keys may be faster.
  const walkedTo = useRef<number | null>(null);
  useEffect(() => {
    if (chosen === walkedTo.current) walkedTo.current = null;
  }, [chosen]);

  const walk = (event: KeyboardEvent) => {
    const pageRows = Math.max(1, Math.floor((listRef.current?.clientHeight ?? 0) / rowHeightPx()) - 1);
    const here = walkedTo.current ?? chosen;
    const steps: Record<string, number> = {
      ArrowDown: here === null ? 0 : here + 1,
      ArrowUp: here === null ? 0 : here - 1,
      PageDown: (here ?? 0) + pageRows,
      PageUp: (here ?? 0) - pageRows,
      Home: 0,
      End: total - 1,
    };
    const next = steps[event.key];
    if (next === undefined || total === 0) return;
    event.preventDefault();
    const to = Math.min(total - 1, Math.max(0, next));
    virtual.scrollToIndex(to);
    walkedTo.current = to === chosen ? null : to;
    const row = rows.get(to);
    walkingTo.current = row ? null : to;
    if (row) onChoose(row.id);
  };

  return (
    <div
      ref={listRef}
      className={style.list}
      role="listbox"
      aria-label={say('stash-list.items-in-the-stash')}
      tabIndex={0}
      aria-activedescendant={chosen === null ? undefined : `item-${chosen}`}
      onKeyDown={walk}
    >
      <div className={style.rows} style={{ height: virtual.getTotalSize() }}>
        {inSight.map(({ index, start }) => {
          const row = rows.get(index);
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the list has the focus and walks by arrow keys.
            <div
              key={index}
              ref={virtual.measureElement}
              data-index={index}
              id={`item-${index}`}
              className={`${style.row} eased`}
              role="option"
              tabIndex={-1}
              aria-selected={row !== undefined && row.id === itemId}
              aria-posinset={index + 1}
              aria-setsize={total}
              style={{ transform: `translateY(${start}px)`, minHeight: `${rowHeightRem}rem` }}
              // The focus stays with the list, since a row that scrolls out of sight is taken away.
              onMouseDown={(event) => {
                event.preventDefault();
                listRef.current?.focus();
              }}
              onClick={() => {
                walkedTo.current = null;
                if (row) onChoose(row.id);
              }}
            >
              {row && <Row row={row} />}
            </div>
          );
        })}
      </div>
    </div>
  );
}

function rowHeightPx(): number {
  return rowHeightRem * Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
}

function Row({ row }: { row: ItemRow }) {
  const kind = kindRecords[row.kind].label;
  return (
    <>
      <KindMark kind={row.kind} />
      <span className={style.name}>
        <span className={style.title}>{row.name}</span>
        <span className={style.under}>
          {[kind, row.colour, row.place].filter((word) => word !== '').join(' · ')}
        </span>
        <span className={style.colour}>{row.colour}</span>
      </span>
      <span className={style.kind}>{kind}</span>
      <span className={style.place}>{row.place}</span>
      <span className={style.amount} data-empty={row.onHand <= 0}>
        {row.onHand > 0 ? <Amount kind={row.kind} amount={row.onHand} /> : say('stash-list.none-left')}
        {row.reserved > 0 && (
          <span className={style.small}>
            <Amount kind={row.kind} amount={row.reserved} /> {say('stash-list.reserved')}
          </span>
        )}
        <span className={style.worth}>
          <Money amountMinor={row.valueMinor} />
        </span>
      </span>
      <span className={style.value}>
        <Money amountMinor={row.valueMinor} />
      </span>
    </>
  );
}
