/**
 * Names that the product gives to what it makes. The code has them in English; what is made is named in the language
 * spoken then. From there on a name is the maker's, and stays as it is in whatever language the plan is opened.
 */
import { hasMessage, messageIds, say, sayInEvery } from './say.ts';

export type Named = 'piece' | 'edge' | 'seam' | 'slot';

/** The name in the spoken language. Throws a RangeError for one that the catalogue does not have. */
export function givenName(named: Named, english: string): string {
  const id = `${named}-name.${english.replace(/[^A-Za-z0-9]+/g, '-').toLowerCase()}`;
  if (!hasMessage(id)) throw new RangeError(`no name ${id}`);
  return say(id);
}

/** Whether two names are one that the product gives, in two languages: "hem" and "Saum", "hem 2" and "Saum 2". */
export function isSameGivenName(named: Named, one: string, other: string): boolean {
  if (one === other) return true;
  const [stem, number] = parted(one);
  const [otherStem, otherNumber] = parted(other);
  if (number !== otherNumber) return false;
  return messageIds.some((id) => {
    if (!id.startsWith(`${named}-name.`)) return false;
    const names = sayInEvery(id);
    return names.includes(stem) && names.includes(otherStem);
  });
}

/** "hem 2" as "hem" and " 2". */
function parted(name: string): readonly [string, string] {
  const number = / \d+$/.exec(name)?.[0] ?? '';
  return [name.slice(0, name.length - number.length), number];
}
