/** Set up for the tests on a database: where no server is installed, each is skipped by its name. */
import { beforeEach } from 'vitest';
import { needServer } from './test-database.ts';

beforeEach(needServer);
