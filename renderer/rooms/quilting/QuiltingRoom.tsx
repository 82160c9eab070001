/** The quilting map: lines of every quilted piece from its hem, whether they meet at the seams, and what they take up. */
import { useMemo, useState } from 'react';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { setQuiltingSpacing } from '../../../shared-core/plan/edit.ts';
import { meetingReport } from '../../../shared-core/quilting/meeting.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useLengthText } from '../../client/length-text.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { RoomHead } from '../../parts/RoomHead.tsx';
import { SettledField } from '../../parts/SettledField.tsx';
import table from '../../parts/table.module.css';
import { QuiltedPieceRow } from './QuiltedPieceRow.tsx';
import style from './QuiltingRoom.module.css';
import { TakeUp } from './TakeUp.tsx';

export function QuiltingRoom() {
  const { input, edit } = useCoat();
  const lengthText = useLengthText();
  const [problem, setProblem] = useState<string | null>(null);
  const plan = input?.plan ?? null;
  const map = useMemo(() => (plan ? quiltingMap(plan) : []), [plan]);
  const meetings = useMemo(() => (plan ? meetingReport(plan) : []), [plan]);
  if (!input || !plan) return null;
  if (!plan.quilting) {
    return (
      <>
        <RoomHead title="Quilting" />
        <EmptyState title="This coat is not quilted">Its plan names no distance of lines.</EmptyState>
      </>
    );
  }
  const apart = meetings.filter((meeting) => !meeting.meets);
  const setSpacing = async (spacingMm: number) => {
    const answer = await edit((current) => setQuiltingSpacing(current, spacingMm, lengthText));
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  return (
    <>
      <RoomHead
        title="Quilting"
        lead="Lines are measured from the hem, so that they meet where pieces are sewn together. Quilt first, then cut to the outline."
        actions={<Button onClick={() => window.print()}>Print</Button>}
      />
      <div className={style.spacing}>
        <SettledField
          label="Lines apart, finished"
          quantity="length"
          value={plan.quilting.spacingMm}
          aboveZero
          onSet={(spacingMm) => void setSpacing(spacingMm)}
          problem={problem}
        />
      </div>

      <section aria-labelledby="meeting">
        <h2 id="meeting" className={style.title}>
          Where they meet
        </h2>
        {meetings.length === 0 && <p className="quiet">No two quilted pieces are sewn together yet.</p>}
        {meetings.length > 0 && apart.length === 0 && (
          <p>Every line meets its partner, at all {meetings.length} seams.</p>
        )}
        <table className={`${table.table} ${style.meetings}`}>
          <thead>
            <tr>
              <th>Seam</th>
              <th className={table.amount}>Apart by at most</th>
            </tr>
          </thead>
          <tbody>
            {meetings.map((meeting) => (
              <tr key={`${meeting.seamId} ${meeting.a.pieceId} ${meeting.b.pieceId}`}>
                <td>{meeting.says}</td>
                <td className={table.amount}>
                  <Figure
                    quantity="length"
                    value={meeting.largestGapMm}
                    options={{ unit: { metric: 'mm', imperial: 'in' }, digits: 1 }}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>

      <TakeUp />

      <section aria-labelledby="pieces">
        <h2 id="pieces" className={style.title}>
          Lines by piece
        </h2>
        <ul className={style.pieces}>
          {plan.pieces.map((piece) => {
            const quilted = map.find((each) => each.pieceId === piece.id);
            return quilted ? <QuiltedPieceRow key={piece.id} piece={piece} quilted={quilted} /> : null;
          })}
        </ul>
      </section>
    </>
  );
}
