import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import {
  calendarDate,
  dayWords,
  dayNumber,
  isCalendarDate,
  localDate,
} from '../../../shared-core/measure/calendar-date.ts';
import { isoDate } from '../../../shared-core/contract/schemas.ts';
import { readDays } from '../../../shared-core/exchange/stash-csv/stash-cells.ts';
import { isOldPrice, priceAgeDays } from '../../../shared-core/stash/offer.ts';

const zoneBefore = process.env.TZ;
afterEach(() => {
  if (zoneBefore === undefined) delete process.env.TZ;
  else process.env.TZ = zoneBefore;
});

function inZone<Value>(zone: string, made: () => Value): Value {
  process.env.TZ = zone;
  return made();
}

describe('a day of the calendar', () => {
  it.each(['2026-03-27', '2024-02-29', '2000-02-29', '2026-12-31', '0099-01-01', '9999-12-31'])(
    '%s is one',
    (text) => {
      expect(isCalendarDate(text)).toBe(true);
    },
  );

  it.each([
    '2026-02-31',
    '2026-02-29',
    '1900-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-01-00',
    '2026-1-1',
    '0000-01-01',
    ' 2026-01-01',
    '2026-01-01T00:00',
    '27.3.2026',
    '',
  ])('"%s" is none', (text) => {
    expect(isCalendarDate(text)).toBe(false);
    expect(isoDate.safeParse(text).success).toBe(false);
  });

  it.each(['2026-02-31', '2026-1-1', '0000-01-01', ' 2026-01-01', '27.3.2026', 'soon'])(
    '"%s" is shown as it stands',
    (text) => {
      expect(dayWords(text)).toBe(text);
    },
  );

  it('is the same for every reader, and its number goes up by one each day', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 9999 }),
        fc.nat({ max: 14 }),
        fc.nat({ max: 34 }),
        (year, month, day) => {
          const text = [
            String(year).padStart(4, '0'),
            ...[month, day].map((part) => String(part).padStart(2, '0')),
          ].join('-');
          const last = new Date(0);
          last.setUTCFullYear(year, month, 0);
          const isReal = month >= 1 && month <= 12 && day >= 1 && day <= last.getUTCDate();
          expect([isCalendarDate(text), isoDate.safeParse(text).success]).toEqual([isReal, isReal]);
          expect(readDays(text)).toEqual(isReal ? [text] : []);
          expect(calendarDate(year, month, day)).toBe(isReal ? text : null);
          if (isReal && day > 1) {
            expect(
              dayNumber(text) - dayNumber(`${text.slice(0, 8)}${String(day - 1).padStart(2, '0')}`),
            ).toBe(1);
          }
        },
      ),
      { seed: 11, numRuns: 2000 },
    );
  });

  it('that an older file holds though there is none counts on into the next month', () => {
    expect(dayNumber('1970-01-02')).toBe(1);
    expect(dayNumber('2026-02-31')).toBe(dayNumber('2026-03-03'));
    expect(dayNumber('soon')).toBeNaN();
  });
});

describe('the day of an instant is that of the clock on the wall', () => {
  it.each([
    // Evening in the west is already the next day in Greenwich, morning in the east still the one before.
    ['America/Los_Angeles', '2026-10-15T03:30:00Z', '2026-10-14'],
    ['Pacific/Auckland', '2026-10-14T12:30:00Z', '2026-10-15'],
    ['UTC', '2026-10-14T23:59:59.999Z', '2026-10-14'],
    ['Asia/Kolkata', '2026-10-14T18:29:59Z', '2026-10-14'],
    ['Asia/Kolkata', '2026-10-14T18:30:00Z', '2026-10-15'],
    // Midnight of the days on which the clocks change: an hour is left out, or comes twice.
    ['Europe/London', '2026-03-28T23:59:59Z', '2026-03-28'],
    ['Europe/London', '2026-03-29T00:00:00Z', '2026-03-29'],
    ['Europe/London', '2026-03-29T22:59:59Z', '2026-03-29'],
    ['Europe/London', '2026-03-29T23:00:00Z', '2026-03-30'],
    ['America/New_York', '2026-11-01T03:59:59Z', '2026-10-31'],
    ['America/New_York', '2026-11-01T04:00:00Z', '2026-11-01'],
    ['America/New_York', '2026-11-02T04:59:59Z', '2026-11-01'],
    ['America/New_York', '2026-11-02T05:00:00Z', '2026-11-02'],
    // A day that began at one o'clock, since midnight was left out.
    ['America/Sao_Paulo', '2018-11-04T02:59:59Z', '2018-11-03'],
    ['America/Sao_Paulo', '2018-11-04T03:00:00Z', '2018-11-04'],
  ])('in %s at %s it is %s', (zone, instant, day) => {
    expect(inZone(zone, () => localDate(new Date(instant)))).toBe(day);
    expect(inZone(zone, () => dayWords(instant))).toBe(dayWords(day));
  });
});

describe('a price', () => {
  it('is as many days old as the calendar says, wherever the clocks change between', () => {
    for (const zone of ['America/Los_Angeles', 'Europe/London', 'Pacific/Apia']) {
      const ages = inZone(zone, () =>
        ['2026-03-28', '2025-10-25', '2011-12-29', '2026-09-30'].map((pricedOn) =>
          priceAgeDays({ pricedOn }, '2026-10-26'),
        ),
      );
      expect(ages).toEqual([212, 366, 5415, 26]);
    }
    expect(isOldPrice({ pricedOn: '2026-02-28' }, '2026-08-27')).toBe(false);
    expect(isOldPrice({ pricedOn: '2026-02-28' }, '2026-08-28')).toBe(true);
  });

  it('is shown with the day it was seen, in every zone', () => {
    for (const zone of ['Pacific/Apia', 'UTC', 'America/Los_Angeles']) {
      expect(inZone(zone, () => dayWords('2011-12-30'))).toBe('30 Dec 2011');
      expect(inZone(zone, () => dayWords('2026-02-31'))).toBe('2026-02-31');
    }
  });
});
