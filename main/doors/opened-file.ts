/** The workshop's file that a person opened the installed program with, by a double click or from its menu. */

/** The ending of the files that belong to the program; a workshop may be called anything else too. */
export const workshopEnding = 'baffle';

/**
 * The file among the words of a start, undefined where there is none. words: as process.argv of an installed program,
 * which is its first word.
 */
export function openedFile(words: readonly string[]): string | undefined {
  return words
    .slice(1)
    .find((word) => !word.startsWith('-') && word.toLowerCase().endsWith(`.${workshopEnding}`));
}

/** The words of a start on another file. appPath: named first where the program is not installed. */
export function startOn(file: string, isPackaged: boolean, appPath: string): string[] {
  return [...(isPackaged ? [] : [appPath]), '--data', file];
}
