/**
 * Scripts that do a spec's part of the work without a window. They run by Node itself: imported into a spec, all that
 * they need of the program would be compiled anew for the runner.
 */
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { ownNode, root } from '../../main/launch/install.mjs';

/** What a script prints; throws with its words where it fails. script: from the project's folder. */
export function printedBy(script: string, ...words: readonly string[]): Buffer {
  return execFileSync(ownNode, [join(root, script), ...words], { maxBuffer: 64 * 1024 * 1024 });
}
