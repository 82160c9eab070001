/** Fibre content as makers write it ("65 % cotton, 35 % polyester") read into shares of generic fibres. */
import { say } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import { type Fibre, fibreOfWord } from './fibre-names.ts';

export interface FibreShare {
  readonly fibre: Fibre;
  /** Of the mass, above 0, at most 1. */
  readonly shareRatio: number;
}

/** Shares may miss 100 % by this, as when thirds are written 33.3 %. */
const sumToleranceRatio = 0.005;

/**
 * Shares of a fibre text, largest first; one name twice is added up. A lone name without a number is all of it.
 * Names outside the generic ones, numbers that cannot be read and shares that do not add up to 100 % are problems.
 * where: whose text it is, for the problem.
 */
export function readFibre(text: string, where: string): Result<readonly FibreShare[]> {
  // A comma between two digits is a decimal one.
  const parts = text
    .split(/(?<!\d),|,(?!\d)|[;/+]|\band\b/i)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) {
    return err({ where, what: say('common.is-missing'), fix: say('fibre.type-it-like-65-cotton-35') });
  }
  const problems: Problem[] = [];
  const shares = new Map<Fibre, number>();
  for (const part of parts) {
    const read = readPart(part, parts.length === 1, where);
    if (read.ok) shares.set(read.value.fibre, (shares.get(read.value.fibre) ?? 0) + read.value.shareRatio);
    else problems.push(...read.problems);
  }
  if (problems.length > 0) return err(...problems);
  const sum = [...shares.values()].reduce((total, share) => total + share, 0);
  if (Math.abs(sum - 1) > sumToleranceRatio) {
    return err({
      where,
      what: say('fibre.adds-up-to', { sum: Number((sum * 100).toFixed(1)) }),
      fix: say('fibre.make-the-shares-add-up-to'),
    });
  }
  return ok(
    [...shares]
      .map(([fibre, share]) => ({ fibre, shareRatio: share / sum }))
      .sort((a, b) => b.shareRatio - a.shareRatio),
  );
}

/** The fibre that most of it is; null where the text is missing or cannot be read. */
export function mainFibre(text: string | null): Fibre | null {
  if (text === null) return null;
  const read = readFibre(text, '');
  return read.ok ? (read.value[0]?.fibre ?? null) : null;
}

function readPart(part: string, isOnly: boolean, where: string): Result<FibreShare> {
  const numberFirst = /^(\d+(?:[.,]\d+)?)\s*%?\s*(\p{L}[\p{L}’ -]*)$/iu.exec(part);
  const nameFirst = /^(\p{L}[\p{L}’ -]*?)\s*(\d+(?:[.,]\d+)?)\s*%?$/iu.exec(part);
  const [name, number] = numberFirst
    ? [numberFirst[2]!, numberFirst[1]!]
    : nameFirst
      ? [nameFirst[1]!, nameFirst[2]!]
      : isOnly && /^\p{L}[\p{L}’ -]*$/iu.test(part)
        ? [part, '100']
        : [null, null];
  if (name === null) {
    return err({
      where,
      what: say('fibre.has-a-part-that-cannot-be', { part }),
      fix: say('fibre.type-it-like-65-cotton-35'),
    });
  }
  const fibre = fibreOfWord(name);
  if (!fibre) {
    return err({
      where,
      what: say('fibre.names-no-generic-fibre', { name: name.trim() }),
      fix: say('fibre.use-the-generic-name-such-as'),
    });
  }
  const shareRatio = Number(number.replace(',', '.')) / 100;
  if (!(shareRatio > 0 && shareRatio <= 1)) {
    return err({
      where,
      what: say('fibre.has-a-share-of', { number }),
      fix: say('fibre.type-a-share-above-0-and'),
    });
  }
  return ok({ fibre, shareRatio });
}
