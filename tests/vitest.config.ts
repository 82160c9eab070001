/** Runs everything under tests/ but the maker's day in a browser (tests/app, Playwright) and the benches. */
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

// Programs and threads that tests start spend most of their time on taking the types out of the sources, and it is kept.
process.env.NODE_COMPILE_CACHE ??= here('../node_modules/.cache/node');

/** Files that put something else in the place of a module, or of what the process has. */
const apart = [
  'tests/main/doors/attack.test.ts',
  'tests/main/doors/electron*.test.ts',
  'tests/renderer/client/lay-pool.test.ts',
  'tests/renderer/client/coat/drawn-rooms.test.ts',
  'tests/renderer/client/followed-route.test.ts',
  'tests/renderer/client/queries/read-again.test.ts',
];
const onDatabaseAlone = 'tests/main/postgres/*.test.ts';
/** What a door can ask is the same on a file and on a database. Files about the file itself are not among them. */
const onBothStores = [
  onDatabaseAlone,
  'tests/main/ledger/*.test.ts',
  'tests/main/services/{currency,cutting-taken-back,first-lot,margin,price-rules,shelf-right,today}.test.ts',
  'tests/main/services/cutting/*.test.ts',
  'tests/main/services/plans/*.test.ts',
  'tests/main/services/purchasing/*.test.ts',
  'tests/main/services/stock/{accounts,photos,stash,stash-file,stash-list,undo}.test.ts',
  'tests/main/services/workshop/find.test.ts',
];
const notThese = ['tests/app/**', 'tests/bench/**'];
const afterEachOfMain = here('./main/leave-nothing.ts');

export default defineConfig({
  root: here('..'),
  cacheDir: here('../node_modules/.cache/vitest'),
  resolve: {
    alias: { electron: here('./main/doors/electron-stand-in.ts') },
  },
  test: {
    environment: 'node',
    pool: 'forks',
    maxWorkers: availableParallelism(),
    // Most of the time went into loading the same modules anew for each file.
    isolate: false,
    reporters: ['default', here('./vitest-counts.ts')],
    // Against what hangs alone: speed is measured in benches, and a busy machine fails no test.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 120_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: [...notThese, ...apart, 'tests/main/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'main',
          include: ['tests/main/**/*.test.ts'],
          exclude: [...apart, onDatabaseAlone],
          setupFiles: afterEachOfMain,
        },
      },
      {
        extends: true,
        test: {
          // The same tests once more, on a workshop that several desks share.
          name: 'shared',
          include: onBothStores,
          setupFiles: [afterEachOfMain, here('./main/postgres/need-server.ts')],
          globalSetup: here('./main/postgres/server-for-tests.ts'),
          env: { BOLT_TEST_STORE: 'postgres' },
        },
      },
      {
        extends: true,
        test: { name: 'apart', include: apart, isolate: true, setupFiles: afterEachOfMain },
      },
    ],
  },
});
