/** When Ctrl or Cmd Z is a word to the room, and not to a field or a sheet that lies over it. */

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly defaultPrevented: boolean;
}

/** page: what has the focus, and whether a sheet is open. */
export function isUndoKey(
  { key, ctrlKey, metaKey, shiftKey, altKey, defaultPrevented }: Pressed,
  page: Pick<Document, 'activeElement' | 'querySelector'>,
): boolean {
  const isPressed =
    key.toLowerCase() === 'z' && (ctrlKey || metaKey) && !shiftKey && !altKey && !defaultPrevented;
  if (!isPressed || page.querySelector('[role="dialog"], dialog[open]') !== null) return false;
  return page.activeElement?.matches('input, textarea, select, [contenteditable]') !== true;
}
