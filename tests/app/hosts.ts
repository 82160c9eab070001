/** Starts loopback hosts for specs: the program as a maker starts it, or one of many in a program that is shared. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { ownNode, root } from '../../main/launch/install.mjs';

export interface Host {
  /** Lets one browser in, once. */
  readonly address: string;
  /** Rejects where the host did not end as it should. */
  close(): Promise<void>;
}

export interface SharedHosts {
  /** isFound: whether lays go by the pace of that name. */
  open(dataFile: string, isFound?: boolean): Promise<Host>;
  end(): Promise<void>;
}

/** The loopback host as a program of its own. */
export async function startHost(dataFile: string): Promise<Host> {
  const program = startProgram('main/doors/loopback-host.ts', '--attached', '--data', dataFile);
  return { address: await program.nextLine(), close: program.end };
}

/** Hosts in one program, which starts with the first of them: see spec-hosts.ts. */
export function sharedHosts(): SharedHosts {
  let program: Program | undefined;
  const ask = (order: object): Promise<string> => {
    program ??= startProgram('tests/app/spec-hosts.ts');
    program.tell(JSON.stringify(order));
    return program.nextLine();
  };
  return {
    async open(dataFile, isFound = false) {
      const address = await ask({ open: dataFile, isFound });
      return { address, close: async () => void (await ask({ close: dataFile })) };
    },
    end: async () => program?.end(),
  };
}

interface Program {
  tell(line: string): void;
  nextLine(): Promise<string>;
  end(): Promise<void>;
}

function startProgram(file: string, ...args: string[]): Program {
  const child: ChildProcess = spawn(ownNode, [join(root, file), ...args], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const { stdin, stdout } = child;
  if (stdin === null || stdout === null) throw new Error(`${file} was started without its pipes`);
  const exit = once(child, 'exit');
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]();
  return {
    tell: (line) => void stdin.write(`${line}\n`),
    async nextLine() {
      const { value, done } = await lines.next();
      if (!done) return value;
      throw new Error(`${file} ended with code ${(await exit)[0]} before it answered`);
    },
    async end() {
      stdin.end();
      const [code] = await exit;
      if (code !== 0) throw new Error(`${file} ended with code ${code}`);
    },
  };
}
