/**
 * What somebody on this machine, or a page elsewhere in the maker's browser, might send to the loopback door: as bytes,
 * since much of it no library would send. Whoever sends it knows the port and even the page's room, only not the secret.
 */

import { brokenRequests } from './broken-requests.ts';
import { type DoorSeen, factsCall, type HostileRequest, requestText } from './request-text.ts';

type Headers = Readonly<Record<string, string>>;

/** Every hostile request, group by group. */
export function hostileRequests(door: DoorSeen): HostileRequest[] {
  const without = (group: string, texts: readonly (string | Uint8Array)[]): HostileRequest[] =>
    texts.map((text) => ({ group, pieces: [text], hasSecret: false }));
  const withSecret = (group: string, texts: readonly string[]): HostileRequest[] =>
    texts.map((text) => ({ group, pieces: [text], hasSecret: true }));
  return [
    ...without('no secret', noSecret(door)),
    ...without('wrong secret', wrongSecret(door)),
    ...without('used ticket', usedTicket(door)),
    ...without('foreign host, no secret', foreignHosts(door, {})),
    ...brokenRequests(door),
    ...withSecret('foreign host', foreignHosts(door, { Cookie: door.cookie })),
    ...withSecret('foreign origin', foreignOrigins(door)),
    ...withSecret('content type', contentTypes(door)),
    ...withSecret('traversal', traversals(door)),
    ...withSecret('body', bodies(door)),
    ...withSecret('broken off', brokenOff(door)),
  ];
}

const methods = ['GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'OPTIONS', 'TRACE', 'PATCH', 'PROPFIND'];

function noSecret({ host, room }: DoorSeen): string[] {
  const guess = 'A'.repeat(43);
  const own = ['', 'call', 'window', 'index.html', 'assets/', '../', '?ticket=', '#', '%00'].map(
    (path) => `${room}${path}`,
  );
  const targets = [
    ...own,
    ...['/', '//', '///', '/enter', '/enter?', `/enter?ticket=${guess}`, '/enter?ticket=&ticket=', '/call'],
    ...['*', 'http://[', '/%', '/%zz', '/..', '/\\', '/favicon.ico', `/${'a'.repeat(7_000)}`, '/?token=x'],
    ...[`http://${host}${room}`, `http://shop.example.org${room}`, `//shop.example.org${room}`],
  ];
  const plain = methods.flatMap((method) =>
    targets.map((target) => requestText(`${method} ${target}`, { Host: host })),
  );
  const call = { Host: host, Origin: `http://${host}`, 'Content-Type': 'application/json' };
  return [
    ...plain,
    requestText(`CONNECT ${host}`, { Host: host }),
    ...[`${room}call`, '/call', '/'].map((target) => requestText(`POST ${target}`, call, factsCall)),
    ...['GET', 'POST'].map((method) =>
      requestText(`${method} ${room}window`, {
        Host: host,
        Connection: 'Upgrade',
        Upgrade: 'websocket',
        'Sec-WebSocket-Version': '13',
        'Sec-WebSocket-Key': 'AAAAAAAAAAAAAAAAAAAAAA==',
      }),
    ),
    requestText(`POST ${room}call`, { ...call, Expect: '100-continue' }, factsCall),
    requestText(`POST ${room}call`, { ...call, Expect: 'a miracle' }, factsCall),
    `GET ${room} HTTP/1.0\r\nHost: ${host}\r\n\r\n`,
  ];
}

/** Ways to show something that is nearly the secret, or the secret in a place where it does not count. */
function wrongSecret({ host, room, cookie, usedTickets }: DoorSeen): string[] {
  const [name = '', secret = ''] = cookie.split('=');
  const swapped = [...secret].map((letter) =>
    letter === letter.toLowerCase() ? letter.toUpperCase() : letter.toLowerCase(),
  );
  const shown: Headers[] = [
    ...['', 'x', secret.slice(1), secret.slice(0, -1), `${secret}A`, `${secret}${secret}`, `"${secret}"`],
    ...[swapped.join(''), 'A'.repeat(secret.length), usedTickets[0] ?? '', room.slice(1, -1), `${secret}\t.`],
  ].map((value) => ({ Cookie: `${name}=${value}` }));
  shown.push(
    { Cookie: `${name.toUpperCase()}=${secret}` },
    { Cookie: `other=${secret}` },
    { Cookie: `x${name}=${secret}` },
    { Cookie: `${name}=wrong; ${name}=${secret}` },
    { Cookie: `a${cookie}` },
    { Cookie: secret },
    { Cookie2: cookie },
    { 'Set-Cookie': cookie },
    { Authorization: `Bearer ${secret}` },
    { Authorization: `Basic ${Buffer.from(`${name}:${secret}`).toString('base64')}` },
    { 'X-Cookie': cookie },
    { 'Proxy-Authorization': `Bearer ${secret}` },
  );
  const call = { Origin: `http://${host}`, 'Content-Type': 'application/json' };
  return shown.flatMap((headers) => [
    requestText(`GET ${room}`, { Host: host, ...headers }),
    requestText(`GET ${room}window`, { Host: host, ...headers }),
    requestText(`POST ${room}call`, { Host: host, ...call, ...headers }, factsCall),
  ]);
}

function usedTicket({ host, room, usedTickets }: DoorSeen): string[] {
  const form = { Host: host, Origin: 'null', 'Content-Type': 'application/x-www-form-urlencoded' };
  return usedTickets.flatMap((ticket) => [
    requestText(`GET /enter?ticket=${ticket}`, { Host: host }),
    requestText(`GET /enter?ticket=wrong&ticket=${ticket}`, { Host: host }),
    requestText(`GET /enter?ticket=%${ticket.charCodeAt(0).toString(16)}${ticket.slice(1)}`, { Host: host }),
    requestText(`GET ${room}?ticket=${ticket}`, { Host: host }),
    requestText(`GET ${room}`, { Host: host, Authorization: `Bearer ${ticket}` }),
    requestText('POST /enter', form, `ticket=${ticket}`),
    requestText('POST /enter', { ...form, 'Content-Type': 'application/json' }, JSON.stringify({ ticket })),
    requestText('POST /enter', form, `${'x=y&'.repeat(2_000)}ticket=${ticket}`),
    requestText('PUT /enter', form, `ticket=${ticket}`),
    requestText('HEAD /enter', { Host: host, Ticket: ticket }),
  ]);
}

/** A name that was pointed at this machine, or none, or one that is nearly ours. */
function foreignHosts({ host, room }: DoorSeen, headers: Headers): string[] {
  const [name, port] = host.split(':');
  const hosts = [
    ...[undefined, '', 'shop.example.org', `shop.example.org:${port}`, `${host}.example.org`, `user@${host}`],
    ...[name, `${name}:`, `${name}:80`, `0.0.0.0:${port}`, `127.1:${port}`, `127.0.0.2:${port}`],
    ...[`[::1]:${port}`, `2130706433:${port}`, `localhost.:${port}`, `LOCALHOST.example.org:${port}`],
    ...[`${host},shop.example.org`, `shop.example.org, ${host}`, `http://${host}`, `${host}/`, `${host}#`],
  ];
  return hosts.flatMap((Host) => [
    requestText(`GET ${room}`, { Host, ...headers }),
    requestText(
      `POST ${room}call`,
      { Host, ...headers, Origin: `http://${Host}`, 'Content-Type': 'application/json' },
      factsCall,
    ),
  ]);
}

/** Pages elsewhere in the maker's own browser, which sends its cookie where it is not kept from it. */
function foreignOrigins({ host, room, cookie }: DoorSeen): string[] {
  const [name, port] = host.split(':');
  const origins = [
    ...['', 'null', 'https://example.org', `https://${host}`, `http://${name}`, `http://${name}:1${port}`],
    ...[`http://${host}.example.org`, `http://${host}/`, `http://${host}@example.org`, `HTTP://${host}`],
    ...[`http://localhost:${port}`, `http://[::1]:${port}`, 'file://', 'chrome-extension://abcdef', '*'],
    ...[`http://${host}, https://example.org`, `https://example.org, http://${host}`, 'data:', ` http://x`],
  ];
  const usual = { Host: host, Cookie: cookie };
  const call = { ...usual, 'Content-Type': 'application/json' };
  return [
    requestText(`POST ${room}call`, call, factsCall),
    ...origins.flatMap((Origin) => [
      requestText(`GET ${room}`, { ...usual, Origin }),
      requestText(`GET ${room}window`, { ...usual, Origin }),
      requestText(`POST ${room}call`, { ...call, Origin }, factsCall),
    ]),
  ];
}

/** What a form or a beacon of another site may send without being asked first. */
function contentTypes({ host, room, cookie }: DoorSeen): string[] {
  const types = [
    ...[undefined, '', 'text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'],
    ...['text/plain; application/json', 'application/jsonp', 'application/json5', 'text/json', ' json'],
    'application/x-www-form-urlencoded;application/json',
  ];
  return types.map((type) =>
    requestText(
      `POST ${room}call`,
      { Host: host, Cookie: cookie, Origin: `http://${host}`, 'Content-Type': type },
      factsCall,
    ),
  );
}

function traversals({ host, room, cookie }: DoorSeen): string[] {
  const ups = ['..', '%2e%2e', '%2E%2e', '.%2e', '..%00', '%252e%252e', '..%c0%af', '..;', '....', '%uff0e'];
  const separators = ['/', '%2f', '%5c', '\\', '//', '%252f'];
  const ends = ['package.json', 'etc/passwd', 'workshop.sqlite'];
  const paths = ups.flatMap((up) =>
    separators.map((separator, at) => `${`${up}${separator}`.repeat(4)}${ends[at % ends.length]}`),
  );
  const more = [
    '%',
    '%00',
    'C:%5cWindows%5cwin.ini',
    'file:///etc/passwd',
    'index.html%00.png',
    'index.html/',
  ];
  return [...paths, ...more, `/${room}`, '//etc/passwd'].map((path) =>
    requestText(`GET ${room}${path}`, { Host: host, Cookie: cookie }),
  );
}

/** Bodies that are no call, from the right page. They must be refused in a sentence. */
function bodies({ host, room, cookie }: DoorSeen): string[] {
  const call = (name: string, input: unknown = {}) => JSON.stringify({ call: name, workshop: 'own', input });
  const texts = [
    ...[
      '{',
      '[]',
      'null',
      '1',
      '""',
      '{}',
      '\u0000',
      '\ufeff{}',
      "{'call':1}",
      'NaN',
      factsCall.slice(0, 30),
    ],
    ...[`${'['.repeat(50_000)}`, `${'['.repeat(20_000)}${']'.repeat(20_000)}`, `${'{"a":'.repeat(9_000)}`],
    ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', '', 'answer', 'close'].map((name) =>
      call(name),
    ),
    '{"call":"workshopFacts","workshop":"__proto__","input":{}}',
    '{"call":"workshopFacts","workshop":"own","input":{"__proto__":{"ok":true}}}',
    '{"__proto__":{"call":"workshopFacts"},"workshop":"own","input":{}}',
    '{"call":"workshopFacts","workshop":"own","input":{"x":1}}',
    '{"call":["workshopFacts"],"workshop":["own"],"input":[]}',
    call('flowInput', { planId: '../../etc/passwd' }),
    call('flowInput', { planId: "1' OR '1'='1" }),
    call('flowInput', { planId: { $gt: '' } }),
    call('restoreBackup', { name: '../../../etc/passwd' }),
    JSON.stringify({ call: 'workshopFacts', workshop: 'own', input: Object.fromEntries(manyKeys()) }),
  ];
  return texts.map((body) =>
    requestText(
      `POST ${room}call`,
      { Host: host, Cookie: cookie, Origin: `http://${host}`, 'Content-Type': 'application/json' },
      body,
    ),
  );
}

/** Requests whose sender goes away before the body is whole. */
function brokenOff({ host, room, cookie }: DoorSeen): string[] {
  const call = { Host: host, Cookie: cookie, Origin: `http://${host}`, 'Content-Type': 'application/json' };
  return [
    requestText(`POST ${room}call`, { ...call, 'Content-Length': '4000' }, factsCall),
    requestText(`POST ${room}call`, { ...call, 'Content-Length': '4000' }),
    `${requestText(`POST ${room}call`, { ...call, 'Transfer-Encoding': 'chunked' })}5\r\n{"cal\r\n`,
    requestText('POST /enter', { Host: host, 'Content-Length': '400' }, 'ticket=x'),
  ];
}

function manyKeys(): [string, number][] {
  return Array.from({ length: 5_000 }, (_, at) => [`key ${at}`, at]);
}
