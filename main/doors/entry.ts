/**
 * Who may come in at the loopback door. A ticket, which is good once and for a short time, is traded for a cookie.
 * The cookie's secret is never in an address. It is told to the browser for the page's own room alone, a path that
 * nobody can guess: browsers send a cookie to every port of a host, so another program of this machine that serves
 * pages would be sent it too.
 */
import { randomBytes, timingSafeEqual } from 'node:crypto';

/** Time to start a browser, or to copy an address into one. */
export const ticketMs = 120_000;

const cookieName = 'bolt-and-baffle';

export interface Entry {
  /** The path of the page and all that it asks for; begins and ends with a slash. */
  readonly room: string;
  newTicket(): string;
  /** The value of set-cookie for a ticket that is still good, which it then is no longer; null for any other text. */
  trade(ticket: string): string | null;
  /** cookies: the request's header. */
  isIn(cookies: string | undefined): boolean;
}

/** nowMs: any clock that runs forward. */
export function openEntry(nowMs: () => number): Entry {
  const room = `/${unguessable()}/`;
  const secret = unguessable();
  /** Until when each ticket is good. */
  const tickets = new Map<string, number>();
  return {
    room,
    newTicket() {
      const ticket = unguessable();
      tickets.set(ticket, nowMs() + ticketMs);
      return ticket;
    },
    trade(ticket) {
      const untilMs = tickets.get(ticket);
      tickets.delete(ticket);
      if (untilMs === undefined || nowMs() >= untilMs) return null;
      return `${cookieName}=${secret}; Path=${room}; HttpOnly; SameSite=Strict`;
    },
    isIn: (cookies) => isSame(cookieOf(cookies), secret),
  };
}

function unguessable(): string {
  return randomBytes(32).toString('base64url');
}

function cookieOf(cookies = ''): string {
  const pairs = cookies.split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${cookieName}=`))?.slice(cookieName.length + 1) ?? '';
}

/** Takes as long for a guess that is nearly right as for any other. */
function isSame(given: string, wanted: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(wanted)];
  return a.length === b.length && timingSafeEqual(a, b);
}
