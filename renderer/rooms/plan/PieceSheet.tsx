/** One piece: its edges and allowances, plies, and the changes a maker makes in the middle of the work. */
import { useState } from 'react';
import type { Outcome, Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan, Piece } from '../../../shared-core/plan/coat-plan.ts';
import { removePiece, setAllowance, setPlies } from '../../../shared-core/plan/edit.ts';
import type { Edited } from '../../../shared-core/plan/edited.ts';
import {
  grainExtent,
  lengthenPieces,
  piecesSewnAcross,
  usualLineRatio,
} from '../../../shared-core/plan/lengthen.ts';
import { edgeLengthMm } from '../../../shared-core/plan/outline-ring.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useLengthText } from '../../client/length-text.ts';
import { Button } from '../../parts/Button.tsx';
import { FlagField, QuantityField } from '../../parts/Field.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { PieceDrawing } from '../../parts/PieceDrawing.tsx';
import { Problems } from '../../parts/Problems.tsx';
import { SettledField } from '../../parts/SettledField.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import table from '../../parts/table.module.css';
import { cutWords } from './PieceCard.tsx';
import style from './PlanRoom.module.css';

type Change = (plan: CoatPlan) => Outcome<Edited>;

export function PieceSheet({ piece, onClose }: { piece: Piece; onClose: () => void }) {
  const { edit } = useCoat();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const make = async (change: Change): Promise<boolean> => {
    const answer = await edit(change);
    setProblems(answer.ok ? [] : answer.problems);
    return answer.ok;
  };
  return (
    <Sheet
      title={piece.name}
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button
            look="quiet"
            onClick={async () => (await make((plan) => removePiece(plan, piece.id))) && onClose()}
          >
            Take out of the plan
          </Button>
          <Button look="main" onClick={onClose}>
            Done
          </Button>
        </>
      }
    >
      <Problems problems={problems} />
      <div className={style.large}>
        <PieceDrawing piece={piece} />
      </div>
      <p className="quiet">{cutWords(piece)}. Solid: cut line. Dashed: seam line. The arrow is the grain.</p>
      <Lengthen piece={piece} make={make} onDone={onClose} />
      <Plies piece={piece} make={make} />
      <Edges piece={piece} make={make} />
    </Sheet>
  );
}

interface PartProps {
  readonly piece: Piece;
  readonly make: (change: Change) => Promise<boolean>;
}

function Lengthen({ piece, make, onDone }: PartProps & { onDone: () => void }) {
  const { input } = useCoat();
  const lengthText = useLengthText();
  const [byMm, setByMm] = useState<number | null>(null);
  const [isTogether, setIsTogether] = useState(true);
  if (!input) return null;
  const { hemX, topX } = grainExtent(piece);
  const aboveHemMm = (topX - hemX) * usualLineRatio;
  const together = piecesSewnAcross(input.plan, piece.id, aboveHemMm);
  const names = together
    .filter((id) => id !== piece.id)
    .map((id) => input.plan.pieces.find((each) => each.id === id)?.name);
  const apply = async (sign: 1 | -1) => {
    if (byMm === null) return;
    const ids = isTogether ? together : [piece.id];
    if (await make((plan) => lengthenPieces(plan, ids, sign * byMm, aboveHemMm, lengthText))) onDone();
  };
  return (
    <section className={style.group}>
      <h3>Lengthen or shorten</h3>
      <div className={style.pair}>
        <QuantityField
          label="By"
          quantity="length"
          value={null}
          onChange={({ value }) => setByMm(value)}
          aboveZero
          hint="at the lower third, across the grain"
        />
      </div>
      {names.length > 0 && (
        <FlagField
          label="Together with what is sewn to it"
          hint={names.join(', ')}
          value={isTogether}
          onChange={setIsTogether}
        />
      )}
      <div className={style.row}>
        <Button disabled={!byMm} onClick={() => void apply(1)}>
          Lengthen
        </Button>
        <Button disabled={!byMm} onClick={() => void apply(-1)}>
          Shorten
        </Button>
      </div>
    </section>
  );
}

function Plies({ piece, make }: PartProps) {
  const { input } = useCoat();
  const slots = input?.plan.slots.filter((slot) => slot.kind === 'cloth' || slot.kind === 'batting') ?? [];
  return (
    <section className={style.group}>
      <h3>Plies</h3>
      <div className={style.pair}>
        {slots.map((slot) => (
          <SettledField
            key={slot.id}
            label={slot.name}
            quantity="count"
            value={piece.cutFrom.find((from) => from.slotId === slot.id)?.plyCount ?? 0}
            max={20}
            onSet={(plyCount) => void make((plan) => setPlies(plan, piece.id, slot.id, plyCount))}
          />
        ))}
      </div>
    </section>
  );
}

function Edges({ piece, make }: PartProps) {
  const lengthText = useLengthText();
  return (
    <section className={style.group}>
      <h3>Edges</h3>
      <table className={table.table}>
        <thead>
          <tr>
            <th>Edge</th>
            <th className={table.amount}>Length</th>
            <th className={table.amount}>Allowance</th>
          </tr>
        </thead>
        <tbody>
          {piece.outline.edges.map((edge) => (
            <tr key={edge.name}>
              <td>
                {edge.name}
                {edge.name === piece.foldEdge && <span className="quiet"> (fold)</span>}
              </td>
              <td className={table.amount}>
                <Figure quantity="length" value={edgeLengthMm(piece.outline, edge.name)} />
              </td>
              <td className={table.amount}>
                {edge.name === piece.foldEdge ? (
                  <span className="quiet">none</span>
                ) : (
                  <SettledField
                    label={`Allowance at ${edge.name}`}
                    isLabelHidden
                    quantity="length"
                    value={edge.allowanceMm}
                    max={500}
                    onSet={(mm) =>
                      void make((plan) => setAllowance(plan, piece.id, edge.name, mm, lengthText))
                    }
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
