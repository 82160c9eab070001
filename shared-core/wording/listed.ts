/** Names in a row, as a sentence of the spoken language has them. */
import { say } from './say.ts';

/** "Back", "Back and Front", "Back, Front and Hood". */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return say('listed.and', { names: names.slice(0, -1).join(', '), last: names.at(-1) });
}

/** "m", "m or yd", "m, yd or cm". */
export function listedOr(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return say('listed.or', { names: names.slice(0, -1).join(', '), last: names.at(-1) });
}
