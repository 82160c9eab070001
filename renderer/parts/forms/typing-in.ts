/** Whether somebody is typing in one of the fields of a form: from the first key until the field is left or Enter is pressed. */
import { type FormEvent, type KeyboardEvent, useState } from 'react';

export interface TypingIn {
  readonly isTyping: boolean;
  /** For the element around the fields. */
  readonly around: {
    readonly onInput: (event: FormEvent) => void;
    readonly onBlur: () => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
}

export function useTypingIn(): TypingIn {
  const [isTyping, setIsTyping] = useState(false);
  const end = () => setIsTyping(false);
  return {
    isTyping,
    around: {
      onInput: ({ target }) => setIsTyping(isTypedInto(target)),
      onBlur: end,
      onKeyDown: ({ key }) => key === 'Enter' && end(),
    },
  };
}

/** A box that is ticked, or a choice, is whole at once. */
function isTypedInto(target: EventTarget): boolean {
  return target instanceof Element && target.matches('textarea, input:not([type=checkbox], [type=radio])');
}
