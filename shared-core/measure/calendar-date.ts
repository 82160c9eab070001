/** Days of the calendar as "2026-03-27": what is one, which one an instant falls on, how far two lie apart. */
import { type Language, spokenLanguage } from '../wording/say.ts';

/** A day that the calendar has, years 1 to 9999: 2024-02-29 is one, 2026-02-29 is not. */
export function isCalendarDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  return calendarDate(Number(year), Number(month), Number(day)) !== null;
}

/** The day as text, null where the calendar has none such. month from 1. */
export function calendarDate(year: number, month: number, day: number): string | null {
  const isDay = year >= 1 && year <= 9999 && day >= 1 && day <= dayCount(year, month);
  return isDay ? written(year, month, day) : null;
}

/** The day that an instant falls on by this machine's clock, so that it is still today late in the evening. */
export function localDate(instant: Date): string {
  return written(instant.getFullYear(), instant.getMonth() + 1, instant.getDate());
}

/**
 * Days since 1970-01-01, the same wherever clocks are put forward or back. What an older file may hold as 2026-02-31
 * counts on into the next month; NaN for what is not written as a date.
 */
export function dayNumber(date: string): number {
  const [year, month, day] = date.split('-').map(Number);
  return Date.UTC(year ?? Number.NaN, (month ?? Number.NaN) - 1, day) / 86_400_000;
}

/** The day so many months later; where that month is too short, its last day. A text that is no day comes back as it is. */
export function monthsAfter(date: string, count: number): string {
  if (!isCalendarDate(date)) return date;
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const later = year * 12 + month - 1 + count;
  const [toYear, toMonth] = [Math.floor(later / 12), (later % 12) + 1];
  return written(toYear, toMonth, Math.min(day, dayCount(toYear, toMonth)));
}

/** "14 Sept 2026" in the spoken language for a day, or for an instant the day it falls on here; a text that is neither comes back as it is. */
export function dayWords(text: string): string {
  const instant = new Date(text);
  const isInstant = /^\d{4}-\d{2}-\d{2}T/.test(text) && !Number.isNaN(instant.getTime());
  const date = isInstant ? localDate(instant) : text;
  if (!isCalendarDate(date)) return text;
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  // Date.UTC takes the years 0 to 99 for those of the last century.
  return dayFormat().format(new Date(0).setUTCFullYear(year, month - 1, day));
}

/** "09:05" by the clock of this machine. */
export function clockWords(date: Date): string {
  return date.toLocaleTimeString(dateLocale(), { hour: '2-digit', minute: '2-digit' });
}

/** English as it is spoken in the trade of cloth: the day before the month, and 24 hours. */
function dateLocale(): string {
  const language = spokenLanguage();
  return language === 'en' ? 'en-GB' : language;
}

const formats = new Map<Language, Intl.DateTimeFormat>();

function dayFormat(): Intl.DateTimeFormat {
  const language = spokenLanguage();
  const known = formats.get(language);
  if (known) return known;
  const made = new Intl.DateTimeFormat(dateLocale(), {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  });
  formats.set(language, made);
  return made;
}

/** 0 for a month that is none. */
function dayCount(year: number, month: number): number {
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
}

function written(year: number, month: number, day: number): string {
  const part = (number: number, length: number) => String(number).padStart(length, '0');
  return `${part(year, 4)}-${part(month, 2)}-${part(day, 2)}`;
}
