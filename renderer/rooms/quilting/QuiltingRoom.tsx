/** The quilting map: lines of every quilted piece from its hem, whether they meet at the seams, and what they take up. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import { setQuiltingSpacing } from '../../../shared-core/plan/edits/edit.ts';
import { setStitchLength, startQuilting } from '../../../shared-core/plan/edits/quilted.ts';
import { orderSentences } from '../../../shared-core/plan/model/quilting-order-words.ts';
import { wholeSeamRing } from '../../../shared-core/quilting/lines.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { AdviceNotes } from '../../parts/notes/AdviceNotes.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { Meetings } from './Meetings.tsx';
import { Panels } from './Panels.tsx';
import { DirectionField, QuiltedPieceRow } from './QuiltedPieceRow.tsx';
import style from './QuiltingRoom.module.css';
import { TakeUp } from './TakeUp.tsx';

/** Drawings are as large as this lets the largest be. */
const drawingWidthPixels = 140;
const drawingHeightPixels = 260;

export function QuiltingRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  const lengthText = useLengthText();
  const start = usePlanChange();
  const spacing = usePlanChange();
  const stitch = usePlanChange();
  const plan = input?.plan ?? null;
  const map = useMemo(() => (plan ? quiltingMap(plan) : []), [plan]);
  if (!input || !plan) return null;
  if (!plan.quilting) {
    return (
      <>
        <RoomHead title={say('quilting-room.quilting')} />
        <EmptyState
          title={say('quilting-room.this-coat-is-not-quilted')}
          action={
            <Button
              look="main"
              onClick={() => void start.change((current) => startQuilting(current, lengthText))}
            >
              {say('quilting-room.quilt-this-coat')}
            </Button>
          }
        >
          {start.problem ?? say('quilting-room.give-it-lines-and-then-choose')}
        </EmptyState>
      </>
    );
  }
  const quilted = plan.pieces.flatMap((piece) => {
    const lines = map.find((each) => each.pieceId === piece.id);
    return lines ? [{ piece, lines }] : [];
  });
  const plain = plan.pieces.filter((piece) => piece.quilted === null);
  const boxes = quilted.map(({ piece }) => ringBox(wholeSeamRing(piece)));
  const mmPerPixel = Math.max(
    1,
    ...boxes.map((box) => (box.maxY - box.minY + 12) / drawingWidthPixels),
    ...boxes.map((box) => (box.maxX - box.minX + 12) / drawingHeightPixels),
  );
  const panels = estimate?.panels ?? [];
  const onPanels = new Set(panels.flatMap(({ pieces }) => pieces.map(({ pieceId }) => pieceId)));
  const stitchedMm =
    map
      .filter(({ pieceId }) => !onPanels.has(pieceId))
      .reduce((sum, piece) => sum + piece.sewnMm * piece.copyCount, 0) +
    panels.reduce((sum, panel) => sum + panel.stitchingMm * panel.count, 0);
  return (
    <>
      <RoomHead
        title={say('quilting-room.quilting')}
        lead={say('quilting-room.lines-are-measured-from-the-hem', {
          orderSentences: orderSentences(plan, lengthText).join(' '),
        })}
        actions={<Button onClick={() => window.print()}>{say('common.print')}</Button>}
      />
      <p className={style.onPaper}>
        {plan.name}
        {plan.size && say('quilting-room.size', { planCount: plan.size })}
      </p>
      <div className={style.choices}>
        <SettledField
          label={say('quilting-room.lines-apart-finished')}
          quantity="length"
          value={plan.quilting.spacingMm}
          aboveZero
          onSet={(mm) => void spacing.change((current) => setQuiltingSpacing(current, mm, lengthText))}
          problem={spacing.problem}
        />
        <SettledField
          label={say('quilting-room.stitch-length')}
          quantity="length"
          value={plan.quilting.stitchLengthMm}
          aboveZero
          onSet={(mm) => void stitch.change((current) => setStitchLength(current, mm, lengthText))}
          problem={stitch.problem}
        />
        <p className={style.total}>
          <span className="quiet small">{say('quilting-room.stitching-in-all')}</span>
          <Figure
            quantity="length"
            value={stitchedMm}
            options={{ unit: { metric: 'm', imperial: 'yd' }, digits: 1 }}
          />
        </p>
      </div>

      <AdviceNotes kinds={['batting']} />

      <Panels />

      <Meetings plan={plan} />

      <TakeUp />

      <section aria-labelledby="pieces">
        <h2 id="pieces" className={style.title}>
          {say('quilting-room.lines-by-piece')}
        </h2>
        {quilted.length > 0 && (
          <p className={style.lead}>{say('quilting-room.quilted-the-lines-lie-where-they')}</p>
        )}
        {quilted.length === 0 && (
          <p className="quiet">{say('quilting-room.no-piece-has-lines-yet-choose')}</p>
        )}
        <ul className={style.pieces}>
          {quilted.map(({ piece, lines }) => (
            <QuiltedPieceRow key={piece.id} piece={piece} quilted={lines} mmPerPixel={mmPerPixel} />
          ))}
        </ul>
      </section>

      {plain.length > 0 && (
        <section aria-labelledby="plain" className={style.plain}>
          <h2 id="plain" className={style.title}>
            {say('quilting-room.pieces-without-lines')}
          </h2>
          <ul className={style.plainPieces}>
            {plain.map((piece) => (
              <li key={piece.id}>
                <DirectionField piece={piece} />
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
