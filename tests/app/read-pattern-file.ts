/** Reads a pattern file, FILE, and prints as JSON what was found in it. */
import { readFileSync } from 'node:fs';
import { readPattern } from '../../shared-core/exchange/pattern/formats.ts';
import { defaultChoices, defaultLimits } from '../../shared-core/exchange/pattern/pattern.ts';

const [file = ''] = process.argv.slice(2);
process.stdout.write(JSON.stringify(readPattern(readFileSync(file), '', defaultLimits, defaultChoices)));
