/**
 * Loaded before a program of Node, writes down whom it connects to, asks for or listens for, one JSON line each, into
 * the file named by BOLT_CONNECTIONS. It stands below http, https and fetch, which all connect through it.
 */
import dgram from 'node:dgram';
import dns from 'node:dns';
import { appendFileSync } from 'node:fs';
import net from 'node:net';

const file = process.env.BOLT_CONNECTIONS ?? '';

function note(kind: string, to: unknown): void {
  appendFileSync(file, `${JSON.stringify({ kind, to: String(JSON.stringify(to)) })}\n`);
}

/** Puts a note before a function of an object, whatever it is called with. */
function watch(owner: object, name: string, kind: string): void {
  const original = Reflect.get(owner, name) as (...values: unknown[]) => unknown;
  Reflect.set(owner, name, function (this: unknown, ...values: unknown[]) {
    note(kind, plain(values));
    return original.apply(this, values);
  });
}

/** Of what a connection is asked for with, what names its other end. */
function plain(values: readonly unknown[]): unknown {
  return values.flat().map((value) => {
    if (typeof value === 'string' || typeof value === 'number') return value;
    const { host, hostname, port, path, servername } = (value ?? {}) as Record<string, unknown>;
    return { host, hostname, port, path, servername };
  });
}

watch(net.Socket.prototype, 'connect', 'connect');
watch(dns, 'lookup', 'lookup');
watch(dns.promises, 'lookup', 'lookup');
watch(dns, 'resolve', 'lookup');
watch(dgram.Socket.prototype, 'bind', 'datagram');
watch(dgram.Socket.prototype, 'send', 'datagram');
watch(dgram.Socket.prototype, 'connect', 'datagram');
watch(net.Server.prototype, 'listen', 'listen');
