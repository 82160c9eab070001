/** What a length on the shelf could still carry: single pieces of the coats at hand, each drawn where it fits. */
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import {
  couldCarry,
  type CoatAtHand,
  type Carried,
  type CarriedPiece,
} from '../../../../shared-core/cover/could-carry.ts';
import { slotItems } from '../../../../shared-core/flow/sources.ts';
import { ringBox } from '../../../../shared-core/geometry/ring.ts';
import { ringPath } from '../../../../shared-core/lay/lay-svg.ts';
import { sentenceCase } from '../../../../shared-core/measure/text/sentence-case.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { listed } from '../../../../shared-core/wording/listed.ts';
import type { ItemOnShelf } from '../../../../shared-core/stash/stash.ts';
import { readTogether, useRead, useReads } from '../../../client/queries/reads.ts';
import { routeHash } from '../../../client/route.ts';
import { useSystem } from '../../../client/workshop.ts';
import { ChoiceField } from '../../../parts/forms/Field.tsx';
import { Button } from '../../../parts/forms/Button.tsx';
import { ReadProblems } from '../../../parts/notes/ReadProblems.tsx';
import { DataTable } from '../../../parts/tables/DataTable.tsx';
import { lengthText } from '../items/item-words.ts';
import style from './CouldCarry.module.css';

/** Plans that are looked at: those that were changed last, which stand first in their list. */
const maxCoats = 12;
const shownAtFirst = 8;

export function CouldCarry({ shelf }: { shelf: ItemOnShelf }) {
  const system = useSystem();
  const { coats, read } = useCoatsAtHand();
  // Remnants are what one asks about, and the shortest first.
  const lengths = shelf.lots
    .flatMap((lot) => lot.lengths)
    .filter((length) => length.onHandMm > 0)
    .sort((a, b) => a.onHandMm * a.widthMm - b.onHandMm * b.widthMm);
  const [chosen, setChosen] = useState('');
  const length = lengths.find(({ id }) => id === chosen) ?? lengths[0];
  if (!length) return null;
  return (
    <div className={style.carry}>
      <ReadProblems read={read} />
      {lengths.length > 1 && (
        <ChoiceField
          label={say('common.length')}
          value={length.id}
          options={lengths.map((each) => ({
            value: each.id as string,
            label: lengthText(each, shelf.item, system),
          }))}
          onChange={setChosen}
        />
      )}
      {coats && (
        <Pieces
          key={length.id}
          carried={couldCarry(shelf, length.id, coats)}
          isWithoutCoats={coats.length === 0}
        />
      )}
    </div>
  );
}

function Pieces({ carried, isWithoutCoats }: { carried: Carried | null; isWithoutCoats: boolean }) {
  const [isWhole, setIsWhole] = useState(false);
  if (isWithoutCoats) return <p className="quiet">{say('could-carry.no-coat-is-planned-yet-whose')}</p>;
  if (!carried) return <p className="quiet">{say('could-carry.nothing-of-this-length-is-free')}</p>;
  const { free, pieces, lookedAt } = carried;
  if (pieces.length === 0) {
    return (
      <p className="quiet">
        {lookedAt === 0
          ? say('could-carry.the-coats-at-hand-have-no')
          : say('could-carry.none-of-the-pieces-of-the', { lookedAt })}
      </p>
    );
  }
  const shown = isWhole ? pieces : pieces.slice(0, shownAtFirst);
  return (
    <>
      <p className="quiet">
        {say('could-carry.of-pieces-fit-each-by-itself', { piecesCount: pieces.length, lookedAt })}
      </p>
      <ul className={style.pieces} aria-label={say('could-carry.pieces-that-fit')}>
        {shown.map((piece) => (
          <li key={keyOf(piece)} className={style.piece}>
            <PieceOnLength free={free} piece={piece} />
            <span>{piece.pieceName}</span>
            <span className="quiet small">
              {say('could-carry.of', {
                slotName: sentenceCase(piece.uses[0]?.slot.name ?? ''),
                uses: listed(piece.uses.map(({ plan }) => plan.name)),
              })}
            </span>
          </li>
        ))}
      </ul>
      {pieces.length > shown.length && (
        <Button look="quiet" onClick={() => setIsWhole(true)}>
          {say('could-carry.show-all-pieces', { piecesCount: pieces.length })}
        </Button>
      )}
      <details className={style.figures}>
        <summary>{say('could-carry.in-figures')}</summary>
        <PieceTable pieces={pieces} />
      </details>
    </>
  );
}

const keyOf = ({ pieceName, uses, alongMm, acrossMm }: CarriedPiece) =>
  `${pieceName} ${uses[0]?.slot.id} ${alongMm} ${acrossMm}`;

/**
 * The free part of the length with its flaws, and the piece on it with its grain. A length wider than long is
 * drawn lying on its side, so that pieces are as large as the room allows.
 */
function PieceOnLength({ free, piece }: { free: Carried['free']; piece: CarriedPiece }) {
  // Of a long roll only as much is drawn as tells how large the piece is on it.
  const lengthMm = Math.min(free.lengthMm, Math.max(free.widthMm * 1.6, piece.alongMm));
  const isCutOff = lengthMm < free.lengthMm;
  const isOnSide = free.widthMm > lengthMm;
  const [acrossPx, downPx] = isOnSide ? [free.widthMm, lengthMm] : [lengthMm, free.widthMm];
  const box = ringBox(piece.ring);
  const grainY = (box.minY + box.maxY) / 2;
  // The cloth's y runs up and a drawing's runs down; a quarter turn shows no piece as its mirror image.
  const transform = isOnSide ? 'matrix(0 1 1 0 0 0)' : `matrix(1 0 0 -1 0 ${free.widthMm})`;
  return (
    <svg className={style.drawing} viewBox={`-4 -4 ${acrossPx + 8} ${downPx + 8}`} aria-hidden="true">
      <g transform={transform}>
        <rect className={style.cloth} width={lengthMm} height={free.widthMm} />
        {isCutOff && <path className={style.goesOn} d={`M${lengthMm} 0V${free.widthMm}`} />}
        {free.flaws.map((flaw) => (
          <rect
            key={`${flaw.x} ${flaw.y}`}
            className={style.flaw}
            x={flaw.x}
            y={flaw.y}
            width={flaw.widthX}
            height={flaw.widthY}
          />
        ))}
        <path className={style.outline} d={ringPath(piece.ring)} />
        <path
          className={style.grain}
          d={`M${box.minX + piece.alongMm * 0.2} ${grainY}H${box.maxX - piece.alongMm * 0.2}`}
        />
      </g>
    </svg>
  );
}

function PieceTable({ pieces }: { pieces: readonly CarriedPiece[] }) {
  const system = useSystem();
  const length = (mm: number) => showQuantity('length', mm, { system });
  return (
    <DataTable
      rows={pieces}
      keyOf={keyOf}
      columns={[
        { head: say('common.piece'), cell: ({ pieceName }) => pieceName },
        {
          head: say('could-carry.coat-and-slot'),
          cell: ({ uses }) =>
            uses.map(({ plan, slot, isOfItem }) => (
              <div key={`${plan.id} ${slot.id}`}>
                <a href={routeHash({ kind: 'coat', planId: plan.id, step: 'cover' })}>{plan.name}</a>,{' '}
                {slot.name}
                {!isOfItem && (
                  <span className="quiet small">{` ${say('could-carry.not-planned-from-this')}`}</span>
                )}
              </div>
            )),
        },
        {
          head: say('could-carry.along'),
          align: 'end',
          isNumber: true,
          cell: ({ alongMm }) => length(alongMm),
        },
        {
          head: say('could-carry.across'),
          align: 'end',
          isNumber: true,
          cell: ({ acrossMm }) => length(acrossMm),
        },
      ]}
    />
  );
}

/** Plans with what fills their slots; null until they are read. One that is refused is left out. */
function useCoatsAtHand() {
  const plans = useRead('listPlans', {});
  const inputs = useReads(
    'flowInput',
    (plans.data?.rows ?? []).slice(0, maxCoats).map(({ id }) => ({ planId: id })),
  );
  const isRead = plans.data && inputs.every(({ data, problems }) => data || problems.length > 0);
  const coats = isRead
    ? inputs.flatMap(({ data }): CoatAtHand[] => (data ? [{ plan: data.plan, items: slotItems(data) }] : []))
    : null;
  return { coats, read: readTogether([plans, ...inputs]) };
}
