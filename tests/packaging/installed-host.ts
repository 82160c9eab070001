/** The loopback host as built and laid out, without anything of the project beside it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

export interface HostAnswer {
  /** The page and the facts of a new workshop, as a browser that was let in gets them. */
  readonly title: string;
  readonly facts: unknown;
  readonly printed: string;
  readonly exitCode: number | null;
}

/** Starts out/main/loopback-host.js of the folder on a new workshop, comes in as a browser does, and ends it. */
export async function startedHost(app: string, dataFile?: string): Promise<HostAnswer> {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-installed-'));
  const file = dataFile ?? join(folder, 'workshop.sqlite');
  const host = spawn(
    process.execPath,
    [join(app, 'out/main/loopback-host.js'), '--attached', '--data', file],
    {
      cwd: folder,
      // As of a person who has no such project: no paths of it, no options for Node.
      env: { PATH: '/usr/bin:/bin', HOME: folder },
      stdio: 'pipe',
    },
  );
  let printed = '';
  host.stderr.setEncoding('utf8').on('data', (text: string) => {
    printed += text;
  });
  const exited = once(host, 'exit');
  try {
    const lines = createInterface({ input: host.stdout });
    const address = await Promise.race([
      once(lines, 'line').then(([line]) => String(line)),
      exited.then(() => ''),
    ]);
    if (address === '') return { title: '', facts: null, printed, exitCode: host.exitCode };
    const entered = await fetch(address);
    const { origin } = new URL(address);
    const room = origin + ((entered.headers.get('refresh') ?? '').split('url=')[1] ?? '');
    const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const page = await (await fetch(room, { headers: { cookie } })).text();
    const answer = await fetch(`${room}call`, {
      method: 'POST',
      headers: { cookie, origin, 'content-type': 'application/json' },
      body: JSON.stringify({ call: 'workshopFacts', workshop: 'own', input: {} }),
    });
    const facts: unknown = await answer.json();
    host.stdin.end();
    const [exitCode] = await exited;
    return { title: /<title>(.*)<\/title>/.exec(page)?.[1] ?? '', facts, printed, exitCode };
  } finally {
    host.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function hostAnswers(app: string): Promise<boolean> {
  const { title, facts, printed, exitCode } = await startedHost(app);
  const isIn = title === 'Bolt &amp; Baffle' && (facts as { ok?: boolean }).ok === true;
  return isIn && printed === '' && exitCode === 0;
}
