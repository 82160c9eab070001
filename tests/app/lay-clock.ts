/**
 * How long the lays of a spec take. A lay in the window ends by the clock of its worker, which it looks at before
 * each move. The specs give the worker another clock, one that goes on by its looks alone: a lay asked for 3 s then
 * ends after some hundred moves, the same ones on a quick machine and on a busy one.
 */
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { staticAnswer } from '../../main/doors/static.ts';
import { root } from '../../main/launch/install.mjs';
import type { Found } from './found.ts';

/**
 * soon: each lay ends after a hundred looks or a few more. found: so too, and those of the demo's coat were looked for
 * before and stand at once (demo-lays.ts). better: one that is looked for in earnest has many more than its first lay,
 * and comes out shorter. unending: it goes on until it is stopped. real: by the machine's clock and on all its cores, as
 * for a maker.
 */
export type LayPace = 'found' | 'soon' | 'better' | 'unending' | 'real';

/** Longer than a first lay is looked for, and less than one that is looked for in earnest. */
const FIRST_MS = 1000;
/** By how much a look moves the clock where lays end soon. */
export const soonMs = 40;
/** By how much a look moves the clock: for so long, and from then on. */
const msPerLook: Record<Exclude<LayPace, 'real'>, readonly [first: number, later: number]> = {
  found: [soonMs, soonMs],
  soon: [soonMs, soonMs],
  better: [100, 4],
  unending: [soonMs, 0],
};

const rendererDir = join(root, 'out', 'renderer');

/** Sets the pace of a page's lays whose workers start from now on; pace is asked as each of them starts. */
export async function paceLays(page: Page, pace: () => LayPace): Promise<void> {
  const name = workerName('lay');
  const { status, headers, body } = await staticAnswer(rendererDir, `/assets/${name}`);
  const text = Buffer.from(body).toString('utf8');
  await page.route(`**/assets/${name}`, (route) =>
    route.fulfill({ status, headers: { ...headers }, body: `${clockText(pace())}${text}` }),
  );
}

/** One worker for each window: what several find depends on which of them is quicker. */
export async function layAlone(profile: BrowserContext): Promise<void> {
  await profile.addInitScript(() =>
    Object.defineProperty(navigator, 'hardwareConcurrency', { get: () => 1 }),
  );
}

/**
 * Copies the built window into a folder, with the pace in the worker itself: a host that serves it spares every page
 * of its own that each request goes by way of the spec. solved: what the solver gave before, by the programme's JSON.
 */
export function writePaced(folder: string, pace: LayPace, solved: Found['solved']): void {
  cpSync(rendererDir, folder, { recursive: true });
  for (const [name, first] of [
    [workerName('lay'), clockText(pace)],
    [workerName('solver'), solvedText(solved)],
  ] as const) {
    const worker = join(folder, 'assets', name);
    writeFileSync(worker, first + readFileSync(worker, 'utf8'));
  }
}

function workerName(of: 'lay' | 'solver'): string {
  const isWorker = (name: string) => name.startsWith(`${of}-worker-`) && name.endsWith('.js');
  const [name, ...others] = readdirSync(join(rendererDir, 'assets')).filter(isWorker);
  if (name === undefined || others.length > 0) throw new Error(`the build has not one ${of} worker`);
  return name;
}

/** Answers a programme that was solved before; any other goes on to the solver. */
function solvedText(solved: Found['solved']): string {
  return `{
    const solved = new Map(Object.entries(${JSON.stringify(solved)}));
    addEventListener('message', (event) => {
      const { id, programme } = event.data;
      const numbers = solved.get(JSON.stringify(programme));
      if (numbers === undefined) return;
      event.stopImmediatePropagation();
      postMessage({ ok: true, id, numbers });
    });
  }
`;
}

function clockText(pace: LayPace): string {
  if (pace === 'real') return '';
  const [first, later] = msPerLook[pace];
  return `{
    let ms = 0;
    let begunMs = 0;
    addEventListener('message', ({ data }) => {
      if (data.kind === 'lay') begunMs = ms;
    });
    performance.now = () => (ms += ms - begunMs < ${FIRST_MS} ? ${first} : ${later});
  }
`;
}
