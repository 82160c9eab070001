/** What is taken of each length or lot, drawn to one scale: used, left, and what is missing. */
import { say } from '../../../shared-core/wording/say.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { Use, SlotCover } from '../../../shared-core/cover/slot-cover.ts';
import { keptOf, shortOf } from '../../../shared-core/cover/held-back.ts';
import { type ItemKind, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { type ItemOnShelf, lengthName } from '../../../shared-core/stash/stash.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText } from '../../parts/figures/Amount.tsx';
import style from './CoverRoom.module.css';

const drawnPx = 400;

export function LengthsUsed({
  slotCover,
  shelf,
  kind,
}: {
  slotCover: SlotCover;
  shelf: ItemOnShelf;
  kind: ItemKind;
}) {
  const system = useSystem();
  const show = (amount: number) => amountText(kind, amount, system);
  // Less than a finger's breadth of cloth is nothing that can be used.
  const leftWords = (left: number) =>
    left < (kindRecords[kind].hasLengths ? 10 : 0.05)
      ? say('lengths-used.nothing-left')
      : say('lengths-used.left', { show: show(left) });
  const { shortage } = slotCover;
  const missing = shortage ? shortOf(shortage) : 0;
  const longest = Math.max(missing, ...slotCover.uses.map((use) => use.free), 1e-6);
  return (
    <ul className={style.strips} aria-label={say('lengths-used.what-is-used')}>
      {slotCover.uses.map((use) => (
        <li key={use.lengthId ?? use.lotId} className={style.strip}>
          <svg viewBox={`0 0 ${drawnPx} 14`} preserveAspectRatio="none" aria-hidden="true">
            <rect
              className={style.left}
              x="0.5"
              y="0.5"
              width={Math.max(1, (use.free / longest) * (drawnPx - 1))}
              height="13"
            />
            {use.amount > 0 && (
              <rect
                className={style.used}
                width={Math.max(1, (use.amount / longest) * drawnPx)}
                height="14"
              />
            )}
          </svg>
          <span className="number">
            {placeWords(use, shelf)}:{' '}
            {use.amount > 0 && `${say('lengths-used.used', { show: show(use.amount) })} `}
            {use.marginAmount !== undefined &&
              `${say('lengths-used.margin', { show: show(use.marginAmount) })} `}
            {leftWords(use.free - keptOf(use))}
          </span>
        </li>
      ))}
      {missing > 0 && (
        <li className={style.strip}>
          <svg viewBox={`0 0 ${drawnPx} 14`} preserveAspectRatio="none" aria-hidden="true">
            <rect
              className={style.short}
              x="0.5"
              y="0.5"
              width={Math.max(1, (missing / longest) * (drawnPx - 1))}
              height="13"
            />
          </svg>
          <span className="number">
            {say('lengths-used.missing')} {show(missing)}
            {shortage?.marginAmount !== undefined &&
              say('lengths-used.of-it-margin', { show: show(shortage.marginAmount) })}
          </span>
        </li>
      )}
    </ul>
  );
}

function placeWords(use: Use, shelf: ItemOnShelf): string {
  const lot = shelf.lots.find((candidate) => candidate.id === use.lotId);
  if (!lot) return say('lengths-used.lot');
  const length = lot.lengths.find((candidate) => candidate.id === use.lengthId);
  const from = say('lengths-used.lot-of', { receivedOn: dayWords(lot.receivedOn) });
  const dyeLot = lot.dyeLot && say('lengths-used.dye-lot', { dyeLot: lot.dyeLot });
  return length ? `${sentenceCase(lengthName(length))}, ${from}${dyeLot}` : `${sentenceCase(from)}${dyeLot}`;
}
