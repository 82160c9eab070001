/** One server for all test files that run on PostgreSQL, with a workshop to be copied; started once by Vitest. */
import { openSharedStore } from '../../../main/database/postgres/postgres-store.ts';
import { startServer, type TempServer } from './temp-server.ts';

/** How the test files learn of it; the workers have the environment from here. */
export const addressVariable = 'BOLT_TEST_POSTGRES';
export const templateName = 'workshop_template';

let server: TempServer | null = null;

export async function setup(): Promise<void> {
  server = await startServer();
  if (server === null) return;
  await server.query('postgres', `create database ${templateName}`);
  const made = await openSharedStore({ address: server.address(templateName), waitMs: 5000 });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  await made.value.close();
  process.env[addressVariable] = server.address('postgres');
}

export async function teardown(): Promise<void> {
  await server?.end();
}
