/** What the keys mean on the cutting table. */
export type HandKey =
  | { readonly does: 'arrow'; readonly x: number; readonly y: number }
  | { readonly does: 'walk'; readonly by: number }
  | { readonly does: 'zoom'; readonly ratio: number }
  | { readonly does: 'turn' | 'pin' | 'trade' | 'fit' | 'let go' | 'undo' | 'redo' };

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
}

/** Null for a key that means nothing here. */
export function handKey({ key, ctrlKey, metaKey, shiftKey }: Pressed): HandKey | null {
  const letter = key.length === 1 ? key.toLowerCase() : key;
  if (ctrlKey || metaKey) {
    if (letter === 'z') return { does: shiftKey ? 'redo' : 'undo' };
    return letter === 'y' ? { does: 'redo' } : null;
  }
  switch (letter) {
    case 'ArrowLeft':
      return { does: 'arrow', x: -1, y: 0 };
    case 'ArrowRight':
      return { does: 'arrow', x: 1, y: 0 };
    case 'ArrowUp':
      return { does: 'arrow', x: 0, y: 1 };
    case 'ArrowDown':
      return { does: 'arrow', x: 0, y: -1 };
    case 'PageDown':
      return { does: 'walk', by: 1 };
    case 'PageUp':
      return { does: 'walk', by: -1 };
    case 'r':
      return { does: 'turn' };
    case 'p':
      return { does: 'pin' };
    case 'x':
      return { does: 'trade' };
    case '+':
    case '=':
      return { does: 'zoom', ratio: 1.25 };
    case '-':
      return { does: 'zoom', ratio: 0.8 };
    case '0':
      return { does: 'fit' };
    case 'Escape':
      return { does: 'let go' };
    default:
      return null;
  }
}
