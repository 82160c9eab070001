/** The rules of the house as functions from a file's path and text to the sentences that say what breaks them. */

/** Rooms of shared-core in their order: one imports only from those before it. */
const rooms = [
  'measure',
  'geometry',
  'stash',
  'plan',
  'quilting',
  'draft',
  'paper',
  'requirement',
  'lay',
  'cover',
  'to-buy',
  'cost',
  'exchange',
  'demo',
  'contract',
  'flow',
];

/** Rooms that see less than their place in the order allows. */
const narrower: Readonly<Record<string, readonly string[]>> = {
  paper: ['measure'],
  exchange: ['measure', 'geometry', 'stash', 'plan'],
  demo: ['measure', 'geometry', 'stash', 'plan', 'draft'],
};

/** What carries data in from outside or computes outlines may use a package for it; the rest is arithmetic. */
const corePackages: Readonly<Record<string, readonly string[]>> = {
  contract: ['zod'],
  exchange: ['papaparse', 'saxes', 'svgpath', 'zod'],
  geometry: ['clipper2-ts'],
  lay: ['clipper2-ts'],
  wording: ['intl-messageformat'],
  paper: ['papaparse', '@cantoo/pdf-lib', '@cantoo/fontkit', 'qrcode-generator'],
};

const databasePackages = ['kysely', 'better-sqlite3', 'pg'];
/** What a service sees of the database: the boundary, the tables as types, and parts of queries that mean the same everywhere. */
const storeBoundary = [
  'store.ts',
  'open-store.ts',
  'chosen-address.ts',
  'schema/schema.ts',
  'schema/query-parts.ts',
  'schema/search-text.ts',
  'failures/failure-log.ts',
];
const noDialect = 'a service knows no dialect';
const mainLayers = ['database', 'services', 'doors'];
const rendererLayers = ['client', 'parts', 'rooms', 'app'];
const forbiddenNames = ['utils', 'util', 'helpers', 'helper', 'common', 'misc', 'types', 'manager'];
const forbiddenWords = ['marker', 'markers', 'nest', 'nests', 'nesting', 'inventory', 'inventories'];
/** Names that belong to SVG, not to us. */
const svgNames = /^marker(End|Start|Mid|Width|Height|Units)$/;
const longestFileLines = 300;

/** All sentences against one file. path: from the top of the project, with slashes. */
export function houseProblems(path: string, text: string): string[] {
  return [
    ...importedBy(text).flatMap((specifier) => {
      const rule = importProblem(path, specifier);
      return rule === undefined ? [] : [`${path} imports ${specifier}: ${rule}`];
    }),
    ...nameProblems(path),
    ...wordProblems(path, text),
    ...hiddenInputProblems(path, text),
    ...dialectProblems(path, text),
    ...lineProblems(path, text),
  ];
}

/** What a file imports, in any of the ways that TypeScript and the bundler know. */
export function importedBy(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const forms = [
    /[\s}*]from\s*(['"])([^'"\n]+)\1/g,
    /\bimport\s*(['"])([^'"\n]+)\1/g,
    /\bimport\s*\(\s*(['"])([^'"\n]+)\1/g,
    /\bnew\s+URL\(\s*(['"])(\.[^'"\n]+\.tsx?)\1\s*,\s*import\.meta\.url/g,
  ];
  return forms.flatMap((form) => [...code.matchAll(form)].map((match) => match[2] ?? ''));
}

/** The rule that an import breaks, undefined where it breaks none. */
export function importProblem(path: string, specifier: string): string | undefined {
  const [from = '', ...fromParts] = path.split('/');
  if (!specifier.startsWith('.')) return packageProblem(from, fromParts, specifier);
  const target = resolved(path, specifier);
  const [to = '', ...toParts] = target.split('/');
  if (to === 'tests' && from !== 'tests') return 'nothing imports tests';
  if (from === 'main' && to === 'renderer') return 'main and renderer never meet';
  if (from === 'renderer' && to === 'main') return 'main and renderer never meet';
  if (from === 'shared-core' && to !== 'shared-core') return 'shared-core imports only itself';
  if (from === 'shared-core') return coreProblem(fromParts, toParts);
  if (from === 'main' && to === 'main') return mainProblem(fromParts, toParts);
  if (from === 'renderer' && to === 'renderer') return rendererProblem(fromParts, toParts);
  return undefined;
}

function packageProblem(from: string, fromParts: readonly string[], specifier: string): string | undefined {
  const room = fromParts[0] ?? '';
  const isNode = specifier.startsWith('node:');
  const name = specifier.split('/')[0];
  if (from === 'shared-core') {
    if (isNode) return 'shared-core knows no Node';
    const isEngine = room === 'lay' && fromParts[1] === 'engine';
    const allowed = isEngine ? [] : (corePackages[room] ?? []);
    return allowed.includes(specifier) ? undefined : 'this room of shared-core may not use this package';
  }
  if (from === 'renderer') {
    const isMains = isNode || name === 'electron' || databasePackages.includes(name ?? '');
    return isMains ? 'only main touches files, the database and Electron' : undefined;
  }
  if (from === 'main') {
    if (room === 'launch' && !isNode) return 'a launcher runs before any package is installed';
    if (name === 'react' || name === 'react-dom') return 'main shows nothing';
    const isDatabase = databasePackages.includes(name ?? '');
    if (isDatabase && room === 'doors') return 'a door carries calls and never touches the database';
    if (isDatabase && name !== 'kysely' && room !== 'database') return noDialect;
    if (name === 'electron' && room !== 'doors') return 'only a door knows Electron';
  }
  return undefined;
}

function coreProblem(fromParts: readonly string[], toParts: readonly string[]): string | undefined {
  const from = fromParts[0] ?? '';
  const to = toParts[0] ?? '';
  if (from === 'wording') return to === 'wording' ? undefined : 'wording sees only itself';
  if (to === 'wording' && !(from === 'lay' && fromParts[1] === 'engine')) return undefined;
  if (!rooms.includes(from)) return `shared-core has no room "${from}" in its order`;
  if (!rooms.includes(to)) return `shared-core has no room "${to}" in its order`;
  if (from === 'lay' && fromParts[1] === 'engine') {
    const isSeen =
      to === 'geometry' || (to === 'lay' && (toParts[1] === 'engine' || toParts[1] === 'job.ts'));
    return isSeen ? undefined : 'lay/engine sees geometry and lay/job.ts only';
  }
  if (from === to) return undefined;
  if (to === 'flow') return 'nothing inside imports flow';
  if (to === 'contract') return 'nothing inside imports contract';
  const allowed = narrower[from] ?? rooms.slice(0, rooms.indexOf(from));
  return allowed.includes(to) ? undefined : `${from} sees only ${allowed.join(', ') || 'itself'}`;
}

function mainProblem(fromParts: readonly string[], toParts: readonly string[]): string | undefined {
  const from = fromParts[0] ?? '';
  const to = toParts[0] ?? '';
  if (from === 'launch' || to === 'launch') {
    return from === to ? undefined : 'launchers and the program never meet';
  }
  const isDownward = mainLayers.indexOf(to) <= mainLayers.indexOf(from);
  if (!isDownward) return 'in main, doors import services and services import database';
  const isHidden = to === 'database' && !storeBoundary.includes(toParts.slice(1).join('/'));
  return from === 'services' && isHidden ? noDialect : undefined;
}

function rendererProblem(fromParts: readonly string[], toParts: readonly string[]): string | undefined {
  const from = fromParts[0] ?? '';
  const to = toParts[0] ?? '';
  if (from === 'rooms' && to === 'rooms' && fromParts[1] !== toParts[1]) {
    return 'a room never imports another room; what two need moves to parts';
  }
  const isDownward = rendererLayers.indexOf(to) <= rendererLayers.indexOf(from);
  return isDownward ? undefined : 'in renderer, app imports rooms, rooms import parts, parts import client';
}

function nameProblems(path: string): string[] {
  const bare = path.split('/').map((part) => part.replace(/\..*$/, '').toLowerCase());
  return bare
    .flatMap((part) => [part, ...part.split('-')])
    .filter((part) => forbiddenNames.includes(part))
    .map((part) => `${path}: "${part}" says nothing; name the file after the one concept it owns`)
    .slice(0, 1);
}

function wordProblems(path: string, text: string): string[] {
  // This file and its test must name what they forbid.
  if (path.startsWith('tests/house.')) return [];
  const code = withoutWords(text, path.endsWith('x'));
  const found = new Set<string>();
  for (const [identifier] of `${path.replace(/[/.-]/g, ' ')} ${code}`.matchAll(/[A-Za-z_$][\w$]*/g)) {
    if (svgNames.test(identifier)) continue;
    const words = identifier.replace(/([a-z0-9])([A-Z])/g, '$1 $2').split(/[\s_$]+/);
    if (words.some((word) => forbiddenWords.includes(word.toLowerCase()))) found.add(identifier);
  }
  for (const [declared] of code.matchAll(/\b(?:type|interface|class)\s+Rolls?\b/g)) found.add(declared);
  return [...found].map((name) => `${path}: "${name}" is a word that this house does not use`);
}

function hiddenInputProblems(path: string, text: string): string[] {
  if (!path.startsWith('shared-core/')) return [];
  const code = withoutWords(text, false);
  const uses = [
    /\bMath\s*\.\s*random\b/,
    /\bDate\s*\.\s*now\b/,
    /\bnew\s+Date\s*\(\s*\)/,
    /(?<![.\w$])(?:performance|process|window|document|globalThis)\s*(?:\?\.|[.[(])/,
  ];
  return uses.flatMap((use) => {
    const found = use.exec(code);
    return found === null ? [] : [`${path}: "${found[0]}" is an input that nobody passed in`];
  });
}

/** SQL as text is a dialect's, and so is asking which store it is; of Kysely a service takes types alone. */
function dialectProblems(path: string, text: string): string[] {
  if (!path.startsWith('main/services/')) return [];
  const code = withoutWords(text, false);
  const takesValues = /\bimport\s+(?!type\b)[^;]*\bfrom\s*['"]kysely['"]/.test(text);
  const asks = /\binstanceof\s+\w*(?:Store|Sqlite|Postgres|Kysely|Database)\w*/.exec(code);
  return [
    ...(takesValues ? [`${path} imports kysely: ${noDialect}`] : []),
    ...(asks ? [`${path}: "${asks[0]}": ${noDialect}`] : []),
  ];
}

function lineProblems(path: string, text: string): string[] {
  if (path.startsWith('shared-core/lay/engine/')) return [];
  const lineCount = text.split('\n').length - 1;
  return lineCount < longestFileLines
    ? []
    : [`${path} has ${lineCount} lines; a file stays under ${longestFileLines}`];
}

/** The code alone: comments, strings, template text and (in JSX) text between tags become blanks. */
export function withoutWords(text: string, isJsx: boolean): string {
  const pieces =
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\[\s\S]|[^`\\])*`/g;
  const bare = text.replace(pieces, (piece) => (piece.startsWith('`') ? insertions(piece) : ' '));
  return isJsx ? bare.replace(/<marker\b/g, '<').replace(/>[^<>{}=;]*</g, '> <') : bare;
}

function insertions(template: string): string {
  return [...template.matchAll(/\$\{([^}]*)\}/g)].map((match) => match[1]).join(' ');
}

/** The path of what a file imports by a relative specifier. */
export function resolved(path: string, specifier: string): string {
  const parts = path.split('/').slice(0, -1);
  for (const step of specifier.split('/')) {
    if (step === '..') parts.pop();
    else if (step !== '.') parts.push(step);
  }
  return parts.join('/');
}
