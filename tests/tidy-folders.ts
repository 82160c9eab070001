/** Whether a file is found by its name: names that stand twice in a layer, and folders that hold too much. */

/** As many as are read at a glance. */
const maxFiles = 18;

/** Folders that may hold more, each with its reason. */
const roomier: Readonly<Record<string, string>> = {
  'main/database/schema/migrations': 'a released migration stays for good, so there are ever more of them',
};

/** Sentences on base names that stand more than once in shared-core, main or renderer; "Cut" and "cut" are one name. */
export function repeatedNames(paths: readonly string[]): string[] {
  const named = Map.groupBy(paths.filter(isSource), (path) => {
    const [layer = ''] = path.split('/');
    return `${layer}: ${baseName(path).replaceAll('-', '').toLowerCase()}`;
  });
  return [...named].flatMap(([name, own]) =>
    own.length < 2 ? [] : [`${name} stands in ${own.join(' and ')}`],
  );
}

/** Sentences on folders that hold too many source files side by side. */
export function crowdedFolders(paths: readonly string[]): string[] {
  const folders = Map.groupBy(paths.filter(isSource), (path) => path.split('/').slice(0, -1).join('/'));
  return [...folders].flatMap(([folder, { length }]) =>
    length <= maxFiles || folder in roomier
      ? []
      : [`${folder} holds ${length} files side by side; ${maxFiles} at most`],
  );
}

/** Styles go with their component, tests with what they test. */
function isSource(path: string): boolean {
  return !path.startsWith('tests/') && /\.(tsx?|mjs)$/.test(path);
}

function baseName(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.\w+$/, '');
}
