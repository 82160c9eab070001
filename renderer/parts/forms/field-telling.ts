/**
 * When it is said what is wrong in a field. Not while it is typed for the first time: "12 i" is on its way to "12 in".
 * Aloud when the field is left or Enter is pressed; and while that is being mended, only to the eye.
 */
import { useState } from 'react';

export interface FieldTelling {
  /** What is to stand under the field now. */
  readonly shown: string | null;
  readonly isAloud: boolean;
  /** At each key. */
  readonly onType: () => void;
  /** When the field is left, or Enter is pressed in it. */
  readonly onLeave: () => void;
}

/** problem: what is wrong with the text that stands in the field, null where nothing is. */
export function useFieldTelling(problem: string | null): FieldTelling {
  const [isTyping, setIsTyping] = useState(false);
  const [wasTold, setWasTold] = useState(false);
  const isWrong = problem !== null;
  // What is wrong may be found out only after the field was left.
  if (!isTyping && wasTold !== isWrong) setWasTold(isWrong);
  return {
    shown: isTyping && !wasTold ? null : problem,
    isAloud: !isTyping,
    onType: () => setIsTyping(true),
    onLeave: () => setIsTyping(false),
  };
}
