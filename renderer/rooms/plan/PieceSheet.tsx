/** One piece: how it is drawn and edged beside the changes a maker makes in the middle of the work. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { removePiece } from '../../../shared-core/plan/edits/edit.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { editEverySize } from '../../../shared-core/plan/edits/every-size.ts';
import type { StraightLine } from '../../../shared-core/plan/geometry/outline-cut.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { Sheet } from '../../parts/layout/Sheet.tsx';
import { ChangeCopy } from './changes/ChangeCopy.tsx';
import { ChangeCut } from './changes/ChangeCut.tsx';
import { ChangeFold } from './changes/ChangeFold.tsx';
import { ChangeGrain } from './changes/ChangeGrain.tsx';
import { ChangeLength } from './changes/ChangeLength.tsx';
import { ChangeSplit } from './changes/ChangeSplit.tsx';
import { ChangeWidth } from './changes/ChangeWidth.tsx';
import { cutWords } from './PieceCard.tsx';
import { PieceEdges } from './PieceEdges.tsx';
import style from './PieceSheet.module.css';
import type { Change } from './piece-change.ts';

/** isBySize: made in every size or in the one at hand, as the maker chooses; the others are always made in all. */
const changes = [
  { id: 'length', title: say('piece-sheet.longer-or-shorter'), Part: ChangeLength, isBySize: true },
  { id: 'width', title: say('piece-sheet.wider-or-narrower'), Part: ChangeWidth, isBySize: true },
  { id: 'split', title: say('piece-sheet.split-at-a-line'), Part: ChangeSplit, isBySize: false },
  { id: 'fold', title: say('piece-sheet.fold'), Part: ChangeFold, isBySize: false },
  { id: 'grain', title: say('piece-sheet.grain'), Part: ChangeGrain, isBySize: true },
  { id: 'cut', title: say('piece-sheet.plies-and-number'), Part: ChangeCut, isBySize: true },
  { id: 'copy', title: say('piece-sheet.copy-for-another-slot'), Part: ChangeCopy, isBySize: false },
] as const;

export function PieceSheet({ piece, onClose }: { piece: Piece; onClose: () => void }) {
  const { edit, input, undo, canUndo } = useCoat('edit', 'input', 'undo', 'canUndo');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  const [open, setOpen] = useState<string | null>('length');
  const [line, setLine] = useState<StraightLine | null>(null);
  const [isEverySize, setIsEverySize] = useState(true);
  // In the change that is open; fields beside it are saved as they are left.
  const [isTyped, setIsTyped] = useState(false);
  if (!input) return null;
  const make = async (change: Change): Promise<boolean> => {
    const answer = await edit(change);
    setProblems(answer.ok ? [] : answer.problems);
    setSaid(answer.ok ? answer.value : '');
    if (answer.ok) setIsTyped(false);
    return answer.ok;
  };
  const finish = async (change: Change) => {
    if (await make(change)) onClose();
  };
  const bySize = (change: Change): Change =>
    isEverySize ? (plan) => editEverySize(plan, piece.id, change) : change;
  const makeBySize = (change: Change) => make(bySize(change));
  const finishBySize = (change: Change) => finish(bySize(change));
  const otherSizes = (input.plan.sizes ?? []).map(({ size }) => size);
  const takeBack = async () => {
    const answer = await undo();
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) setSaid('');
  };
  return (
    <Sheet
      title={piece.name}
      isOpen
      isWide
      isTyped={isTyped}
      onClose={onClose}
      footer={
        <>
          <Button look="quiet" onClick={() => void finishBySize((plan) => removePiece(plan, piece.id))}>
            {say('piece-sheet.take-out-of-the-plan')}
          </Button>
          <Button look="main" onClick={onClose}>
            {say('piece-sheet.done')}
          </Button>
        </>
      }
    >
      <Problems problems={problems} />
      {said && (
        <div className={style.said} role="status">
          {said}
          {canUndo && (
            <Button look="quiet" onClick={() => void takeBack()}>
              {say('common.undo')}
            </Button>
          )}
        </div>
      )}
      <div className={style.columns}>
        <figure className={style.figure}>
          <div className={style.picture}>
            <PieceDrawing piece={piece} line={line} />
          </div>
          <figcaption className="quiet small">
            {sentenceCase(cutWords(piece))}
            {say('piece-sheet.solid-cut-line-dashed-green-seam')}
            {line && ` ${say('piece-sheet.dashed-red-where-the-change-is')}`}
          </figcaption>
        </figure>
        <div className={style.changes}>
          {otherSizes.length > 0 && (
            <div className={style.sizes}>
              <FlagField
                label={say('piece-sheet.change-every-size')}
                hint={say('piece-sheet.is-shown-beside-it-splits-folds', {
                  planCount: input.plan.size,
                  otherSizes: listed(otherSizes),
                })}
                value={isEverySize}
                onChange={setIsEverySize}
              />
            </div>
          )}
          {changes.map(({ id, title, Part, isBySize }) => (
            <section key={id} className={style.change}>
              <h3>
                <button
                  type="button"
                  className={`${style.opener} eased`}
                  aria-expanded={open === id}
                  onClick={() => {
                    setOpen(open === id ? null : id);
                    setIsTyped(false);
                  }}
                >
                  {title}
                </button>
              </h3>
              {open === id && (
                <div className={style.body} onChange={() => setIsTyped(true)}>
                  <Part
                    plan={input.plan}
                    piece={piece}
                    make={isBySize ? makeBySize : make}
                    finish={isBySize ? finishBySize : finish}
                    onLine={setLine}
                  />
                </div>
              )}
            </section>
          ))}
        </div>
        <PieceEdges piece={piece} make={makeBySize} />
      </div>
    </Sheet>
  );
}
