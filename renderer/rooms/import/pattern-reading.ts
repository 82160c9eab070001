/** The file as it is read under the maker's choices, while the window stays free. */
import { say } from '../../../shared-core/wording/say.ts';
import { useEffect, useState } from 'react';
import {
  nothingFound,
  type ReadChoices,
  type ReadPattern,
} from '../../../shared-core/exchange/pattern/pattern.ts';
import { readPatternInWorker } from '../../client/workers/pattern-reader.ts';
import type { ChosenFile } from '../../parts/forms/FileChoice.tsx';

/** A reading that ends sooner needs no word. */
const slowMs = 400;

export interface PatternReading {
  /** Of this file, by these choices or those before while they are under way; null until then. */
  readonly read: ReadPattern | null;
  /** What is shown is not yet what the choices say. */
  readonly isReading: boolean;
  /** Long enough under way that the maker should hear of it. */
  readonly isSlow: boolean;
  readonly stop: () => void;
}

interface Answer {
  readonly file: ChosenFile;
  readonly choices: ReadChoices;
  readonly read: ReadPattern;
}

/** choices: the same object for as long as they say the same. */
export function usePatternReading(file: ChosenFile | null, choices: ReadChoices): PatternReading {
  const [answer, setAnswer] = useState<Answer | null>(null);
  const [underWay, setUnderWay] = useState<AbortController | null>(null);
  const [isSlow, setIsSlow] = useState(false);
  useEffect(() => {
    if (!file) return;
    const control = new AbortController();
    setUnderWay(control);
    const slow = setTimeout(() => setIsSlow(true), slowMs);
    const asked = { fileName: file.name, bytes: file.bytes, choices };
    void readPatternInWorker(asked, control.signal).then((read) => {
      if (control.signal.aborted) return;
      clearTimeout(slow);
      setAnswer({ file, choices, read });
      setUnderWay(null);
      setIsSlow(false);
    });
    return () => {
      control.abort();
      clearTimeout(slow);
      setIsSlow(false);
    };
  }, [file, choices]);
  const stop = (): void => {
    if (!file) return;
    underWay?.abort();
    setAnswer({ file, choices, read: stopped });
    setUnderWay(null);
    setIsSlow(false);
  };
  const own = answer?.file === file ? answer : null;
  return {
    read: own?.read ?? null,
    isReading: file !== null && own?.choices !== choices,
    isSlow,
    stop,
  };
}

const stopped = nothingFound({
  where: say('common.the-file'),
  what: say('pattern-reading.was-not-read-to-its-end'),
  fix: say('pattern-reading.choose-it-again-or-another-one'),
});
