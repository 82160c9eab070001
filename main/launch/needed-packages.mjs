/** Which packages of package-lock.json a start needs: those of the top alone; what only checks need stands under tests. */

/**
 * @typedef {Readonly<Record<string, string>>} Names
 * @typedef {{
 *   version?: string, integrity?: string, optional?: boolean, devOptional?: boolean, link?: boolean,
 *   dependencies?: Names, devDependencies?: Names, optionalDependencies?: Names, peerDependencies?: Names,
 *   peerDependenciesMeta?: Readonly<Record<string, { optional?: boolean }>>,
 * }} LockEntry
 */

/**
 * The entries of the lock that the project itself asks for, and all that these ask for, as npm would find them.
 *
 * @param {Readonly<Record<string, LockEntry>>} packages of package-lock.json, by path
 * @returns {Set<string>} paths below node_modules
 */
export function startPackages(packages) {
  const needed = new Set(/** @type {string[]} */ ([]));
  const top = packages[''] ?? {};
  const waiting = Object.keys({
    ...top.dependencies,
    ...top.devDependencies,
    ...top.optionalDependencies,
  }).map((name) => ({ from: '', name }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const path = foundFrom(packages, next.from, next.name);
    if (path === undefined || needed.has(path)) continue;
    needed.add(path);
    const { dependencies, optionalDependencies, peerDependencies, peerDependenciesMeta } =
      packages[path] ?? {};
    for (const name of Object.keys({ ...dependencies, ...optionalDependencies, ...peerDependencies })) {
      if (!peerDependenciesMeta?.[name]?.optional) waiting.push({ from: path, name });
    }
  }
  return needed;
}

/**
 * Where a package that stands at `from` finds another: beside itself, or further up.
 *
 * @param {Readonly<Record<string, LockEntry>>} packages
 * @param {string} from
 * @param {string} name
 */
function foundFrom(packages, from, name) {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf('/node_modules/')))) {
    const path = `${folder === '' ? '' : `${folder}/`}node_modules/${name}`;
    if (packages[path] !== undefined) return path;
    if (folder === '') return undefined;
  }
}
