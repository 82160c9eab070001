/** The lengths of a lot, each drawn to one scale for the whole item: as long and as wide as it lies, flaws and all. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Item, LengthOnShelf } from '../../../../shared-core/stash/stash.ts';
import { useSystem } from '../../../client/workshop.ts';
import { amountText } from '../../../parts/figures/Amount.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { lengthText } from '../items/item-words.ts';
import style from './LengthStrips.module.css';

/** What the longest and the widest length of an item measure, so that all its lots share a scale. */
export interface StripScale {
  readonly longestMm: number;
  readonly widestMm: number;
}

const drawnWidthPx = 420;
const tallestPx = 46;
const shownAtFirst = 12;

export interface LengthStripsProps {
  readonly item: Item;
  readonly lengths: readonly LengthOnShelf[];
  readonly scale: StripScale;
}

export function LengthStrips({ item, lengths, scale }: LengthStripsProps) {
  const [isWhole, setIsWhole] = useState(false);
  const shown = isWhole ? lengths : lengths.slice(0, shownAtFirst);
  return (
    <>
      <ul className={style.strips}>
        {shown.map((length) => (
          <Strip key={length.id} item={item} length={length} scale={scale} />
        ))}
      </ul>
      {lengths.length > shown.length && (
        <Button look="quiet" onClick={() => setIsWhole(true)}>
          {say('length-strips.show-all-lengths', { lengthsCount: lengths.length })}
        </Button>
      )}
    </>
  );
}

function Strip({ item, length, scale }: { item: Item; length: LengthOnShelf; scale: StripScale }) {
  const system = useSystem();
  const pxPerMm = Math.min(drawnWidthPx / scale.longestMm, tallestPx / scale.widestMm);
  const drawn = { x: Math.max(2, length.onHandMm * pxPerMm), y: Math.max(2, length.widthMm * pxPerMm) };
  const reservedPx = Math.min(drawn.x, length.reservedMm * pxPerMm);
  return (
    <li className={style.strip}>
      <svg
        className={style.drawing}
        viewBox={`0 0 ${drawn.x + 2} ${drawn.y + 2}`}
        width={drawn.x + 2}
        height={drawn.y + 2}
        aria-hidden="true"
      >
        <defs>
          <pattern
            id={`kept-${length.id}`}
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path className={style.hatch} d="M0 0v6" />
          </pattern>
        </defs>
        <rect className={style.cloth} x="1" y="1" width={drawn.x} height={drawn.y} rx="1.5" />
        {reservedPx > 0 && (
          <rect
            x={1 + drawn.x - reservedPx}
            y="1"
            width={reservedPx}
            height={drawn.y}
            fill={`url(#kept-${length.id})`}
          />
        )}
        {length.flaws.map((flaw) => (
          <rect
            key={`${flaw.x} ${flaw.y}`}
            className={style.flaw}
            x={1 + Math.min(drawn.x - 4, flaw.x * pxPerMm)}
            y={1 + Math.min(drawn.y - 4, flaw.y * pxPerMm)}
            width={Math.max(4, flaw.widthX * pxPerMm)}
            height={Math.max(4, flaw.widthY * pxPerMm)}
          />
        ))}
      </svg>
      <span className={`${style.words} number`}>
        {lengthText(length, item, system)}
        {length.reservedMm > 0 && (
          <span className="quiet">{` ${say('length-strips.reserved', { amountText: amountText('cloth', length.reservedMm, system) })}`}</span>
        )}
        {length.flaws.length > 0 && (
          <span className={style.warn}>
            {' '}
            · {say('length-strips.flaws', { flawsCount: length.flaws.length })}
          </span>
        )}
      </span>
    </li>
  );
}
