/** What a browser's own record of its network (--log-net-log) says of whom it spoke to. */
import { readFileSync } from 'node:fs';

export interface NetLogFound {
  /** "address:port" of each connection that was tried. */
  readonly connections: readonly string[];
  /** How often a name was looked up, by the system or by the browser itself. */
  readonly lookupCount: number;
  /** Addresses that were asked for, whether or not anything could be reached, but for what a browser answers itself. */
  readonly requests: readonly string[];
  /** Datagrams that were sent. */
  readonly datagramCount: number;
}

interface NetLogEvent {
  readonly type: number;
  readonly params?: { readonly url?: string; readonly address?: string };
}

/** Answered inside the browser, without any network. */
const inside = /^(data|blob|file|about|chrome|chrome-extension|chrome-untrusted|devtools):/;

export function readNetLog(file: string): NetLogFound {
  const { constants, events } = JSON.parse(readFileSync(file, 'utf8')) as {
    constants: { logEventTypes: Record<string, number> };
    events: NetLogEvent[];
  };
  const types = constants.logEventTypes;
  const named = (name: string): NetLogEvent[] => {
    if (types[name] === undefined) throw new Error(`this browser's record knows no ${name}`);
    return events.filter(({ type }) => type === types[name]);
  };
  const parts = (name: string, part: 'url' | 'address'): string[] => [
    ...new Set(named(name).flatMap(({ params }) => params?.[part] ?? [])),
  ];
  return {
    connections: parts('TCP_CONNECT_ATTEMPT', 'address'),
    lookupCount: named('HOST_RESOLVER_SYSTEM_TASK').length + named('HOST_RESOLVER_DNS_TASK').length,
    requests: parts('URL_REQUEST_START_JOB', 'url').filter((url) => !inside.test(url)),
    datagramCount: named('UDP_BYTES_SENT').length,
  };
}
