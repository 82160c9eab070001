/** Another program beside this one, with locks of its own on a workshop's file, which can be killed; and what a kill leaves. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, readdirSync, rmSync } from 'node:fs';
import type { Socket } from 'node:net';
import { basename, dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { type Asking, openAsking, tempFolder } from './asking.ts';
import type { Order } from './second-window.ts';

const program = fileURLToPath(new URL('./second-window.ts', import.meta.url));

/** As a person who is not the superuser, where the tests run as one and so may write anywhere. */
export const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};

/** What it cannot do is thrown in its words. */
export interface OtherProgram {
  /** Gives the process that has it open. */
  open(file: string): Promise<number>;
  /** Three items of that name. */
  save(file: string, name: string): Promise<void>;
  close(file: string): Promise<void>;
  /** With all that it has open. */
  kill(): Promise<void>;
}

/** Starts as something is asked of it, and anew after it was killed. */
export function otherProgram(person: { readonly uid?: number; readonly gid?: number } = {}): OtherProgram {
  let child: ChildProcess | undefined;

  function start(): ChildProcess {
    const started = spawn(process.execPath, [program], { stdio: ['pipe', 'pipe', 'inherit'], ...person });
    // It ends with this process, which it does not keep from ending.
    for (const each of [started, started.stdin as Socket, started.stdout as Socket]) each.unref();
    return started;
  }

  async function obeyed(order: Order): Promise<void> {
    if (!child || !isRunning(child)) child = start();
    const lines = createInterface({ input: child.stdout! });
    child.stdin!.write(`${JSON.stringify(order)}\n`);
    const [said] = await once(lines, 'line');
    lines.close();
    if (said !== 'done') throw new Error(String(said));
  }

  return {
    async open(file) {
      await obeyed({ order: 'open', file });
      return child!.pid!;
    },
    save: (file, name) => obeyed({ order: 'save', file, name }),
    close: (file) => obeyed({ order: 'close', file }),
    async kill() {
      if (!child || !isRunning(child)) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
}

function isRunning({ exitCode, signalCode }: ChildProcess): boolean {
  return exitCode === null && signalCode === null;
}

/** Its start takes longer than all that is asked of it, so one serves the tests of all files until one of them kills it. */
export const elsewhere = otherProgram();

/**
 * Does that work and leaves the file, and what lies beside it, as a kill just then leaves them: they are copied while
 * the file is open. That a kill leaves just these is asked in log-base.test.ts.
 */
export async function leaveAsKilled(file: string, work: (asking: Asking) => Promise<void>): Promise<void> {
  const asking = openAsking({ dataFile: file });
  await work(asking);
  const kept = tempFolder();
  const left = filesOf(file);
  for (const one of left) copyFileSync(join(dirname(file), one), join(kept, one));
  await asking.services.close();
  for (const one of filesOf(file)) rmSync(join(dirname(file), one));
  for (const one of left) copyFileSync(join(kept, one), join(dirname(file), one));
}

/** The names of a workshop's file and of all that lies beside it under its name. */
export function filesOf(file: string): string[] {
  return readdirSync(dirname(file))
    .filter((name) => name.startsWith(basename(file)))
    .sort();
}
