/** What is no request at all, or two in one, sent to the loopback door without the secret. */
import { type DoorSeen, factsCall, type HostileRequest, requestText } from './request-text.ts';

export function brokenRequests(door: DoorSeen): HostileRequest[] {
  const group = (name: string, texts: readonly (string | Uint8Array)[]): HostileRequest[] =>
    texts.map((text) => ({ group: name, pieces: [text], hasSecret: false }));
  return [
    ...group('broken HTTP', brokenHttp(door)),
    ...group('not HTTP', notHttp()),
    ...group('bytes changed', changedBytes(door)),
    ...smuggled(door),
  ];
}

function brokenHttp({ host, room }: DoorSeen): string[] {
  const head = `POST ${room}call HTTP/1.1\r\nHost: ${host}\r\n`;
  const fields = [
    ...[
      'Content-Length: -1',
      'Content-Length: 1e3',
      'Content-Length: 99999999999999999999',
      'Content-Length:',
    ],
    ...[
      'Content-Length: 5\r\nContent-Length: 6',
      'Content-Length: 5, 6',
      'Content-Length: 0x5',
      'Content-Length : 5',
    ],
    ...['Transfer-Encoding: gzip', 'Transfer-Encoding: chunked, gzip', 'Transfer-Encoding: xchunked'],
    ...['Transfer-Encoding : chunked', 'Transfer-Encoding: chunked\r\nContent-Length: 5', ' Leading: blank'],
    ...['No colon here', ': no name', 'Bad\u0000Name: x', 'Name: a\u0000b', `Long: ${'a'.repeat(20_000)}`],
    ...[
      `${'Many: x\r\n'.repeat(3_000)}Last: x`,
      'Folded: a\r\n b',
      'Bare: a\nOther: b',
      'Return: a\rOther: b',
    ],
    ...[`Host: shop.example.org`, `Connection: close, Host`, 'Host', `Cookie: ${'a=b; '.repeat(2_000)}`],
  ].map((field) => `${head}${field}\r\n\r\nhello`);
  const chunks = [
    'zz\r\n',
    '-1\r\n',
    'ffffffffffffffffff\r\n',
    '5;ext\r\nhel',
    '5\r\nhelloX',
    '0\r\nTrailer',
  ].map((chunk) => `${head}Transfer-Encoding: chunked\r\n\r\n${chunk}\r\n\r\n`);
  const lines = [
    ...['GET', `GET ${room}`, `GET ${room} HTTP/9.9`, `GET ${room} HTTP/1.1x`, `GET  ${room}  HTTP/1.1`],
    ...[`get ${room} HTTP/1.1`, `G@T ${room} HTTP/1.1`, `${'G'.repeat(9_000)} / HTTP/1.1`, ' / HTTP/1.1'],
    ...[`GET\t${room}\tHTTP/1.1`, `GET ${room} HTTP/1.1 more`, 'GET \u00e9 HTTP/1.1', 'GET / HTTP/1.1\r\n\r'],
  ].map((line) => `${line}\r\nHost: ${host}\r\n\r\n`);
  return [...fields, ...chunks, ...lines];
}

function notHttp(): Uint8Array[] {
  const hello = [0x16, 3, 1, 0, 0x40, 1, 0, 0, 0x3c, 3, 3, ...Array.from({ length: 58 }, (_, at) => at)];
  return [
    Uint8Array.from(hello),
    Buffer.from('PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'),
    Buffer.from('SSH-2.0-x\r\n'),
    Buffer.from('\r\n\r\n\r\n'),
    Buffer.alloc(40_000, 0),
    Buffer.alloc(40_000, 0xff),
    Buffer.from('{"call":"workshopFacts","workshop":"own","input":{}}\n'),
    Buffer.from('EHLO x\r\n'),
  ];
}

/** A second request hidden behind the first: without the secret both must be refused, and what follows one too. */
function smuggled({ host, room, cookie }: DoorSeen): HostileRequest[] {
  const inner = `GET ${room} HTTP/1.1\r\nHost: ${host}\r\n\r\n`;
  const hidden = [
    `Content-Length: ${inner.length}\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n${inner}`,
    `Transfer-Encoding: chunked\r\nContent-Length: 5\r\n\r\n0\r\n\r\n${inner}`,
    `Transfer-Encoding: chunked\r\nTransfer-Encoding: identity\r\n\r\n0\r\n\r\n${inner}`,
    `Transfer-Encoding:\u000bchunked\r\n\r\n0\r\n\r\n${inner}`,
    `Content-Length: 0\r\n\r\n${inner}`,
    `Content-Length: ${inner.length}\r\n\r\n${inner}`,
    `X: y\r\n\r\n${inner}`,
    `Connection: keep-alive\r\n\r\n${inner}${inner}`,
  ];
  const alone = ['GET', 'POST', 'OPTIONS'].flatMap((method) =>
    hidden.flatMap((rest) =>
      ['/', room].map((target) => `${method} ${target} HTTP/1.1\r\nHost: ${host}\r\n${rest}`),
    ),
  );
  // What is sent in pieces, or with the cookie of one request meant for the next.
  const inPieces = [...requestText(`GET ${room}`, { Host: host })];
  const borrowed = [`GET / HTTP/1.1\r\nHost: x\r\nCookie: ${cookie}\r\n\r\n`, inner];
  return [...alone.map((text) => [text]), inPieces, borrowed].map((pieces) => ({
    group: 'smuggling',
    pieces,
    hasSecret: false,
  }));
}

/** Requests without the secret, some of their bytes changed; the same each time. */
function changedBytes({ host, room }: DoorSeen): Uint8Array[] {
  const call = { Host: host, Origin: `http://${host}`, 'Content-Type': 'application/json' };
  const whole = Buffer.from(requestText(`POST ${room}call`, call, factsCall));
  let state = 20_077;
  const next = (below: number): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return Math.floor((state / 0x8000_0000) * below);
  };
  return Array.from({ length: 80 }, () => {
    const bytes = Buffer.from(whole);
    for (let change = 0; change < 3; change++) bytes[next(bytes.length)] = next(256);
    return next(3) === 0 ? bytes.subarray(0, next(bytes.length)) : bytes;
  });
}
