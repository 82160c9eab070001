/** Reads pattern files beside the window, so that no file, however it is made, can hold the window up. */
import './worker-language.ts';
import { readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import {
  type ReadChoices,
  type ReadPattern,
  defaultLimits,
} from '../../../shared-core/exchange/pattern/pattern.ts';

export interface PatternAsked {
  readonly fileName: string;
  readonly bytes: Uint8Array;
  readonly choices: ReadChoices;
}

self.onmessage = ({ data: { bytes, fileName, choices } }: MessageEvent<PatternAsked>) => {
  self.postMessage(readPattern(bytes, fileName, defaultLimits, choices) satisfies ReadPattern);
};
