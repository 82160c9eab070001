/** Holds the number free. */
import type { Migration } from '../migrate.ts';

export const placeholder: Migration = { number: 7, what: 'placeholder', sql: 'SELECT 1;' };
