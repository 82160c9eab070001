/** Electron-builder's own judgement of a configuration. */
import { createRequire } from 'node:module';
import type { Configuration } from 'electron-builder';

/** Each sentence that its schema has against it; none for a good one. */
export async function configProblems(config: Configuration): Promise<string[]> {
  const require = createRequire(import.meta.url);
  const { validateConfiguration } = require('app-builder-lib/out/util/config/config');
  const { DebugLogger } = require('builder-util');
  try {
    await validateConfiguration(config, new DebugLogger(false));
    return [];
  } catch (error) {
    return [String((error as Error).message)];
  }
}
