/**
 * The loopback door: the workshop's services on 127.0.0.1 for one browser on this machine.
 *
 * The address given out once holds a token; the first page load trades it for a cookie that scripts cannot read
 * and other sites cannot make the browser send. Every request must name this host (a page elsewhere whose name
 * was pointed at 127.0.0.1 does not) and, where it carries a call, come from this page. Nothing here decides
 * anything about a call: body in, answer out.
 */
import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Outcome, refused } from '../../shared-core/measure/problem.ts';
import { pageHeaders, staticAnswer } from './static.ts';

/** Room for a pattern file or a stash list of some thousand rows, well under what would strain memory. */
export const largestBodyBytes = 32 * 1024 * 1024;

/** How long a page may be away (a reload, a nap of the network) before its window counts as closed. */
const awayMs = 3_000;

/** What a door needs of the services. */
export interface Answering {
  answer(envelope: unknown): Promise<Outcome<unknown>>;
}

export interface LoopbackOptions {
  readonly services: Answering;
  /** Folder of the built renderer, absolute. */
  readonly rendererDir: string;
  /** A free one is taken where none is named. */
  readonly port?: number;
  /** Told when the first page of this host opens, and when the last one has been gone for some seconds. */
  readonly onWindow?: (state: 'open' | 'closed') => void;
}

export interface Loopback {
  readonly address: string;
  readonly token: string;
  /** The address with the token, to open in a browser. */
  readonly url: string;
  close(): Promise<void>;
}

/** Starts to serve on 127.0.0.1. Rejects where the port is taken. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const token = randomBytes(32).toString('base64url');
  const windows = watchWindows(options.onWindow ?? (() => {}));
  let port = 0;
  const server = createServer((request, response) => {
    serve(request, response).catch((error: unknown) => {
      console.error(error);
      if (response.headersSent) response.destroy();
      else send(response, 500, 'The host failed at this request; its own messages say why.');
    });
  });
  // Several megabytes from a slow disk or a busy machine may take a while; nothing legitimate takes minutes.
  server.requestTimeout = 120_000;
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen({ host: '127.0.0.1', port: options.port ?? 0 }, listening);
  });
  port = (server.address() as AddressInfo).port;
  const address = `http://127.0.0.1:${port}`;
  const cookieName = `bolt-and-baffle-${port}`;
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const host = request.headers.host ?? '';
    if (!hosts.includes(host)) return send(response, 403, 'This host answers to its own name only.');
    const origin = request.headers.origin;
    if (origin !== undefined && origin !== `http://${host}`) {
      return send(response, 403, 'This host answers its own page only.');
    }
    const url = new URL(request.url ?? '/', `http://${host}`);
    const givenToken = url.searchParams.get('token');
    if (request.method === 'GET' && url.pathname === '/' && givenToken !== null && isToken(givenToken)) {
      const cookie = `${cookieName}=${token}; Path=/; HttpOnly; SameSite=Strict`;
      response.writeHead(303, { ...pageHeaders, 'set-cookie': cookie, location: '/' }).end();
      return;
    }
    if (!isToken(cookieOf(request, cookieName)) && !isToken(bearerOf(request))) {
      return send(response, 403, 'Open the whole address that the start has given.');
    }
    if (url.pathname === '/call') return serveCall(request, response);
    if (request.method !== 'GET' && request.method !== 'HEAD') return send(response, 405, 'Not served here.');
    if (url.pathname === '/window') return windows.add(response);
    const answer = await staticAnswer(options.rendererDir, url.pathname);
    response.writeHead(answer.status, { ...answer.headers, 'content-length': answer.body.byteLength });
    response.end(request.method === 'HEAD' ? undefined : answer.body);
  }

  async function serveCall(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.method !== 'POST') return send(response, 405, 'A call is posted.');
    // A cookie alone proves the browser, not the page: a call with it must also say which page it comes from.
    if (request.headers.origin === undefined && !isToken(bearerOf(request))) {
      return send(response, 403, 'This host answers its own page only.');
    }
    if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
      return sendOutcome(response, 415, refusedRequest('is not JSON', 'Send content-type application/json.'));
    }
    const body = await bodyOf(request);
    if (body === undefined) {
      response.setHeader('connection', 'close');
      const limitMib = largestBodyBytes / 1024 / 1024;
      const mend = `Send less than ${limitMib} MiB at once: split the file.`;
      return sendOutcome(response, 413, refusedRequest('is too large', mend));
    }
    let envelope: unknown;
    try {
      envelope = JSON.parse(body);
    } catch {
      return sendOutcome(response, 400, refusedRequest('is broken off or not JSON', 'Send it again, whole.'));
    }
    sendOutcome(response, 200, await options.services.answer(envelope));
  }

  function isToken(given: string | undefined): boolean {
    const wanted = Buffer.from(token);
    const got = Buffer.from(given ?? '');
    return got.length === wanted.length && timingSafeEqual(got, wanted);
  }

  return {
    address,
    token,
    url: `${address}/?token=${token}`,
    close: () =>
      new Promise((closed) => {
        windows.end();
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

function cookieOf(request: IncomingMessage, name: string): string | undefined {
  const pairs = (request.headers.cookie ?? '').split(';').map((pair) => pair.trim());
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1);
}

function bearerOf(request: IncomingMessage): string | undefined {
  return /^Bearer (\S+)$/.exec(request.headers.authorization ?? '')?.[1];
}

/**
 * The whole body as text, or undefined where it is larger than the limit. A larger one is read to its end and
 * dropped, since a sender that is cut off never reads the answer.
 */
async function bodyOf(request: IncomingMessage): Promise<string | undefined> {
  const chunks: Buffer[] = [];
  let sizeBytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    sizeBytes += chunk.length;
    if (sizeBytes > largestBodyBytes) chunks.length = 0;
    else chunks.push(chunk);
  }
  return sizeBytes > largestBodyBytes ? undefined : Buffer.concat(chunks).toString('utf8');
}

function refusedRequest(what: string, mend: string): Outcome<never> {
  return refused({ where: 'The request', what, mend });
}

function sendOutcome(response: ServerResponse, status: number, outcome: Outcome<unknown>): void {
  const body = JSON.stringify(outcome);
  response.writeHead(status, { ...pageHeaders, 'content-type': 'application/json; charset=utf-8' }).end(body);
}

function send(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { ...pageHeaders, 'content-type': 'text/plain; charset=utf-8' }).end(sentence);
}

/** Each open page holds one event stream; when all have been gone for a while, the window is closed. */
function watchWindows(tell: (state: 'open' | 'closed') => void) {
  const open = new Set<ServerResponse>();
  let leaving: NodeJS.Timeout | undefined;
  let wasOpen = false;
  return {
    add(response: ServerResponse): void {
      response.writeHead(200, { ...pageHeaders, 'content-type': 'text/event-stream' });
      response.write(': open\n\n');
      clearTimeout(leaving);
      open.add(response);
      if (!wasOpen) tell('open');
      wasOpen = true;
      response.on('close', () => {
        open.delete(response);
        if (open.size > 0) return;
        clearTimeout(leaving);
        leaving = setTimeout(() => {
          wasOpen = false;
          tell('closed');
        }, awayMs);
        leaving.unref();
      });
    },
    end(): void {
      for (const response of open) response.removeAllListeners('close').end();
      clearTimeout(leaving);
    },
  };
}
