/** Every migration of a shared workshop, oldest first, by the number that schema/migrations has for the same. */
import type { Migration } from 'kysely/migration';
import { first } from './migrations/0013-first.ts';

/** A released one is never edited, moved or taken out. */
export const sharedMigrations: Readonly<Record<string, Migration>> = {
  '0013-first': first,
};

export const sharedSchema = Math.max(...Object.keys(sharedMigrations).map(numberOf));

/** Of the migration by that name. */
export function numberOf(name: string): number {
  return Number(name.slice(0, 4));
}
