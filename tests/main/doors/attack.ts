/** Sends hostile requests to a loopback door and counts what it served of them. */
import { connect, type Socket } from 'node:net';
import { hostileRequests } from './hostile-requests.ts';
import { factsCall, type HostileRequest, requestText } from './request-text.ts';

export interface DoorUnderAttack {
  /** "http://127.0.0.1:PORT" */
  readonly origin: string;
  /** An address with a ticket that is good once. */
  newAddress(): Promise<string>;
}

export interface AttackOptions {
  /** Of each group every so many requests is sent; 1 for all of them. */
  readonly every: number;
  /** Connections that say nothing, and as many that stop in the middle of a head, held open meanwhile. */
  readonly silentCount: number;
  /** How long to wait for these to be dropped, in ms. */
  readonly silentMs: number;
}

export interface GroupCount {
  sent: number;
  /** By status; "none" where the connection was closed, or kept silent, without one. */
  readonly statuses: Record<string, number>;
}

export interface AttackReport {
  sent: number;
  servedWithoutSecret: number;
  /** With the right secret, yet from elsewhere or asking for what is no call and no file of the page. */
  servedAgainstTheRules: number;
  status5xx: number;
  /** Silent connections that were still open at the end. */
  silentKept: number;
  /** Whether a right call was answered, among the silent connections and after all. */
  answersStill: boolean;
  readonly groups: Record<string, GroupCount>;
  /** The beginning of each request that was served. */
  readonly served: string[];
}

/** How a door refuses before it has looked at who asks for what. Anything else means that it let the request in. */
const turnedAway = ['400', '403', '405', '408', '417', '431'];
/** Whoever is in may be told that there is no such file, or that this is no call. */
const refusedInside: Readonly<Record<string, readonly string[]>> = {
  traversal: ['404'],
  'content type': ['415'],
};
/** So many are under way at a time. */
const atOnce = 12;
/** An answer is over when nothing has come for so long. */
const quietMs = 40;
/** A request that was never finished gets no answer; a slow machine is not waited for longer, but listened to. */
const answerMs = 1_500;

export async function attack(door: DoorUnderAttack, options: AttackOptions): Promise<AttackReport> {
  const { host } = new URL(door.origin);
  const { room, cookie, ticket } = await enter(door);
  const usedTickets = [ticket, (await enter(door)).ticket];
  const report: AttackReport = {
    sent: 0,
    servedWithoutSecret: 0,
    servedAgainstTheRules: 0,
    status5xx: 0,
    silentKept: 0,
    answersStill: false,
    groups: {},
    served: [],
  };
  const silent = await openSilent(host, options.silentCount);
  const all = hostileRequests({ host, room, cookie, usedTickets });
  const waiting = all.filter(
    (request, at) => (at - all.findIndex(({ group }) => group === request.group)) % options.every === 0,
  );
  const sendNext = async (): Promise<void> => {
    for (let request = waiting.shift(); request !== undefined; request = waiting.shift()) {
      judge(report, request, await send(host, request.pieces));
    }
  };
  await Promise.all(Array.from({ length: atOnce }, sendNext));
  const answered = await callIsAnswered(host, room, cookie);
  report.silentKept = await stillOpen(silent, options.silentMs);
  report.answersStill = answered && (await callIsAnswered(host, room, cookie));
  return report;
}

/** Whether all is as it should be. */
export function isUnharmed(report: AttackReport): boolean {
  const { servedWithoutSecret, servedAgainstTheRules, status5xx, silentKept, answersStill } = report;
  return servedWithoutSecret + servedAgainstTheRules + status5xx + silentKept === 0 && answersStill;
}

/** Spends a ticket as a browser does. */
async function enter(door: DoorUnderAttack): Promise<{ room: string; cookie: string; ticket: string }> {
  const address = new URL(await door.newAddress());
  const entered = await fetch(address);
  const room = (entered.headers.get('refresh') ?? '').split('url=')[1] ?? '';
  const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  if (room === '' || cookie === '') throw new Error('the door let nobody in to begin with');
  return { room, cookie, ticket: address.searchParams.get('ticket') ?? '' };
}

function judge(report: AttackReport, request: HostileRequest, answer: string): void {
  report.sent++;
  const group = report.groups[request.group] ?? { sent: 0, statuses: {} };
  report.groups[request.group] = group;
  group.sent++;
  const statuses = statusesIn(answer);
  for (const status of statuses.length === 0 ? ['none'] : statuses) {
    group.statuses[status] = (group.statuses[status] ?? 0) + 1;
  }
  report.status5xx += statuses.filter((status) => Number(status) >= 500).length;
  if (!isServed(request, answer, statuses)) return;
  if (request.hasSecret) report.servedAgainstTheRules++;
  else report.servedWithoutSecret++;
  report.served.push(`${request.group}: ${request.pieces.join('').slice(0, 200)}`);
}

/** Final statuses in what came back; "100 Continue" says nothing yet. */
function statusesIn(answer: string): string[] {
  return [...answer.matchAll(/^HTTP\/1\.[01] (\d{3}) /gm)]
    .map((match) => match[1]!)
    .filter((s) => s !== '100');
}

function isServed(request: HostileRequest, answer: string, statuses: readonly string[]): boolean {
  if (/^set-cookie:/im.test(answer)) return true;
  // A page that sends nonsense hears why, which is no answer to a call.
  if (request.group === 'body') return !answer.includes('"ok":false');
  const refusals = [...turnedAway, ...(refusedInside[request.group] ?? [])];
  return statuses.some((status) => !refusals.includes(status));
}

/** All that came back for these bytes. */
function send(host: string, pieces: readonly (string | Uint8Array)[]): Promise<string> {
  return new Promise((resolve) => {
    const socket = open(host);
    let answer = '';
    let quiet: NodeJS.Timeout | undefined;
    const end = (): void => {
      clearTimeout(quiet);
      clearTimeout(late);
      socket.destroy();
      resolve(answer);
    };
    const late = setTimeout(end, answerMs);
    socket.setEncoding('latin1').on('data', (text) => {
      answer += text;
      clearTimeout(quiet);
      quiet = setTimeout(end, quietMs);
    });
    socket.on('close', end);
    for (const piece of pieces) socket.write(piece);
  });
}

function open(host: string): Socket {
  const [address = '', port] = host.split(':');
  // A host that cuts off what it does not want is right to.
  return connect(Number(port), address).on('error', () => {});
}

async function openSilent(host: string, count: number): Promise<Socket[]> {
  const sockets = Array.from({ length: 2 * count }, () => open(host));
  await Promise.all(
    sockets.map((socket) => new Promise((done) => socket.once('connect', done).once('close', done))),
  );
  for (const [at, socket] of sockets.entries()) {
    if (at % 2 === 0) socket.write(`GET / HTTP/1.1\r\nHost: ${host}\r\n`);
    socket.resume();
  }
  return sockets;
}

async function stillOpen(sockets: readonly Socket[], maxMs: number): Promise<number> {
  const isOpen = () => sockets.filter((socket) => !socket.destroyed).length;
  const untilMs = performance.now() + maxMs;
  while (isOpen() > 0 && performance.now() < untilMs) await new Promise((next) => setTimeout(next, 50));
  const left = isOpen();
  for (const socket of sockets) socket.destroy();
  return left;
}

async function callIsAnswered(host: string, room: string, cookie: string): Promise<boolean> {
  const headers = {
    Host: host,
    Cookie: cookie,
    Origin: `http://${host}`,
    'Content-Type': 'application/json',
  };
  return (await send(host, [requestText(`POST ${room}call`, headers, factsCall)])).includes('"ok":true');
}
