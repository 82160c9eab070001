/**
 * Numbers as makers write them, kept as a quotient of whole numbers so that nothing is lost before a unit's
 * factor is applied.
 *
 * Marks, the stated rule: a single dot is always decimal. With both marks the last one is decimal and the other
 * groups thousands. A mark that occurs more than once groups thousands. A single comma is decimal, unless one
 * to three digits stand before it and exactly three behind: then "1,250" could be 1.25 or 1250 and is refused,
 * except where `commaGroups` says that such a field has no third decimal place. Spaces may group thousands.
 * Where the maker's language writes a decimal comma (`decimalComma`), dot and comma change places in these rules;
 * files are read by the rule above in every language, since they may come from anywhere.
 */

export interface NumberText {
  readonly numerator: number;
  readonly denominator: number;
  /** Decimal places typed; 0 for a fraction. */
  readonly placeCount: number;
  /** What follows the number. */
  readonly rest: string;
}

export interface NumberRule {
  /** The sign that is not decimal groups thousands even where it stands once before three digits. */
  readonly commaGroups?: boolean;
  readonly withFractions?: boolean;
  /** The comma is the decimal sign, the dot groups. */
  readonly decimalComma?: boolean;
}

export type NumberReading = NumberText | 'none' | 'two ways' | 'too long' | 'bad fraction';

const vulgar: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Stands for a sign that would turn into a digit and is none. */
const noDigit = '\ufffd';

/**
 * Lower case, plain spaces, plain fractions, plain quotes and minus signs: "4½ ″" as `4 1/2 "`. Raised, lowered and
 * circled figures are no digits but in the name of a unit ("g/m²"): 5² is neither 52 nor 25 to a maker.
 */
export function plainText(text: string): string {
  return text
    .replace(/[¼½¾⅐-⅞]/g, (sign) => ` ${vulgar[sign] ?? sign} `)
    .replace(/(?<![\p{L}])[²³]|(?![²³⅟])\p{No}/gu, noDigit)
    .replace(/[´`‘’‛′]/g, "'")
    .replace(/[“”‟″]/g, '"')
    .normalize('NFKC')
    .replace(/[⁄∕]/g, '/')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/''/g, '"')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();
}

function fraction(whole: string, top: string, bottom: string, rest: string): NumberReading {
  if (whole.length > 9 || top.length > 5 || bottom.length > 5) return 'too long';
  const over = Number(bottom);
  if (over === 0 || (whole !== '' && Number(top) >= over)) return 'bad fraction';
  return { numerator: Number(whole) * over + Number(top), denominator: over, placeCount: 0, rest };
}

/** Whole and decimal digits of "1,234.5", or which rule it breaks. */
function splitMarks(
  digits: string,
  { commaGroups = false, decimalComma = false }: NumberRule,
): readonly [string, string] | 'none' | 'two ways' {
  const marks = digits.replace(/\d/g, '');
  if (marks === '') return [digits, ''];
  const last = marks.at(-1)!;
  const others = marks.slice(0, -1);
  const cut = digits.lastIndexOf(last);
  if (others === '') {
    const whole = digits.slice(0, cut);
    const places = digits.slice(cut + 1);
    const grouped =
      last === (decimalComma ? '.' : ',') && /^[1-9]\d{0,2}$/.test(whole) && places.length === 3;
    if (!grouped) return [whole, places];
    return commaGroups ? [whole + places, ''] : 'two ways';
  }
  const oneMark = [...marks].every((mark) => mark === last);
  if (oneMark) {
    const groups = digits.split(last);
    return /^[1-9]\d{0,2}$/.test(groups[0]!) && groups.slice(1).every((group) => group.length === 3)
      ? [groups.join(''), '']
      : 'none';
  }
  const groups = digits.slice(0, cut).split(others[0]!);
  return /^[1-9]\d{0,2}$/.test(groups[0]!) && groups.slice(1).every((group) => /^\d{3}$/.test(group))
    ? [groups.join(''), digits.slice(cut + 1)]
    : 'none';
}

/**
 * The number at the beginning of a text that went through plainText: "4 1/2 in", "4-1/2", "4 and 1/2", "1/2",
 * "11,5", "1,234.5", "1 470", ".5". No sign. `withFractions: false` leaves a slash in the rest.
 */
export function readNumber(text: string, rule: NumberRule = {}): NumberReading {
  if (rule.withFractions !== false) {
    const mixed = /^(\d+)(?: ?- ?| ?& ?| and | )(\d+) ?\/ ?(\d+)(?![\d.,/])/.exec(text);
    if (mixed) return fraction(mixed[1]!, mixed[2]!, mixed[3]!, text.slice(mixed[0].length));
    const plain = /^(\d+) ?\/ ?(\d+)(?![\d.,/])/.exec(text);
    if (plain) return fraction('', plain[1]!, plain[2]!, text.slice(plain[0].length));
  }
  const match =
    /^[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?(?![\d.,/ ]*\d)/.exec(text) ??
    /^(?:\d[\d.,]*\d|\d|[.,]\d+)/.exec(text);
  if (!match) return 'none';
  const spaced = match[0].includes(' ');
  const split = splitMarks(match[0].replaceAll(' ', ''), rule);
  if (typeof split === 'string') return spaced && split === 'two ways' ? 'none' : split;
  const [whole, places] = split;
  const digits = (whole + places).replace(/^0+(?=\d)/, '');
  if (digits.length > 15 || places.length > 15) return 'too long';
  return {
    numerator: Number(digits),
    denominator: 10 ** places.length,
    placeCount: places.length,
    rest: text.slice(match[0].length),
  };
}
