/** Signs that cannot be seen and would break the lines of a file. */

/** Line ends and other control signs become blanks: for names, which stand in one line. */
export function oneLine(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ').trim();
}

/** Without control signs but tabs and line ends: for texts of several lines. */
export function withoutControls(text: string): string {
  return text.replace(/[^\P{Cc}\t\r\n]/gu, '');
}
