/** What the coat weighs, slot by slot, and what is missing for a whole figure. */
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import type { FinishedCoat } from '../../../shared-core/requirement/finished/finished-coat.ts';
import type { MassLine } from '../../../shared-core/requirement/finished/mass.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import table from '../../parts/tables/table.module.css';
import style from './FinishedRoom.module.css';

const small = { unit: { metric: 'g', imperial: 'oz' }, digits: 1 } as const;

export function WeightBySlot({ coat }: { coat: FinishedCoat }) {
  const { mass } = coat;
  return (
    <section aria-labelledby="weight" className={style.section}>
      <h2 id="weight">Weight by slot</h2>
      <table className={`${table.table} ${style.narrow}`}>
        <thead>
          <tr>
            <th scope="col">Slot</th>
            <th scope="col">Material</th>
            <th scope="col" className={table.amount}>
              In one coat
            </th>
          </tr>
        </thead>
        <tbody>
          {mass.lines.map((line) => (
            <Row key={line.slotId} line={line} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td colSpan={2}>{mass.isComplete ? 'Together' : 'Together, what is known'}</td>
            <td className={table.amount}>
              <Figure quantity="mass" value={mass.knownG} options={small} />
            </td>
          </tr>
        </tfoot>
      </table>
      <BasisNote basis={[...mass.basis, ...(coat.packed ? [coat.packed.basis] : [])]} />
    </section>
  );
}

function Row({ line }: { line: MassLine }) {
  const { input } = useCoat('input');
  if (!input) return null;
  const { itemId } = slotById(input.plan, line.slotId);
  const item = itemById(input, itemId);
  return (
    <tr>
      <td>{sentenceCase(line.slotName)}</td>
      <td>{item ? <a href={routeHash({ kind: 'stash', itemId })}>{item.name}</a> : 'nothing chosen'}</td>
      <td className={table.amount}>
        {line.massG === null ? (
          <span className="small quiet">{item ? 'no weight written down' : 'not known'}</span>
        ) : (
          <Figure quantity="mass" value={line.massG} options={small} />
        )}
      </td>
    </tr>
  );
}
