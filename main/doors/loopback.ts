/**
 * The loopback door: the workshop's services on 127.0.0.1 for one browser on this machine.
 *
 * An address that is given out holds a ticket (entry.ts), good once and for a short time; the first page load trades
 * it for a cookie that scripts cannot read and other sites cannot make the browser send. Every request must name this
 * host (a page elsewhere whose name was pointed at 127.0.0.1 does not) and, where it carries a call, come from this
 * page. Nothing here decides anything about a call: body in, answer out.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Result, err } from '../../shared-core/measure/problem.ts';
import { openEntry } from './entry.ts';
import { pageHeaders, staticAnswer } from './static.ts';
import { watchStrangers } from './strangers.ts';

/** Room for a pattern file or a stash list of some thousand rows, well under what would strain memory. */
export const largestBodyBytes = 32 * 1024 * 1024;

/** Far more than a form with a ticket in it. */
const largestTicketBytes = 1024;

/** How long a connection may say nothing, or take over the head of its request. */
const defaultSilentMs = 20_000;

/** Several megabytes from a slow disk or a busy machine may take a while; nothing legitimate takes minutes. */
const longestRequestMs = 120_000;

/** A browser opens six connections to a host, and some ahead of their use. */
const maxStrangers = 64;

/** Far above the strangers, and the 511 that the system lets wait: a crowd that is being sent away still counts. */
const maxConnections = 1_024;

/** How long a page may be away (a reload, a nap of the network) before its window counts as closed. */
const awayMs = 3_000;

const noEntry =
  'This address lets a browser in once, and only for a short time. Press Enter where the program runs: it gives a new one.';

/** What a door needs of the services. */
export interface Answering {
  answer(envelope: unknown): Promise<Result<unknown>>;
  /** Told of each change that another desk made. Absent: there is no other. */
  onChangeElsewhere?(listener: () => void): () => void;
}

export interface LoopbackOptions {
  readonly services: Answering;
  /** Folder of the built renderer, absolute. */
  readonly rendererDir: string;
  /** A free one is taken where none is named. */
  readonly port?: number;
  /** Told when the first page of this host opens, and when the last one has been gone for some seconds. */
  readonly onWindow?: (state: 'open' | 'closed') => void;
  /** Told of a failure of the door's own. */
  readonly onFailure?: (error: unknown) => void;
  /** The machine's own where none is given. */
  readonly time?: HostTime;
  /** How long a connection may say nothing before it is dropped, in ms by the machine's clock; 20 s where none is given. */
  readonly silentMs?: number;
}

export interface HostTime {
  nowMs(): number;
  /** Does the work later, unless the function that it gives is called before. */
  later(work: () => void, ms: number): () => void;
}

export interface Loopback {
  /** Of the page, for a browser that is in; ends with a slash. */
  readonly address: string;
  /** An address that lets one browser in: good once, and for `ticketMs`. */
  newAddress(): string;
  close(): Promise<void>;
}

const machineTime: HostTime = {
  nowMs: () => performance.now(),
  later(work, ms) {
    const timer = setTimeout(work, ms);
    timer.unref();
    return () => clearTimeout(timer);
  },
};

/** Starts to serve on 127.0.0.1. Rejects where the port is taken. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const time = options.time ?? machineTime;
  const entry = openEntry(time.nowMs);
  const windows = watchWindows(options.onWindow ?? (() => {}), time);
  const endTelling = options.services.onChangeElsewhere?.(windows.tellChange);
  let port = 0;
  const silentMs = options.silentMs ?? defaultSilentMs;
  const server = createServer(
    {
      headersTimeout: silentMs,
      requestTimeout: longestRequestMs,
      keepAliveTimeout: defaultSilentMs,
      connectionsCheckingInterval: silentMs / 4,
    },
    (request, response) => {
      serve(request, response).catch((error: unknown) => {
        // Whoever breaks off a request waits for no answer, and nothing is wrong here.
        if (error === request.errored) return;
        console.error(error);
        options.onFailure?.(error);
        if (response.headersSent) response.destroy();
        else
          send(
            response,
            500,
            'The host failed at this request; the log under Settings says where in the program.',
          );
      });
    },
  );
  // The time for the head begins with its first byte, this one with the connection.
  server.setTimeout(silentMs);
  server.maxConnections = maxConnections;
  const strangers = watchStrangers(server, maxStrangers);
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
    server.listen({ host: '127.0.0.1', port: options.port ?? 0 }, listening);
  });
  port = (server.address() as AddressInfo).port;
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const host = request.headers.host ?? '';
    if (!hosts.includes(host)) return turnAway(response, 'This host answers to its own name only.');
    const [path = '', query = ''] = (request.url ?? '').split('?', 2);
    if (path === '/enter') return serveEntry(request, response, query);
    const origin = request.headers.origin;
    if (origin !== undefined && origin !== `http://${host}`) {
      return turnAway(response, 'This host answers its own page only.');
    }
    if (!entry.isIn(request.headers.cookie)) return turnAway(response, noEntry);
    strangers.isKnown(request.socket);
    if (!path.startsWith(entry.room)) return send(response, 404, 'Not here.');
    const inside = path.slice(entry.room.length - 1);
    if (inside === '/call') return serveCall(request, response);
    if (request.method !== 'GET' && request.method !== 'HEAD') return send(response, 405, 'Not served here.');
    if (inside === '/window') return windows.add(response);
    const answer = await staticAnswer(options.rendererDir, inside);
    response.writeHead(answer.status, { ...answer.headers, 'content-length': answer.body.byteLength });
    response.end(request.method === 'HEAD' ? undefined : answer.body);
  }

  /**
   * The ticket comes in the address that a person opens, or in a form that the start's own page sends. The browser is
   * sent on by a page of ours: after a redirect it would take the page elsewhere for the one that asks, and keep the
   * cookie to itself.
   */
  async function serveEntry(
    request: IncomingMessage,
    response: ServerResponse,
    query: string,
  ): Promise<void> {
    if (request.method !== 'GET' && request.method !== 'POST') {
      return turnAway(response, 'Not served here.', 405);
    }
    const isForm = request.method === 'POST';
    if (isForm && !(Number(request.headers['content-length']) <= largestTicketBytes)) {
      return turnAway(response, noEntry);
    }
    const form = isForm ? await bodyOf(request, largestTicketBytes) : query;
    const cookie = entry.trade(new URLSearchParams(form).get('ticket') ?? '');
    if (cookie === null) return turnAway(response, noEntry);
    const headers = { 'content-type': 'text/html; charset=utf-8', refresh: `0; url=${entry.room}` };
    response.writeHead(200, { ...pageHeaders, ...headers, 'set-cookie': cookie });
    response.end('<!doctype html><title>Bolt &amp; Baffle</title><link rel="icon" href="data:,">');
  }

  async function serveCall(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.method !== 'POST') return send(response, 405, 'A call is posted.');
    // The cookie proves the browser, not the page: a call must also say which page it comes from.
    if (request.headers.origin === undefined) {
      return send(response, 403, 'This host answers its own page only.');
    }
    if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
      return sendOutcome(response, 415, refusedRequest('is not JSON', 'Send content-type application/json.'));
    }
    const body = await bodyOf(request, largestBodyBytes);
    if (body === undefined) {
      response.setHeader('connection', 'close');
      const limitMib = largestBodyBytes / 1024 / 1024;
      const fix = `Send less than ${limitMib} MiB at once: split the file.`;
      return sendOutcome(response, 413, refusedRequest('is too large', fix));
    }
    let envelope: unknown;
    try {
      envelope = JSON.parse(body);
    } catch {
      return sendOutcome(response, 400, refusedRequest('is broken off or not JSON', 'Send it again, whole.'));
    }
    sendOutcome(response, 200, await options.services.answer(envelope));
  }

  const origin = `http://127.0.0.1:${port}`;
  return {
    address: `${origin}${entry.room}`,
    newAddress: () => `${origin}/enter?ticket=${entry.newTicket()}`,
    close: () =>
      new Promise((closed) => {
        endTelling?.();
        windows.end();
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
}

/**
 * The whole body as text, or undefined where it is larger than the limit. A larger one is read to its end and
 * dropped, since a sender that is cut off never reads the answer.
 */
async function bodyOf(request: IncomingMessage, maxBytes: number): Promise<string | undefined> {
  const chunks: Buffer[] = [];
  let sizeBytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    sizeBytes += chunk.length;
    if (sizeBytes > maxBytes) chunks.length = 0;
    else chunks.push(chunk);
  }
  return sizeBytes > maxBytes ? undefined : Buffer.concat(chunks).toString('utf8');
}

function refusedRequest(what: string, fix: string): Result<never> {
  return err({ where: 'The request', what, fix });
}

function sendOutcome(response: ServerResponse, status: number, outcome: Result<unknown>): void {
  const body = JSON.stringify(outcome);
  response.writeHead(status, { ...pageHeaders, 'content-type': 'application/json; charset=utf-8' }).end(body);
}

function send(response: ServerResponse, status: number, sentence: string): void {
  response.writeHead(status, { ...pageHeaders, 'content-type': 'text/plain; charset=utf-8' }).end(sentence);
}

/** Whoever may not come in holds no connection either, and what is still to come of the request is not read. */
function turnAway(response: ServerResponse, sentence: string, status = 403): void {
  response.setHeader('connection', 'close');
  send(response, status, sentence);
}

/** Each open page holds one event stream, by which it hears of changes; when all have been gone for a while, the window is closed. */
function watchWindows(tell: (state: 'open' | 'closed') => void, time: HostTime) {
  const open = new Set<ServerResponse>();
  let stay = (): void => {};
  let wasOpen = false;
  return {
    add(response: ServerResponse): void {
      response.writeHead(200, { ...pageHeaders, 'content-type': 'text/event-stream' });
      response.write(': open\n\n');
      stay();
      open.add(response);
      if (!wasOpen) tell('open');
      wasOpen = true;
      response.on('close', () => {
        open.delete(response);
        if (open.size > 0) return;
        stay();
        stay = time.later(() => {
          wasOpen = false;
          tell('closed');
        }, awayMs);
      });
    },
    tellChange(): void {
      for (const response of open) response.write('event: change\ndata:\n\n');
    },
    end(): void {
      for (const response of open) response.removeAllListeners('close').end();
      stay();
    },
  };
}
