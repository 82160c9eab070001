/** The app packed for Linux by electron-builder itself, with a stand-in for the runtime, and what came out. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { extractAll } from '@electron/asar';
import { FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { build, Platform } from 'electron-builder';
import { writeStandInRuntime } from './stand-in-runtime.ts';
import { allFiles } from './package-config.ts';

export interface Packed {
  /** All files of the app as one would install it, in and beside the archive. */
  readonly files: readonly string[];
  readonly unpacked: readonly string[];
  /** Files of the program's folder that are not the app. */
  readonly beside: readonly string[];
  readonly fuses: Readonly<Record<string, boolean>>;
  /** The folder of the app, out of its archive. */
  readonly app: string;
}

/** root: top of the project, its app staged. folder: a scratch folder. */
export async function packForLinux(root: string, folder: string, electronVersion: string): Promise<Packed> {
  const runtime = join(folder, 'runtime');
  mkdirSync(runtime, { recursive: true });
  writeStandInRuntime(runtime, electronVersion);
  await build({
    projectDir: root,
    targets: Platform.LINUX.createTarget('dir'),
    publish: 'never',
    config: {
      extends: join(root, 'resources/packaging/electron-builder.mjs'),
      electronDist: runtime,
      electronVersion,
      directories: { output: join(folder, 'packages') },
    },
  });
  const program = join(folder, 'packages', 'linux-unpacked');
  const archive = join(program, 'resources', 'app.asar');
  const app = join(folder, 'app');
  // Takes what lies beside the archive with it.
  extractAll(archive, app);
  const wire = await getCurrentFuseWire(join(program, 'bolt-and-baffle'));
  const on = '1'.charCodeAt(0);
  return {
    files: allFiles(app),
    unpacked: allFiles(`${archive}.unpacked`),
    beside: allFiles(program).filter((file) => !file.startsWith('resources/')),
    fuses: Object.fromEntries(
      Object.entries(FuseV1Options).flatMap(([name, at]) =>
        typeof at === 'number' && wire[at] !== undefined ? [[name, Number(wire[at]) === on]] : [],
      ),
    ),
    app,
  };
}
