/** Set up for every test file of main, though modules are shared between them: no test leaves a file open or behind. */
import { afterEach } from 'vitest';
import { clearLeftovers } from './asking.ts';

afterEach(clearLeftovers);
