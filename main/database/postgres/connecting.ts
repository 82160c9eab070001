/** Connections to a shared workshop, with values as a file gives them. */
import { checkServerIdentity, type PeerCertificate } from 'node:tls';
import {
  HandleEmptyInListsPlugin,
  Kysely,
  PostgresDialect,
  replaceWithNoncontingentExpression,
} from 'kysely';
import pg from 'pg';
import type { Schema } from '../schema/schema.ts';
import type { Address } from './address.ts';

/** More waits in the program: one desk asks for few things at once, and the server's connections are for all. */
const maxConnections = 6;
/** How long a change waits for that of another desk, where nothing else is said. */
const usualLockMs = 20_000;
/** How long a desk that fell silent may keep others waiting. */
const silentDeskMs = 60_000;
/** A desk whose machine is gone lets go of its locks after some 25 s. */
const keepAlive = '-c tcp_keepalives_idle=10 -c tcp_keepalives_interval=5 -c tcp_keepalives_count=3';

/** Object identifiers of types, by pg_type. */
const int8 = 20;
const numeric = 1700;

/** Sums and counts come as texts, since they may be larger than a number is exact. Throws beyond. */
export function exactNumber(text: string): number {
  const number = Number(text);
  if (!Number.isSafeInteger(number)) throw new RangeError('a sum is larger than a number is exact');
  return number;
}

/** Values as a file gives them: whole numbers as numbers, and everything else as it is. */
export const exactTypes: pg.CustomTypesConfig = {
  getTypeParser: ((oid: number, format?: 'text' | 'binary') =>
    oid === int8 || oid === numeric
      ? exactNumber
      : pg.types.getTypeParser(oid, format as 'text')) as pg.CustomTypesConfig['getTypeParser'],
};

function settings(address: Address, waitMs: number, lockMs = usualLockMs): pg.ClientConfig {
  const { host, port, database, user, password, tls } = address;
  return {
    host,
    port,
    database,
    user,
    // An empty one keeps pg from asking the environment and a file of this machine.
    password: password ?? '',
    ssl: tls !== null && {
      rejectUnauthorized: true,
      ...(tls.ca !== null && { ca: tls.ca }),
      // Of a host that is named by its number, pg would look for "localhost" in the certificate.
      checkServerIdentity: (_name: string, certificate: PeerCertificate) =>
        checkServerIdentity(host, certificate),
    },
    connectionTimeoutMillis: waitMs,
    keepAlive: true,
    keepAliveInitialDelayMillis: 10_000,
    application_name: 'Bolt & Baffle',
    options: `-c lock_timeout=${lockMs} -c idle_in_transaction_session_timeout=${silentDeskMs} ${keepAlive}`,
    types: exactTypes,
  };
}

/** waitMs: how long to wait for the server; lockMs: for the change of another desk. Nothing is asked of it yet. */
export function queriesOf(address: Address, waitMs: number, lockMs?: number): Kysely<Schema> {
  return new Kysely<Schema>({
    dialect: new PostgresDialect({ pool: poolOf(address, waitMs, lockMs) }),
    // "in ()" is no SQL here; a file takes it as false.
    plugins: [new HandleEmptyInListsPlugin({ strategy: replaceWithNoncontingentExpression })],
  });
}

function poolOf(address: Address, waitMs: number, lockMs?: number): pg.Pool {
  const all = settings(address, waitMs, lockMs);
  const pool = new pg.Pool({ ...all, max: maxConnections, idleTimeoutMillis: 60_000 });
  // One that is cut off while nothing is asked over it is of no use any more; whoever asks next is told then.
  pool.on('error', () => {});
  pool.on('connect', (client) => void client.on('error', () => {}));
  return pool;
}

/** One connection that is kept open to hear of changes. */
export function lineOf(address: Address, waitMs: number): pg.Client {
  return new pg.Client(settings(address, waitMs));
}
