/**
 * How long pattern files take to write and to read: node tests/bench/exchange.ts [--json].
 * The demo coat's 26 pieces, several times over under other names; median of the runs in ms, size in kB.
 */
import { fenwalkCoat } from '../../shared-core/demo/coat.ts';
import { patternFormats } from '../../shared-core/exchange/pattern/formats.ts';
import { defaultChoices, defaultLimits } from '../../shared-core/exchange/pattern/pattern.ts';
import type { CoatPlan } from '../../shared-core/plan/model/coat-plan.ts';

const runCount = 7;

function planOf(timesCount: number): CoatPlan {
  const coat = fenwalkCoat({});
  return {
    ...coat,
    pieces: Array.from({ length: timesCount }, (_, time) =>
      coat.pieces.map((piece) => ({ ...piece, id: `${piece.id}-${time}`, name: `${piece.name} ${time}` })),
    ).flat(),
  };
}

function medianMs(work: () => void): number {
  const times: number[] = [];
  for (let run = 0; run < runCount; run++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return Number(times[Math.floor(runCount / 2)]!.toFixed(1));
}

const rows = [1, 2, 4, 7].flatMap((times) => {
  const plan = planOf(times);
  return patternFormats.map((format) => {
    const text = format.write(plan);
    const bytes = new TextEncoder().encode(text);
    const { found, problems } = format.read(bytes, defaultLimits, defaultChoices);
    if (found?.pieces.length !== plan.pieces.length || problems.length > 0)
      throw new Error(JSON.stringify(problems));
    return {
      format: format.name,
      pieces: plan.pieces.length,
      kB: Math.round(bytes.length / 1000),
      writeMs: medianMs(() => format.write(plan)),
      readMs: medianMs(() => format.read(bytes, defaultLimits, defaultChoices)),
    };
  });
});
if (process.argv.includes('--json')) console.log(JSON.stringify({ runCount, rows }, null, 1));
else console.table(rows);
