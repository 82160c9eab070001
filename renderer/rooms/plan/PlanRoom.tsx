/** The coat plan: how many coats, what fills each slot, and the pieces; every change is said and estimated at once. */
import { say } from '../../../shared-core/wording/say.ts';
import { type ReactNode, useState } from 'react';
import { setCoatCount, setQuiltingSpacing } from '../../../shared-core/plan/edits/edit.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { AdviceNotes } from '../../parts/notes/AdviceNotes.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { BandSheet } from './BandSheet.tsx';
import { PieceCard } from './PieceCard.tsx';
import { PieceSheet } from './PieceSheet.tsx';
import { PlanHeadSheet } from './PlanHeadSheet.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import style from './PlanRoom.module.css';
import { QuiltingOrder } from './QuiltingOrder.tsx';
import { Seams } from './Seams.tsx';
import { Sizes } from './Sizes.tsx';
import { SlotTable } from './SlotTable.tsx';
import { ShapeSheet } from './ShapeSheet.tsx';

/** patternFiles: the way in and out for files of pieces, another room's. */
export function PlanRoom({ patternFiles }: { patternFiles: ReactNode }) {
  const { input } = useCoat('input');
  const [openPiece, setOpenPiece] = useState<string | null>(null);
  const [isAdding, setIsAdding] = useState(false);
  const [isBinding, setIsBinding] = useState(false);
  const [isDescribing, setIsDescribing] = useState(false);
  if (!input) return null;
  const { plan } = input;
  const opened = plan.pieces.find((piece) => piece.id === openPiece);
  const cutCount = plan.pieces.reduce((sum, piece) => sum + piece.cutCount * plyTotal(piece), 0);
  return (
    <>
      <header className={style.header}>
        <div>
          <h1>{plan.name}</h1>
          <p className="quiet">
            {plan.size && `${say('plan-room.size', { planCount: plan.size })} `}
            {plan.pieces.length} {say('plan-room.pieces')} {cutCount} {say('plan-room.cut-for-one-coat')}{' '}
            <Button look="quiet" onClick={() => setIsDescribing(true)}>
              {say('plan-room.change-name-size-or-notes')}
            </Button>
          </p>
        </div>
        <Choices />
      </header>
      {plan.notes && <p className={style.notes}>{plan.notes}</p>}

      <section aria-labelledby="slots">
        <h2 id="slots" className={style.title}>
          {say('plan-room.slots')}
        </h2>
        <SlotTable />
        <AdviceNotes kinds={['pattern matching', 'one way', 'interfacing', 'batting']} />
      </section>

      <QuiltingOrder />

      <Sizes />

      <section aria-labelledby="pieces">
        <div className={`${style.header} ${style.piecesHead}`}>
          <h2 id="pieces">{say('plan-room.pieces-2')}</h2>
          <div className={style.row}>
            {patternFiles}
            {plan.pieces.length > 0 && (
              <Button onClick={() => setIsBinding(true)}>{say('plan-room.add-a-binding-or-a-rib')}</Button>
            )}
            <Button onClick={() => setIsAdding(true)}>{say('plan-room.add-a-shape')}</Button>
          </div>
        </div>
        {plan.pieces.length === 0 ? (
          <EmptyState
            title={say('plan-room.no-pieces-yet')}
            action={
              <Button look="main" onClick={() => setIsAdding(true)}>
                {say('plan-room.add-a-shape')}
              </Button>
            }
          >
            {say('plan-room.a-coat-needs-pieces-before-anything')}
          </EmptyState>
        ) : (
          <ul className={style.gallery}>
            {plan.pieces.map((piece) => (
              <PieceCard key={piece.id} piece={piece} plan={plan} onOpen={() => setOpenPiece(piece.id)} />
            ))}
          </ul>
        )}
      </section>
      <Seams plan={plan} />
      {opened && <PieceSheet key={opened.id} piece={opened} onClose={() => setOpenPiece(null)} />}
      {isDescribing && <PlanHeadSheet plan={plan} onClose={() => setIsDescribing(false)} />}
      {isBinding && <BandSheet onClose={() => setIsBinding(false)} />}
      {isAdding && <ShapeSheet onClose={() => setIsAdding(false)} />}
    </>
  );
}

function plyTotal(piece: { cutFrom: readonly { plyCount: number }[] }): number {
  return piece.cutFrom.reduce((sum, from) => sum + from.plyCount, 0);
}

/** Coats and quilting spacing: the two numbers that a maker turns most. */
function Choices() {
  const { input } = useCoat('input');
  const lengthText = useLengthText();
  const coats = usePlanChange();
  const spacing = usePlanChange();
  if (!input) return null;
  const { plan } = input;
  return (
    <div className={style.choices}>
      <SettledField
        label={say('common.coats')}
        quantity="count"
        value={plan.coatCount}
        onSet={(coatCount) => void coats.change((current) => setCoatCount(current, coatCount))}
        problem={coats.problem}
      />
      {plan.quilting && (
        <SettledField
          label={say('plan-room.quilting-lines-apart')}
          quantity="length"
          value={plan.quilting.spacingMm}
          onSet={(spacingMm) =>
            void spacing.change((current) => setQuiltingSpacing(current, spacingMm, lengthText))
          }
          problem={spacing.problem}
          aboveZero
        />
      )}
    </div>
  );
}
