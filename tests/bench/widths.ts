/**
 * The classic table "yards needed by cloth width" beside real lays of the demo coat's pieces:
 * node tests/bench/widths.ts [--seconds 3] [--seed 1] [--json]
 *
 * For each slot one coat is laid on cloth of each width of the table, opened flat, every lay checked. From the lay at
 * 45 in, the table and the rule of equal area say what the other widths should need. Lengths in mm and yd.
 */
import { parseArgs } from 'node:util';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { endlessLength, layJob, totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import type { ShapesNeed } from '../../shared-core/requirement/need.ts';
import { requirement } from '../../shared-core/requirement/requirement.ts';
import {
  sameAreaLengthMm,
  tableLengthMm,
  widthTableExtraYd,
  widthTableWidthsIn,
} from '../outside/width-table.ts';
import { measuredDemo } from './instances/demo-plan.ts';

const mmPerIn = 25.4;
const mmPerYd = 914.4;
/** The width that pattern envelopes name first. */
const fromIn = 45;
interface Cloth {
  readonly name: string;
  readonly slotId: string;
  readonly isOneWay: boolean;
}

/** What is laid: a slot of the coat, with its pieces turned end for end or all one way, as a nap wants them. */
const cloths: readonly Cloth[] = [
  { name: 'shell', slotId: 'shell', isOneWay: false },
  { name: 'shell, one way', slotId: 'shell', isOneWay: true },
  { name: 'body lining', slotId: 'body-lining', isOneWay: false },
  { name: 'batting', slotId: 'batting', isOneWay: false },
];

interface Row {
  readonly cloth: string;
  readonly widthIn: number;
  readonly laidMm: number;
  readonly laidYd: number;
  /** No lay can be shorter: area over width, or the longest piece. */
  readonly floorMm: number;
  readonly utilisationPercent: number;
  /** What the table says from the lay at 45 in, a quarter yard more for one-way cloth; null where it does not reach. */
  readonly tableYd: number | null;
  /** How much longer the lay is than the table says, in per cent of the table; below 0 it is shorter. */
  readonly overTablePercent: number | null;
  readonly sameAreaYd: number;
  readonly isValid: boolean;
}

const demo = measuredDemo();
const plan = { ...demo.plan, coatCount: 1 };
const items = new Map(
  plan.slots.flatMap((slot) => {
    const item = demo.items.find((one) => one.id === slot.itemId);
    return item === undefined ? [] : [[slot.id, item] as const];
  }),
);

function laid(need: ShapesNeed, widthIn: number, seconds: number, seed: number) {
  // The item is left out: the table speaks of cloth without nap or repeat, and of whole widths.
  const lengths = [endlessLength('roll', widthIn * mmPerIn, undefined)];
  const job = layJob(need, lengths, plan.clearanceMm, undefined, seed);
  const result = lay(job, { seconds, iterations: null }, { clock: () => performance.now() });
  return { result, isValid: checkLay(job, result).length === 0 && result.unplaced.length === 0 };
}

function cutNeed({ slotId, isOneWay }: Cloth): ShapesNeed {
  const need = requirement(plan, items).find((one) => one.slotId === slotId);
  if (need?.kind !== 'shapes') throw new Error(`the demo coat has no ${slotId} to cut`);
  return isOneWay ? { ...need, shapes: need.shapes.map((shape) => ({ ...shape, turnsDeg: [0] })) } : need;
}

/** The lay at 45 in that the table starts from is that of cloth without a nap, as the table has it. */
function measure(cloth: Cloth, seconds: number, seed: number): Row[] {
  const need = cutNeed(cloth);
  const lays = widthTableWidthsIn.map((widthIn) => ({ widthIn, ...laid(need, widthIn, seconds, seed) }));
  const bothWays = cloth.isOneWay
    ? laid(cutNeed({ ...cloth, isOneWay: false }), fromIn, seconds, seed)
    : lays.find(({ widthIn }) => widthIn === fromIn)!;
  const baseMm = totalUsedMm(bothWays.result);
  return lays.map(({ widthIn, result, isValid }): Row => {
    const laidMm = totalUsedMm(result);
    const plainMm = tableLengthMm(baseMm, fromIn * mmPerIn, widthIn * mmPerIn);
    const tableMm = plainMm === null ? null : plainMm + (cloth.isOneWay ? widthTableExtraYd * mmPerYd : 0);
    return {
      cloth: cloth.name,
      widthIn,
      laidMm: Math.round(laidMm),
      laidYd: Number((laidMm / mmPerYd).toFixed(3)),
      floorMm: Math.round(result.floorMm),
      utilisationPercent: Number((result.utilisation * 100).toFixed(1)),
      tableYd: tableMm === null ? null : tableMm / mmPerYd,
      overTablePercent: tableMm === null ? null : Number(((laidMm / tableMm - 1) * 100).toFixed(1)),
      sameAreaYd: Number(
        (sameAreaLengthMm(baseMm, fromIn * mmPerIn, widthIn * mmPerIn) / mmPerYd).toFixed(3),
      ),
      isValid,
    };
  });
}

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '3' },
    seed: { type: 'string', default: '1' },
    json: { type: 'boolean', default: false },
  },
});
const rows = cloths.flatMap((cloth) => measure(cloth, Number(values.seconds), Number(values.seed)));
if (values.json) {
  process.stdout.write(
    `${JSON.stringify({ fromWidthIn: fromIn, secondsEach: Number(values.seconds), rows }, null, 1)}\n`,
  );
} else {
  for (const row of rows) {
    const table = row.tableYd === null ? 'beyond the table' : `table ${row.tableYd.toFixed(3)} yd`;
    const over =
      row.overTablePercent === null
        ? ''
        : `, ${Math.abs(row.overTablePercent)} % ${row.overTablePercent < 0 ? 'under' : 'over'} it`;
    process.stdout.write(
      `${row.cloth}, ${row.widthIn} in: laid ${row.laidYd.toFixed(3)} yd, ${row.utilisationPercent} % used; ${table}${over}; by area ${row.sameAreaYd.toFixed(3)} yd${row.isValid ? '' : '; NOT VALID'}\n`,
    );
  }
}
process.exitCode = rows.every(({ isValid }) => isValid) ? 0 : 1;
