/** What the coats need, slot by slot, whatever the shelf holds; and how each figure was got. */
import type { AmountNeed, Need, ShapesNeed } from '../../../shared-core/requirement/need.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import { totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
import { slotById } from '../../../shared-core/plan/coat-plan.ts';
import { coatTotal } from '../../../shared-core/plan/sizes.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Amount, clothLengthUnit } from '../../parts/Amount.tsx';
import { BasisNote } from '../../parts/BasisNote.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { KindMark } from '../../parts/KindMark.tsx';
import { Waiting } from '../../parts/Waiting.tsx';
import style from './NeedsRoom.module.css';

export function NeedsRoom() {
  const { input, estimate } = useCoat();
  if (!input) return null;
  const coatCount = coatTotal(input.plan);
  return (
    <>
      <header>
        <h1>Needs</h1>
        <p className={style.lead}>
          For {coatCount === 1 ? 'one coat' : `all ${coatCount} coats`}, before anything on the shelf is
          counted. Seam allowance, take-up of quilting and shrinkage are in the figures.
        </p>
      </header>
      {!estimate && <Waiting>Laying the pieces of each slot…</Waiting>}
      <ul className={style.needs}>
        {estimate?.requirement.map((need) => (
          <NeedRow key={need.slotId} need={need} />
        ))}
      </ul>
    </>
  );
}

function NeedRow({ need }: { need: Need }) {
  const { input } = useCoat();
  if (!input) return null;
  const slot = slotById(input.plan, need.slotId);
  const item = input.shelf.find((each) => each.item.id === slot.itemId)?.item;
  return (
    <li className={style.need}>
      <div>
        <h3 className={style.slot}>
          <KindMark kind={slot.kind} /> {slot.name}
        </h3>
        <p className="quiet small">{item?.name ?? 'nothing chosen yet'}</p>
      </div>
      {need.kind === 'shapes' ? <Shapes need={need} /> : <Parts need={need} slotKind={slot.kind} />}
      <BasisNote basis={need.basis} />
    </li>
  );
}

function Shapes({ need }: { need: ShapesNeed }) {
  const { estimate } = useCoat();
  const system = useSystem();
  const slotLay = estimate?.lays.find((each) => each.slotId === need.slotId);
  if (!slotLay) return <p className="quiet">No piece is cut from it yet.</p>;
  const cutCount = need.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
  return (
    <div>
      <p className={style.figure}>
        <Figure
          quantity="length"
          value={totalUsedMm(slotLay.result)}
          options={{ unit: clothLengthUnit, digits: 2 }}
        />
        <span className={style.of}>
          of{' '}
          <Figure
            quantity="length"
            value={slotLay.job.lengths[0]?.widthMm ?? 0}
            options={{ unit: { metric: 'cm', imperial: 'in' } }}
          />{' '}
          usable width
        </span>
      </p>
      <p className="quiet small">
        {cutCount} pieces of {need.shapes.length} shapes,{' '}
        <Figure
          quantity="area"
          value={need.areaMm2}
          options={{ unit: { metric: 'm2', imperial: 'yd2' }, digits: 2 }}
        />
        . {layWords(slotLay.result, system)}.
      </p>
    </div>
  );
}

function Parts({ need, slotKind }: { need: AmountNeed; slotKind: Parameters<typeof Amount>[0]['kind'] }) {
  return (
    <div>
      <p className={style.figure}>
        <Amount
          kind={slotKind}
          amount={
            need.counted === 'pieces' || need.counted === 'thread' ? Math.ceil(need.amount) : need.amount
          }
        />
        {need.wantedLengthMm !== null && (
          <span className={style.of}>
            each <Figure quantity="length" value={need.wantedLengthMm} /> long at least
          </span>
        )}
      </p>
      {need.parts.length > 1 && (
        <details className="small">
          <summary className={style.summary}>How it adds up</summary>
          <ul className={style.parts}>
            {need.parts.map((part) => (
              <li key={part.what}>
                <span>{part.what}</span>
                <Amount kind={slotKind} amount={Math.round(part.amount * 10) / 10} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
