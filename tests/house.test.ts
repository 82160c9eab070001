import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { houseProblems, importedBy, importProblem } from './house.ts';
import { importCircles } from './import-circles.ts';
import { crowdedFolders, repeatedNames } from './tidy-folders.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const files = ['shared-core', 'main', 'renderer', 'tests'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs|css)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length).split('\\').join('/')),
);

const texts = new Map(files.map((file) => [file, readFileSync(join(root, file), 'utf8')]));

test('every file keeps the rules of the house', () => {
  expect(files.length).toBeGreaterThan(50);
  expect(files).toContain('shared-core/measure/problem.ts');
  const problems = [...texts].flatMap(([file, text]) => houseProblems(file, text));
  expect(problems).toEqual([]);
});

test('every import between files names its ending', () => {
  const bare = [...texts].flatMap(([file, text]) =>
    importedBy(text)
      .filter((specifier) => specifier.startsWith('.'))
      .filter((specifier) => !/\.(ts|tsx|mjs|css|json|svg|png|ttf)(\?\w+)?$/.test(specifier))
      .map((specifier) => `${file} imports ${specifier}`),
  );
  expect(bare).toEqual([]);
});

test('no file imports itself by way of others', () => {
  expect(importCircles(texts)).toEqual([]);
});

test('a circle of imports is found, whatever its length and kind', () => {
  const planted = new Map([
    ['a/ring.ts', "import type { Hand } from '../b/hand.ts';"],
    ['b/hand.ts', "import './cloth.ts';"],
    ['b/cloth.ts', "export { cut } from '../c/cut.ts';"],
    ['c/cut.ts', "const late = () => import('../a/ring.ts');"],
    ['c/self.ts', "new Worker(new URL('./self.ts', import.meta.url));"],
    ['c/end.ts', "import { ring } from '../a/ring.ts';"],
  ]);
  expect(importCircles(planted)).toEqual([
    ['a/ring.ts', 'b/hand.ts', 'b/cloth.ts', 'c/cut.ts', 'a/ring.ts'],
    ['c/self.ts', 'c/self.ts'],
  ]);
  planted.set('c/cut.ts', '');
  planted.delete('c/self.ts');
  expect(importCircles(planted)).toEqual([]);
});

test('a base name stands once in its layer, and no folder is crowded', () => {
  expect(repeatedNames(files)).toEqual([]);
  expect(crowdedFolders(files)).toEqual([]);
});

test('a name that stands twice is found, and a folder of too many files', () => {
  expect(
    repeatedNames([
      'main/a/cut-sheet.ts',
      'main/b/CutSheet.tsx',
      'renderer/a/CutSheet.tsx',
      'tests/cut-sheet.ts',
    ]),
  ).toEqual(['main: cutsheet stands in main/a/cut-sheet.ts and main/b/CutSheet.tsx']);
  const folder = (count: number) =>
    Array.from({ length: count }, (_, index) => `renderer/parts/${index}.tsx`);
  expect(crowdedFolders([...folder(18), 'renderer/parts/0.module.css'])).toEqual([]);
  expect(crowdedFolders(folder(19))).toHaveLength(1);
});

describe('the table of imports bites', () => {
  test.each([
    ['shared-core/measure/money/money.ts', '../../geometry/ring.ts', 'measure sees only itself'],
    ['shared-core/stash/stash.ts', '../plan/model/coat-plan.ts', 'stash sees only measure, geometry'],
    ['shared-core/cost/cost.ts', '../flow/estimate.ts', 'nothing inside imports flow'],
    ['shared-core/plan/model/outline.ts', '../../contract/contract.ts', 'nothing inside imports contract'],
    ['shared-core/flow/estimate.ts', '../contract/contract.ts', 'nothing inside imports contract'],
    ['shared-core/contract/contract.ts', '../flow/estimate.ts', 'nothing inside imports flow'],
    [
      'shared-core/exchange/pattern/pattern.ts',
      '../../lay/job.ts',
      'exchange sees only measure, geometry, stash, plan',
    ],
    [
      'shared-core/lay/engine/search.ts',
      '../../measure/money/money.ts',
      'lay/engine sees geometry and lay/job.ts only',
    ],
    ['shared-core/lay/engine/search.ts', '../check/check.ts', 'lay/engine sees geometry and lay/job.ts only'],
    ['shared-core/lay/engine/search.ts', 'clipper2-ts', 'this room of shared-core may not use this package'],
    ['shared-core/attic/old.ts', '../measure/money/money.ts', 'shared-core has no room "attic" in its order'],
    ['shared-core/plan/model/outline.ts', '../../../main/doors/static.ts', 'shared-core imports only itself'],
    ['shared-core/plan/model/outline.ts', 'node:fs', 'shared-core knows no Node'],
    ['shared-core/plan/model/outline.ts', 'zod', 'this room of shared-core may not use this package'],
    [
      'main/services/calls/services.ts',
      '../../doors/loopback.ts',
      'in main, doors import services and services import database',
    ],
    [
      'main/database/schema/schema.ts',
      '../../services/calls/services.ts',
      'in main, doors import services and services import database',
    ],
    ['main/doors/loopback.ts', '../../renderer/app/App.tsx', 'main and renderer never meet'],
    ['main/doors/loopback.ts', 'better-sqlite3', 'a door carries calls and never touches the database'],
    ['main/services/stock/stash.ts', 'better-sqlite3', 'a service knows no dialect'],
    ['main/services/stock/stash.ts', 'pg', 'a service knows no dialect'],
    ['main/services/stock/stash.ts', '../../database/file/connection.ts', 'a service knows no dialect'],
    ['main/services/stock/stash.ts', '../../database/postgres/address.ts', 'a service knows no dialect'],
    ['renderer/client/api.ts', 'pg', 'only main touches files, the database and Electron'],
    ['main/services/calls/services.ts', 'electron', 'only a door knows Electron'],
    ['main/launch/start.mjs', 'zod', 'a launcher runs before any package is installed'],
    ['main/launch/start.mjs', '../doors/static.ts', 'launchers and the program never meet'],
    ['renderer/app/App.tsx', '../../main/doors/static.ts', 'main and renderer never meet'],
    [
      'renderer/rooms/stash/Stash.tsx',
      '../lay/LayRoom.tsx',
      'a room never imports another room; what two need moves to parts',
    ],
    [
      'renderer/parts/forms/Field.tsx',
      '../../rooms/stash/Stash.tsx',
      'in renderer, app imports rooms, rooms import parts, parts import client',
    ],
    [
      'renderer/client/api.ts',
      '../app/route.ts',
      'in renderer, app imports rooms, rooms import parts, parts import client',
    ],
    ['renderer/client/api.ts', 'node:fs', 'only main touches files, the database and Electron'],
    ['renderer/client/api.ts', '../../tests/fixtures/workshop.ts', 'nothing imports tests'],
    ['shared-core/lay/engine/search.ts', '../job.ts', undefined],
    ['shared-core/lay/engine/search.ts', '../../geometry/ring.ts', undefined],
    ['shared-core/cost/cost.ts', '../measure/money/money.ts', undefined],
    ['main/doors/loopback.ts', '../services/calls/services.ts', undefined],
    ['renderer/rooms/stash/Stash.tsx', '../../parts/forms/Field.tsx', undefined],
    ['tests/core/lay/lay.test.ts', '../../../shared-core/lay/lay.ts', undefined],
  ])('%s importing %s: %s', (path, specifier, rule) => {
    expect(importProblem(path, specifier)).toBe(rule);
  });

  test('in whatever way the import is written', () => {
    const text = [
      "import { a } from '../cost/cost.ts';",
      "import type { B } from '../cover/cover.ts';",
      "export { c } from '../to-buy/to-buy.ts';",
      "import '../lay/lay.ts';",
      "const late = await import('../requirement/need.ts');",
      "new Worker(new URL('../quilting/lines.ts', import.meta.url));",
      "// import { old } from '../contract/contract.ts';",
    ].join('\n');
    expect(houseProblems('shared-core/stash/stash.ts', `${text}\n`)).toHaveLength(6);
  });
});

describe('refused for its name, its words, its hidden inputs or its length', () => {
  test.each([
    ['shared-core/measure/utils.ts', 'export {};\n'],
    ['renderer/parts/table-helpers.ts', 'export {};\n'],
    ['shared-core/plan/types.ts', 'export {};\n'],
    ['shared-core/lay/lay.ts', 'const markerLengthMm = 1;\n'],
    ['shared-core/lay/nest.ts', 'export {};\n'],
    ['shared-core/stash/stash.ts', 'function readInventory() {}\n'],
    ['shared-core/stash/stash.ts', 'export interface Roll {}\n'],
    ['shared-core/lay/lay.ts', 'const seed = Math.random();\n'],
    ['shared-core/lay/lay.ts', 'const at = Date.now();\n'],
    ['shared-core/lay/lay.ts', 'const at = new Date();\n'],
    ['shared-core/lay/lay.ts', 'const at = performance.now();\n'],
    ['shared-core/lay/lay.ts', 'const home = process.env;\n'],
    ['shared-core/lay/lay.ts', 'window.close();\n'],
    ['shared-core/lay/lay.ts', 'document.title;\n'],
    ['renderer/app/App.tsx', '300 lines'],
    ['main/services/stock/stash.ts', "import { sql } from 'kysely';\n"],
    ['main/services/stock/stash.ts', 'const isFile = store instanceof FileStore;\n'],
  ])('%s: %s', (path, text) => {
    expect(houseProblems(path, written(text))).toHaveLength(1);
  });
});

describe('welcome', () => {
  test.each([
    ['shared-core/lay/lay.ts', 'const nestedCount = honestEarnestRatio;\n'],
    [
      'renderer/rooms/lay/LayRoom.tsx',
      'const a = <p title="The trade calls it a marker">A marker, by trade</p>;\n',
    ],
    ['renderer/parts/Drawing.tsx', 'const arrow = <path markerEnd="url(#a)" />;\n'],
    [
      'shared-core/lay/lay.ts',
      '// The trade calls the drawing a marker, made at random.\nconst form = "roll";\n',
    ],
    ['main/services/calls/services.ts', 'const at = Date.now();\n'],
    ['shared-core/lay/engine/search.ts', '700 lines'],
    ['shared-core/stash/stash.ts', 'const reading = { process: 1, window: 2 };\n'],
  ])('%s: %s', (path, text) => {
    expect(houseProblems(path, written(text))).toEqual([]);
  });
});

/** A text as given, or so many lines. */
function written(text: string): string {
  const lines = /^(\d+) lines$/.exec(text);
  return lines === null ? text : 'export {};\n'.repeat(Number(lines[1]));
}
