/** The lines of a DXF by pairs, each with its number: a group code on one line, its value on the next. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import { plainNumber } from '../plain-number.ts';

export interface Pair {
  readonly code: number;
  readonly value: string;
}

/** Where the reading stands. */
export interface Cursor {
  code: number;
  value: string;
  /** Line of the group code, from 1. */
  line: number;
  isAtEnd: boolean;
  problem: Problem | null;
}

/** next: moves to the pair after. rest: what comes after the current one. */
export function startOf(text: string): { cursor: Cursor; next: () => void; rest: () => string } {
  const cursor: Cursor = { code: -1, value: '', line: -1, isAtEnd: false, problem: null };
  let at = 0;
  let lineCount = 0;
  const takeLine = (): string | null => {
    if (at >= text.length) return null;
    let end = text.indexOf('\n', at);
    if (end < 0) end = text.length;
    const line = text.slice(at, text[end - 1] === '\r' ? end - 1 : end);
    at = end + 1;
    lineCount++;
    return line;
  };
  const next = () => {
    const codeLine = takeLine();
    cursor.line = lineCount;
    if (codeLine === null || (codeLine.trim() === '' && text.slice(at).trim() === '')) {
      cursor.isAtEnd = true;
      return;
    }
    const value = takeLine();
    if (!/^\s*-?\d{1,4}\s*$/.test(codeLine)) {
      cursor.problem = {
        where: say('dxf-pairs.line', { line: cursor.line }),
        what: say('dxf-pairs.should-be-a-group-code-of', { codeLine: codeLine.trim().slice(0, 30) }),
        fix:
          cursor.line <= 2
            ? say('dxf-pairs.choose-an-ascii-dxf-file')
            : say('dxf-pairs.save-the-file-again-it-is'),
      };
      cursor.isAtEnd = true;
      return;
    }
    if (value === null) {
      cursor.isAtEnd = true;
      return;
    }
    cursor.code = Number(codeLine);
    cursor.value = value;
  };
  return { cursor, next, rest: () => text.slice(at) };
}

/** The first value of a code, trimmed; '' where there is none. */
export function textOf(pairs: readonly Pair[], code: number): string {
  return pairs.find((pair) => pair.code === code)?.value.trim() ?? '';
}

/** The first value of a code as a number, `absent` where there is none; NaN where it cannot be read. */
export function numberOf(pairs: readonly Pair[], code: number, absent = Number.NaN): number {
  const pair = pairs.find((candidate) => candidate.code === code);
  return pair === undefined ? absent : numberIn(pair.value);
}

/** NaN for what is no number, or beyond anything that is drawn. */
export function numberIn(text: string): number {
  const value = plainNumber(text);
  return Math.abs(value) < 1e9 ? value : Number.NaN;
}
