/** Every piece beside the others, all to one scale. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { PieceDrawing } from '../../parts/drawing/PieceDrawing.tsx';
import style from './DraftRoom.module.css';

/** So that the longest coat still stands in the window beside its other pieces. */
const mmPerPixel = 4.6;

export function PieceSheetDrawing({ pieces }: { pieces: readonly Piece[] }) {
  return (
    <section className={style.panel} aria-labelledby="drawn">
      <h2 id="drawn">{say('piece-sheet-drawing.pieces-to-one-scale', { piecesCount: pieces.length })}</h2>
      <ul className={style.pieces}>
        {pieces.map((piece) => (
          <li key={piece.id} className={style.piece}>
            <PieceDrawing piece={piece} mmPerPixel={mmPerPixel} />
            <span>
              {piece.name}
              <span className={style.cut}>
                {piece.foldEdge
                  ? say('piece-sheet-drawing.on-the-fold')
                  : piece.cutCount > 1
                    ? say('piece-sheet-drawing.cut', { cutCount: piece.cutCount })
                    : say('piece-sheet-drawing.cut-1')}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
