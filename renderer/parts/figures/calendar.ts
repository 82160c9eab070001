/** Moments as people write them, and today. */
import { clockWords, dayWords, localDate } from '../../../shared-core/measure/calendar-date.ts';

/** "14 Oct 2026, 09:05" for an instant, by the clock of this machine; a text that is none comes back as it is. */
export function momentText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return iso;
  return `${dayWords(iso)}, ${clockWords(date)}`;
}

/** Today where the maker is, as an ISO date. */
export function todayIso(): string {
  return localDate(new Date());
}
