/** One file given to its reader, and what became of it and of the workshop. */
import type { FuzzFile, Judged, Readers } from './fuzz-file.ts';

/** Where a file was refused, or only looked at, the workshop holds after it what it held before. */
export async function judged(readers: Readers, file: FuzzFile): Promise<Judged> {
  const before = readers.contents();
  try {
    await readers.look(file);
    if (readers.contents() !== before) return { verdict: 'changed data', why: 'by looking at it' };
    const isTaken = await readers.take(file);
    const [failure] = readers.failures();
    if (failure !== undefined) return { verdict: 'crashed', why: wordsOf(failure) };
    if (!isTaken && readers.contents() !== before)
      return { verdict: 'changed data', why: 'though it was refused' };
    return { verdict: isTaken ? 'taken' : 'refused', why: '' };
  } catch (error) {
    return { verdict: 'crashed', why: wordsOf(error) };
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
