/** Sizes of thread and needles: numbers with a name in front ("Tkt 75") or two numbers at once ("80/12"). */
import { say } from '../wording/say.ts';
import { readNumber } from './number-text.ts';
import { fromUnit, type UnitId, units, unitSpelled } from './units.ts';

/** Why a text could not be read; without `what` it is simply not one of its kind. */
export interface Unread {
  readonly what?: string;
  readonly fix?: string;
}

/**
 * Needle sizes sold, NM to US. Source: several sewing guides agree. One table for leather
 * has 110/17; since NM is a measured thickness, it decides, and US 17 is read as 110.
 */
export const needleSizes: readonly { readonly nm: number; readonly us: number }[] = [
  { nm: 60, us: 8 },
  { nm: 65, us: 9 },
  { nm: 70, us: 10 },
  { nm: 75, us: 11 },
  { nm: 80, us: 12 },
  { nm: 90, us: 14 },
  { nm: 100, us: 16 },
  { nm: 110, us: 18 },
  { nm: 120, us: 19 },
];

function nmOfUs(us: number): number | undefined {
  return us === 17 ? 110 : needleSizes.find((size) => size.us === us)?.nm;
}

/** NM of "80/12", "12/80", "NM 80", "80", "US 12", "12": below 40 a bare number can only be a US size. */
export function readNeedleSize(text: string): number | Unread {
  const match = /^(nm|us|size|no\.?)? ?(\d{1,3})(?: ?\/ ?(\d{1,3}))?(?: ?(nm|us))?$/.exec(text);
  if (!match || (match[1] && match[4] && match[1] !== match[4])) return {};
  const name = match[1] === 'nm' || match[1] === 'us' ? match[1] : match[4];
  const first = Number(match[2]);
  if (match[3] === undefined) {
    if (name === 'nm' || (name === undefined && first >= 40)) return first;
    return nmOfUs(first) ?? unknownUs(first);
  }
  const nm = Math.max(first, Number(match[3]));
  const us = Math.min(first, Number(match[3]));
  const meant = nmOfUs(us);
  if (meant === undefined) return unknownUs(us);
  if (meant === nm) return nm;
  return {
    what: say('read-sizes.says-but-us-is-nm', { text, us, meant }),
    fix: say('read-sizes.type-nm-or-nm', { nm, meant }),
  };
}

function unknownUs(us: number): Unread {
  return {
    what: say('read-sizes.says-us-which-is-not-a', { us }),
    fix: say('read-sizes.type-the-nm-number-on-the'),
  };
}

/**
 * Tex of "tex 40", "T40", "Tkt 75", "30 wt", "Nm 80/2", "Ne 40/3", "270 den", "Tkt. No. 75". The name may stand
 * on either side. A stroke with a number of plies belongs to Nm and Ne alone; elsewhere it is refused.
 */
export function readThreadSize(
  text: string,
  bare: UnitId,
  { decimalComma = false }: { readonly decimalComma?: boolean } = {},
): number | Unread {
  const match = /^([a-z][a-z. ]*-?)? ?(\d[\d.,]*)(?: ?\/ ?(\d{1,2}))? ?([a-z][a-z. ]*)?$/.exec(text);
  if (!match || (match[1] && match[4])) return {};
  const name = (match[1] ?? match[4] ?? '').replace(/(?<=[a-z. ])no\.? ?$/, '').trim();
  const id = name === '' ? bare : unitSpelled('threadSize', name);
  if (!id) return {};
  const number = readNumber(match[2]!, { withFractions: false, decimalComma });
  if (typeof number === 'string' || (number.rest !== '' && number.rest !== '.')) return {};
  const n = number.numerator / number.denominator;
  const plyCount = match[3] === undefined ? 1 : Number(match[3]);
  if (match[3] !== undefined && id !== 'Nm' && id !== 'Ne') {
    return {
      what: say('read-sizes.says-but-only-nm-and-ne', { text }),
      fix: say('read-sizes.type-nm-80-2-ne-40'),
    };
  }
  if (n === 0 || plyCount === 0) return units[id].reciprocal ? {} : 0;
  return fromUnit(id, n) * plyCount;
}
