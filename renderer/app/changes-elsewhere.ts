/** How a room answers to what another desk has changed. */
import { useCallback, useEffect, useState } from 'react';
import { onChangesElsewhere } from '../client/window-open.ts';

export interface ChangesElsewhere {
  /** Another number: the room is to be read anew. */
  readonly seenCount: number;
  /** Something was changed that the room does not show yet. */
  readonly isUnseen: boolean;
  readonly show: () => void;
}

/**
 * A room that only shows is read anew at once. Where something is being typed or a coat is open, with its lays under
 * way, nothing is taken from under the maker's hands: it is told, and shown when it is asked for.
 */
export function useChangesElsewhere(isAtWork: boolean): ChangesElsewhere {
  const [seenCount, setSeenCount] = useState(0);
  const [isUnseen, setIsUnseen] = useState(false);
  const show = useCallback(() => {
    setIsUnseen(false);
    setSeenCount((count) => count + 1);
  }, []);
  useEffect(
    () => onChangesElsewhere(() => (isAtWork || isTyping() ? setIsUnseen(true) : show())),
    [isAtWork, show],
  );
  return { seenCount, isUnseen, show };
}

function isTyping(): boolean {
  const isOpen = document.querySelector('[role="dialog"], [role="alertdialog"]') !== null;
  return isOpen || document.activeElement?.matches('input, textarea, select') === true;
}
