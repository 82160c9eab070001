/**
 * Reads what a maker types into a field. Every spelling of every unit is taken in either system; a bare number
 * takes the field's unit. What could mean two things is refused with a sentence, never guessed.
 */
import { say } from '../wording/say.ts';
import { moneyNumber, plainMoney } from './money/money.ts';
import { plainText } from './number-text.ts';
import { ok, type Result, type Problem, err } from './problem.ts';
import { type QuantityKind, quantityFacts } from './quantity.ts';
import { type ReadOptions, readUnsigned } from './read-parts.ts';
import { showQuantity } from './show.ts';

export type { ReadOptions } from './read-parts.ts';

/**
 * The value inside (see quantity.ts) of what was typed, or a problem that says how to mend it.
 * Correctly rounded: "4 1/2 in" is 114.3 exactly as a literal would be.
 */
export function readQuantity(kind: QuantityKind, text: string, options: ReadOptions): Result<number> {
  const trouble = (what: string, fix?: string): Result<number> =>
    err(
      problemAt(
        options.where,
        what,
        fix ??
          say('read.type-such-as', {
            quantityFactsName: quantityFacts[kind].name,
            examples: examples(kind, options),
          }),
      ),
    );
  if (text.trim() === '') return trouble(say('common.is-empty'));
  if (text.length > 80) return trouble(say('read.is-too-long-to-be-read'));
  const plain = plainText(text);
  const negative = plain.startsWith('-');
  const unsigned = plain.replace(/^[-+] ?/, '');
  const reading = readUnsigned(kind, unsigned, options);
  if (typeof reading !== 'number') {
    const { what, fix } = reading;
    return trouble(
      what ??
        say('read.says-which-is-not', { text: text.trim(), quantityFactsName: quantityFacts[kind].name }),
      fix,
    );
  }
  return withinLimits(kind, negative && reading !== 0 ? -reading : reading, options, trouble);
}

function problemAt(where: string, what: string, fix: string): Problem {
  return { where, what, fix };
}

function examples(kind: QuantityKind, options: ReadOptions): string {
  return kind === 'money' && options.currency
    ? say('read.or', {
        plainMoney: plainMoney(1250, options.currency),
        currency: options.currency,
        moneyNumber: moneyNumber(125_000, options.currency),
      })
    : quantityFacts[kind].examples;
}

function withinLimits(
  kind: QuantityKind,
  value: number,
  options: ReadOptions,
  trouble: (what: string, fix?: string) => Result<number>,
): Result<number> {
  const facts = quantityFacts[kind];
  const min = options.min ?? facts.min;
  const max = options.max ?? facts.max;
  // A limit met in another unit may miss by the last bit of a float; that is no mistake of the maker's.
  const dust = 1e-12 * Math.max(Math.abs(value), 1e-9);
  if (!Number.isFinite(value)) return trouble(say('read.is-too-large-to-be-read'));
  if (value < 0 && min >= 0) return trouble(say('common.is-negative'));
  if (value === 0 && (options.aboveZero || min > 0)) return trouble(say('read.is-zero'));
  if (value < min - dust) {
    const least = limitText(kind, min, (typed) => typed >= min - dust, options);
    return trouble(say('read.is-less-than', { least }), say('read.type-or-more', { least }));
  }
  if (value > max + dust) {
    const most = limitText(kind, max, (typed) => typed <= max + dust, options);
    return trouble(say('read.is-more-than', { most }), say('read.type-or-less', { most }));
  }
  return ok(value);
}

/** A limit as it may be typed: 1470 mm is not "57 7/8 in", which is more and would be refused again. */
function limitText(
  kind: QuantityKind,
  limit: number,
  allowed: (typed: number) => boolean,
  options: ReadOptions,
): string {
  const typable = (text: string) => {
    const size = readUnsigned(kind, plainText(text).replace(/^-/, ''), options);
    return typeof size === 'number' && allowed(limit < 0 ? -size : size);
  };
  const usual = showQuantity(kind, limit, options);
  if (typable(usual)) return usual;
  const finer = [1, 2, 3, 4].map((digits) => showQuantity(kind, limit, { ...options, digits }));
  // Where every rounding goes the wrong way, a ten-thousandth inside the limit is near enough.
  const inside = [0.9999, 1.0001].map((near) => showQuantity(kind, limit * near, { ...options, digits: 6 }));
  return [...finer, ...inside].find(typable) ?? usual;
}
