import { demoWorkshop } from './shared-core/demo/demo-workshop.ts';
import { lay } from './shared-core/lay/lay.ts';
import { checkLay } from './shared-core/lay/check.ts';
import { endlessLength, layJob } from './shared-core/lay/plan-lay.ts';
import { requirement } from './shared-core/requirement/requirement.ts';
function shellJob(coatCount: number, seed: number) {
  const demo = demoWorkshop();
  const plan = { ...demo.plans[0]!, coatCount };
  const items = new Map(plan.slots.flatMap((slot) => { const item = demo.items.find((one) => one.id === slot.itemId); return item === undefined ? [] : [[slot.id, item] as const]; }));
  const need: any = requirement(plan, items).find((one) => one.kind === 'shapes' && one.slotId === 'shell');
  return layJob(need, [endlessLength('roll', 1450, undefined)], plan.clearanceMm, undefined, seed);
}
const [coats, its, seeds] = process.argv.slice(2);
for (const c of coats!.split(',')) {
  const out: string[] = [];
  for (let seed = 1; seed <= Number(seeds); seed++) {
    const job = shellJob(Number(c), seed);
    const t = performance.now();
    const seen: [number, number][] = [];
    const r = lay(job, { seconds: null, iterations: Number(its) }, { clock: () => performance.now(), onBetter: (b) => seen.push([b.iterations, b.usedLengthMm[0]!]) });
    const at = (f: number) => Math.round(seen.filter(([i]) => i <= f * Number(its)).at(-1)![1] / Number(c));
    out.push(`${(r.usedLengthMm[0]! / Number(c)).toFixed(0)} (${Math.round((performance.now() - t) / 100) / 10}s${checkLay(job, r).length ? ' BAD' : ''}; ${[0.05, 0.2, 0.34, 0.36, 0.59, 0.61, 0.8].map(at).join(' ')})`);
  }
  console.log(c, out.join(' | '));
}
