/** Requests to the loopback door as the bytes that are sent. */

export interface DoorSeen {
  /** "127.0.0.1:PORT" */
  readonly host: string;
  /** Path of the page, between slashes. */
  readonly room: string;
  /** "name=secret", as a browser that is in sends it. */
  readonly cookie: string;
  /** Tickets that were good once. */
  readonly usedTickets: readonly string[];
}

export interface HostileRequest {
  readonly group: string;
  /** What is sent, one piece after another. */
  readonly pieces: readonly (string | Uint8Array)[];
  /** Carries the right secret, and must be refused all the same. */
  readonly hasSecret: boolean;
}

export const factsCall = JSON.stringify({ call: 'workshopFacts', workshop: 'own', input: {} });

/** One request in HTTP/1.1. Undefined headers are left out. */
export function requestText(
  line: string,
  headers: Readonly<Record<string, string | undefined>>,
  body = '',
): string {
  const length = body === '' ? {} : { 'Content-Length': String(Buffer.byteLength(body)) };
  const lines = Object.entries({ ...length, ...headers }).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return [`${line} HTTP/1.1`, ...lines, '', body].join('\r\n');
}
