/** Units and currency that a new workshop begins with: those of the place that the window's locale names. */
import countryToCurrency from 'country-to-currency';
import type { WorkshopFacts } from '../../shared-core/contract/contract.ts';
import type { Settings } from '../../shared-core/contract/schemas.ts';

type Units = Pick<Settings, 'system' | 'currency'>;

/** What a workshop file is made with, before any window has opened it. */
const unasked: Units = { system: 'metric', currency: 'EUR' };

/** Where inches and pounds are the everyday measures: Unicode CLDR, measurementData, measurementSystem "US". */
const imperialPlaces = ['US', 'LR', 'MM'];

const currencyOf: Readonly<Record<string, string>> = countryToCurrency;

/** Codes of the currencies that are in use somewhere, in order. */
export const currencies: readonly string[] = [...new Set(Object.values(currencyOf))].sort();

/** By the first of the locales ("en-GB", "de") whose place is known; a bare language stands for its main place. */
export function unitsOfLocale(locales: readonly string[]): Units {
  for (const locale of locales) {
    const place = placeOf(locale);
    const currency = place === undefined ? undefined : currencyOf[place];
    if (place !== undefined && currency !== undefined)
      return { system: imperialPlaces.includes(place) ? 'imperial' : 'metric', currency };
  }
  return unasked;
}

function placeOf(locale: string): string | undefined {
  try {
    return new Intl.Locale(locale).maximize().region;
  } catch {
    return undefined;
  }
}

/** Whether nobody has set anything yet in a workshop of the maker's own. */
export function isUnset({ workshop, settings, itemCount, planCount }: WorkshopFacts): boolean {
  const { workshopName, system, currency, unitsFrom } = settings;
  return (
    workshop === 'own' &&
    unitsFrom === undefined &&
    itemCount + planCount === 0 &&
    workshopName === '' &&
    system === unasked.system &&
    currency === unasked.currency
  );
}
