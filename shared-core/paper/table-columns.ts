/** How wide the columns of a table on paper are, and where their words break. Widths in points. */

/** How wide a text is in the typeface at the size in question. */
export type Measure = (text: string) => number;

export interface ColumnWish {
  /** Wide enough for its longest text unbroken, and for its longest word. */
  readonly wholePt: number;
  readonly minPt: number;
  /** Numbers: minPt holds all of them, since they are never broken. */
  readonly isUnbroken: boolean;
  /** A column that gains nothing by more room. */
  readonly isFixed?: boolean;
}

/** Narrower than this a broken word is no longer read. */
const narrowestPt = 36;

/** What a column takes at least: its longest word, or less where its longest text is shorter. */
export function minWidthPt({ wholePt, minPt, isUnbroken }: ColumnWish): number {
  if (isUnbroken) return minPt;
  return Math.min(wholePt, Math.max(minPt, narrowestPt));
}

/**
 * A width for each column, all of them together roomPt: each gets its least, then what is left goes to those that
 * wish for more, in proportion; what nobody wishes for is spread over all that may grow. Null where not even the least has room.
 */
export function columnWidths(wishes: readonly ColumnWish[], roomPt: number): readonly number[] | null {
  // A single endless word is broken rather than given the whole sheet.
  const min = wishes.map((wish) => (wish.isUnbroken ? wish.minPt : Math.min(minWidthPt(wish), roomPt / 3)));
  let left = roomPt - sum(min);
  if (left < -1e-6) return null;
  const wanted = wishes.map(({ wholePt }, index) => wholePt - (min[index] ?? 0));
  const given = Math.min(left, sum(wanted));
  const widths = min.map((width, index) =>
    given > 0 ? width + (given * (wanted[index] ?? 0)) / sum(wanted) : width,
  );
  left -= given;
  const growing = wishes.filter(({ isFixed }) => !isFixed).length;
  return widths.map((width, index) => (wishes[index]?.isFixed ? width : width + left / Math.max(1, growing)));
}

/** Lines no wider than widthPt, broken between words but not between a number and its unit, and inside a word that is wider than a line. */
export function brokenLines(text: string, widthPt: number, measure: Measure): readonly string[] {
  const lines: string[] = [];
  const glued = text.replace(/(\d) (?=\p{L}{1,3}(?!\p{L}))/gu, '$1\u00A0');
  let line = '';
  for (const word of glued.split(' ').filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= widthPt) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (measure(line) > widthPt && line.length > 1) {
      const fits = fittingCount(line, widthPt, measure);
      lines.push(line.slice(0, fits));
      line = line.slice(fits);
    }
  }
  const all = line === '' && lines.length > 0 ? lines : [...lines, line];
  return all.map((each) => each.replaceAll('\u00A0', ' '));
}

/** How many letters of a word go on a line: one at least. */
function fittingCount(word: string, widthPt: number, measure: Measure): number {
  let fits = 1;
  let tooMany = word.length;
  while (tooMany - fits > 1) {
    const middle = (fits + tooMany) >> 1;
    if (measure(word.slice(0, middle)) <= widthPt) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

/** The text, or as much of its beginning as goes on one line, with three dots. */
export function onOneLine(text: string, widthPt: number, measure: Measure): string {
  if (measure(text) <= widthPt) return text;
  return `${text.slice(0, fittingCount(text, widthPt - measure('...'), measure)).trimEnd()}...`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
