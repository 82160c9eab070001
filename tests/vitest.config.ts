/** Runs everything under tests/ but the maker's day in a browser (tests/app, Playwright) and the benches. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('..'),
  cacheDir: here('../node_modules/.cache/vitest'),
  resolve: {
    alias: { electron: here('./main/doors/electron-stand-in.ts') },
  },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/app/**', 'tests/bench/**'],
    environment: 'node',
    pool: 'forks',
    reporters: ['default', here('./vitest-counts.ts')],
    testTimeout: 20_000,
    hookTimeout: 20_000,
  },
});
