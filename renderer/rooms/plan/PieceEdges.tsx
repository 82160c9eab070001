/** Edges of a piece with their lengths and allowances: each by itself, all at once, and the hem by its depth. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import {
  customaryAllowanceMm,
  hemEdge,
  setAllAllowances,
  setHemDepth,
} from '../../../shared-core/plan/edits/pieces/allowance.ts';
import { setAllowance } from '../../../shared-core/plan/edits/edit.ts';
import { edgeLengthMm } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { DraftField, draftOf } from '../../parts/forms/DraftField.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import type { ChangeProps } from './piece-change.ts';
import style from './PieceSheet.module.css';

export function PieceEdges({ piece, make }: { piece: Piece; make: ChangeProps['make'] }) {
  const lengthText = useLengthText();
  const hem = hemEdge(piece);
  const hemMm = piece.outline.edges.find((edge) => edge.name === hem)?.allowanceMm;
  const [all, setAll] = useState(() => draftOf(customaryAllowanceMm, lengthText(customaryAllowanceMm)));
  const allMm = all.misread === null ? all.value : null;
  return (
    <section className={style.edges}>
      <h3>{say('piece-edges.edges-and-allowances')}</h3>
      <DataTable
        rows={piece.outline.edges}
        keyOf={({ name }) => name}
        columns={[
          {
            head: say('piece-edges.edge'),
            cell: ({ name }) => (
              <>
                {name}
                {name === piece.foldEdge && <span className="quiet">{` ${say('piece-edges.fold')}`}</span>}
              </>
            ),
          },
          {
            head: say('common.length'),
            align: 'end',
            cell: ({ name }) => (
              <Figure
                quantity="length"
                value={edgeLengthMm(piece.outline, name)}
                options={{ unit: { metric: 'mm', imperial: 'in' } }}
              />
            ),
          },
          {
            head: say('piece-edges.allowance'),
            align: 'end',
            cell: ({ name, allowanceMm }) =>
              name === piece.foldEdge ? (
                <span className="quiet">{say('piece-edges.none')}</span>
              ) : (
                <SettledField
                  label={say('piece-edges.allowance-at-2', { name })}
                  isLabelHidden
                  quantity="length"
                  value={allowanceMm}
                  max={200}
                  onSet={(mm) => void make((plan) => setAllowance(plan, piece.id, name, mm, lengthText))}
                />
              ),
          },
        ]}
      />
      <form
        className={style.inline}
        onSubmit={(event) => {
          event.preventDefault();
          if (allMm !== null) void make((plan) => setAllAllowances(plan, piece.id, allMm, lengthText));
        }}
      >
        <DraftField
          label={say('piece-edges.allowance-for-all-edges')}
          quantity="length"
          draft={all}
          onChange={setAll}
          min={0}
        />
        <Button type="submit" disabled={allMm === null}>
          {say('piece-edges.set-all-edges')}
        </Button>
      </form>
      <div className={style.pair}>
        {hem !== null && hemMm !== undefined && (
          <SettledField
            label={say('piece-edges.hem-depth')}
            quantity="length"
            value={hemMm}
            max={200}
            hint={say('piece-edges.turned-up-at', { hem })}
            onSet={(mm) => void make((plan) => setHemDepth(plan, piece.id, mm, lengthText))}
          />
        )}
      </div>
    </section>
  );
}
