/** Both lays in figures, and whether the one on the table can be cut. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type SlotLay, totalUsedMm } from '../../../../shared-core/lay/plan-lay.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import { useSystem } from '../../../client/workshop.ts';
import { clothLengthUnit } from '../../../parts/figures/Amount.tsx';
import style from './HandTable.module.css';
import { finishSeconds, type HandTable } from './useHandTable.ts';

export interface HandWordsProps {
  readonly table: HandTable;
  /** The lay that the search had found. */
  readonly found: SlotLay;
  readonly isBeneath: boolean;
  readonly onBeneath: (isBeneath: boolean) => void;
}

export function HandWords({ table, found, isBeneath, onBeneath }: HandWordsProps) {
  const system = useSystem();
  const { laid, clashing } = table;
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothLengthUnit, digits: 3 });
  const foundMm = totalUsedMm(found.result);
  const differenceMm = totalUsedMm(laid) - foundMm;
  const difference = show(Math.abs(differenceMm));
  return (
    <>
      <p className={`${style.words} number`} data-testid="hand-words">
        {say('hand-words.by-hand')} {show(totalUsedMm(laid))}
        {found.washed && ` ${say('hand-words.of-washed-cloth')}`}, {Math.floor(laid.utilisation * 100)}{' '}
        {say('hand-words.of-the-cloth-used-found-by')} {show(foundMm)}
        {Math.abs(differenceMm) >= 0.5 &&
          say('hand-words.yours-is-longer', { difference, ifDifferenceMm: differenceMm < 0 ? 'yes' : 'no' })}
        .
        <label className={style.compare}>
          <input type="checkbox" checked={isBeneath} onChange={(event) => onBeneath(event.target.checked)} />
          {say('hand-words.show-the-found-lay-beneath')}
        </label>
      </p>
      <p className={style.state} data-tone={clashing.size > 0 ? 'short' : 'plain'} role="status">
        {stateWords(table)}
      </p>
    </>
  );
}

function stateWords({ isFinishing, problem, clashing, lay }: HandTable): string {
  if (isFinishing) return say('hand-words.laying-the-rest-for-s', { finishSeconds });
  if (problem !== null) return problem;
  if (clashing.size > 0)
    return say('hand-words.pieces-lie-where-they-cannot-be', { clashingCount: clashing.size });
  const asideCount = lay.aside.reduce((sum, { count }) => sum + count, 0);
  return asideCount === 0
    ? say('hand-words.every-piece-can-be-cut-where')
    : say('hand-words.every-piece-on-the-table-can', { asideCount });
}
