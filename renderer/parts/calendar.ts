/** Days as people write them. */

/** "14 Oct 2026" for an ISO date or instant; a text that is no date comes back as it is. */
export function dayText(iso: string): string {
  const isDateAlone = /^\d{4}-\d{2}-\d{2}$/.test(iso);
  const date = new Date(isDateAlone ? `${iso}T12:00:00` : iso);
  if (Number.isNaN(date.getTime())) return iso;
  return date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}

/** "14 Oct 2026, 09:05" for an instant, by the clock of this machine. */
export function momentText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return iso;
  return `${dayText(iso)}, ${date.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}`;
}

/** Today where the maker is, as an ISO date. */
export function todayIso(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
