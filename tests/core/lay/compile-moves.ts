/** The loops that move pieces, compiled: what shared-core/lay/engine/moves-binary.ts holds. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import asc from 'assemblyscript/asc';

export const engineFolder = join(import.meta.dirname, '../../../shared-core/lay/engine');

/** The module as hexadecimal digits. Throws with the compiler's words where the source has a fault. */
export async function compiledMoves(): Promise<string> {
  const source = readFileSync(join(engineFolder, 'moves.as.ts'), 'utf8');
  let binary = new Uint8Array();
  const { error, stderr } = await asc.main(
    [
      'moves.as.ts',
      '--outFile=moves.wasm',
      '-O3',
      '--noAssert',
      '--runtime=stub',
      '--use=abort=',
      '--importMemory',
      '--initialMemory=1',
      '--maximumMemory=16384',
      '--sharedMemory',
      '--enable=threads',
      '--enable=simd',
    ],
    {
      readFile: (name: string) => (name === 'moves.as.ts' ? source : null),
      writeFile: (_name, contents) => {
        binary = Uint8Array.from(Buffer.from(contents));
      },
      listFiles: () => [],
    },
  );
  if (error !== null) throw new Error(stderr.toString(), { cause: error });
  return Buffer.from(binary).toString('hex');
}
