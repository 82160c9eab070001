/**
 * Amounts of money as written on a receipt, with as many decimal places as the currency has. Where those are fewer
 * than three, a comma before three digits groups thousands; where they are three, it could mean both and is refused.
 */
import { say } from '../../wording/say.ts';
import { currencySigns, meansCurrency, minorPlaces, placesWord } from './currency.ts';
import { plainMoney } from './money.ts';
import { readNumber } from '../number-text.ts';
import type { Unread } from '../read-sizes.ts';

const word = `[a-z]{3}|[${currencySigns.join('')}]`;
const shape = new RegExp(`^(${word})? ?([\\d., ]*\\d)(?:\\.?-)? ?(${word})?$`);

/**
 * Minor units of "12.50", "12,50", "EUR 1,250.00", "€12" (text in lower case, as plainText gives it); a sign or code
 * must be that of the workshop's currency. Throws where the currency is ''.
 */
export function readMoney(
  text: string,
  currency: string,
  { decimalComma = false }: { readonly decimalComma?: boolean } = {},
): number | Unread {
  const places = minorPlaces(currency);
  const match = shape.exec(text);
  if (!match || (match[1] && match[3])) return {};
  const sign = match[1] ?? match[3];
  if (sign && !meansCurrency(sign, currency)) {
    return { what: say('read-money.is-in-which-is-not-the', { sign: sign.toUpperCase() }) };
  }
  const number = readNumber(match[2]!, {
    commaGroups: places < 3,
    withFractions: false,
    decimalComma,
  });
  if (number === 'two ways') return twoWays(match[2]!, decimalComma);
  if (typeof number === 'string' || number.rest !== '') return {};
  const isWhole = number.numerator % number.denominator === 0;
  // Receipts write 1250.00 even where nothing smaller exists; 1.250 is a thousand to some.
  if (number.placeCount > places && !(isWhole && number.placeCount < 3)) {
    return {
      what: tooFine(currency),
      fix: say('read-money.type-an-amount-such-as', { plainMoney: plainMoney(1250, currency) }),
    };
  }
  return (number.numerator * 10 ** places) / number.denominator;
}

function twoWays(typed: string, decimalComma: boolean): Unread {
  const [sign, decimal] = decimalComma ? ['.', ','] : [',', '.'];
  return {
    what: say('read-money.says-which-could-be-read-in', { typed }),
    fix: say('read-money.type-or-without-a-comma', {
      typed: typed.replace(sign!, decimal!),
      typed2: typed.replace(sign!, ''),
    }),
  };
}

function tooFine(currency: string): string {
  if (minorPlaces(currency) === 0) return say('read-money.has-decimal-places-and-has-none', { currency });
  return say('read-money.has-more-than-decimal-places', { placesWord: placesWord(currency) });
}
