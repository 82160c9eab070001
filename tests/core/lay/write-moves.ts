/** `npm run build:moves`: after a change in moves.as.ts. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compiledMoves, engineFolder } from './compile-moves.ts';

const digits = await compiledMoves();
writeFileSync(
  join(engineFolder, 'moves-binary.ts'),
  `/** moves.as.ts compiled to WebAssembly, as hexadecimal digits; written by \`npm run build:moves\`. */\nexport const movesBinary =\n  '${digits}';\n`,
);
console.log(`${digits.length / 2} bytes`);
