/** Files that import each other, straight or by way of others, imports of types counted too. */
import { importedBy, resolved } from './house.ts';

/**
 * Circles, each as the files on its way back to the first, at least one where there are any. texts: the text of each file
 * by its path from the top of the project, with slashes.
 */
export function importCircles(texts: ReadonlyMap<string, string>): readonly (readonly string[])[] {
  const circles: string[][] = [];
  const done = new Set<string>();
  const way: string[] = [];
  const follow = (path: string): void => {
    const text = texts.get(path);
    if (text === undefined || done.has(path)) return;
    const begun = way.indexOf(path);
    if (begun !== -1) {
      circles.push([...way.slice(begun), path]);
      return;
    }
    way.push(path);
    for (const specifier of importedBy(text)) {
      if (specifier.startsWith('.')) follow(resolved(path, specifier));
    }
    way.pop();
    done.add(path);
  };
  for (const path of texts.keys()) follow(path);
  return circles;
}
