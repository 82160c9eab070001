/**
 * A maker's mistake as a value: where it is, what is wrong, and how to mend it.
 * A programmer's mistake throws instead. An unreadable value is a problem, never a zero.
 */
export interface Problem {
  /** The place, in the maker's words: "Width of Grey taffeta", "line 12, column price". */
  readonly where: string;
  /** What is wrong with it, one clause: "is negative". */
  readonly what: string;
  /** What to do: "Type a width above 0, such as 58 in or 147 cm." */
  readonly fix: string;
}

export type Result<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function ok<Value>(value: Value): Result<Value> {
  return { ok: true, value };
}

export function err(...problems: readonly Problem[]): Result<never> {
  return { ok: false, problems };
}

/** One sentence for a problem: "Width of Grey taffeta is negative. Type a width above 0." */
export function problemSentence(problem: Problem): string {
  return `${problem.where} ${problem.what}. ${problem.fix}`;
}
