/**
 * News of a later version: a static text whose first line signs, in base64, all the bytes after it. Nothing of a text
 * that is not signed by the key of this build is shown, and nothing is ever fetched but at the maker's word.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { verify } from 'node:crypto';
import { z } from 'zod';
import type { ReleaseNews } from '../../../shared-core/contract/program-calls.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import type { ReleaseSource } from './release-source.ts';

const largestNewsBytes = 64 * 1024;
const longestWaitMs = 10_000;

const signed = z.strictObject({
  program: z.literal('bolt-and-baffle'),
  version: z.string().regex(/^\d{1,4}\.\d{1,4}\.\d{1,4}$/),
  date: z.iso.date(),
  words: z.string().max(2_000),
});

/** What the source says of a version later than this one; null where there is none. Refused in a sentence otherwise. */
export async function askForNews(
  source: ReleaseSource,
  version: string,
): Promise<Result<{ news: ReleaseNews | null }>> {
  let bytes: Uint8Array;
  try {
    bytes = await fetched(source.address);
  } catch (error) {
    const what = say('release-news.could-not-be-had', { message: (error as Error).message });
    return err({
      where: say('release-news.the-news-at', { address: source.address }),
      what,
      fix: say('release-news.try-again-when-this-machine-is'),
    });
  }
  return readNews(bytes, source, version);
}

/** The same of bytes that are there. */
export function readNews(
  bytes: Uint8Array,
  { address, publicKey }: ReleaseSource,
  version: string,
): Result<{ news: ReleaseNews | null }> {
  const text = Buffer.from(bytes);
  const end = text.indexOf('\n');
  const signature = Buffer.from(text.subarray(0, Math.max(0, end)).toString('latin1').trim(), 'base64');
  const body = text.subarray(end + 1);
  if (end === -1 || signature.length !== 64 || !verify(null, body, publicKey, signature)) {
    return err({
      where: say('release-news.the-news-at', { address }),
      what: say('release-news.are-not-signed-by-the-makers'),
      fix: say('release-news.nothing-of-them-is-shown-do'),
    });
  }
  const read = signed.safeParse(parsed(body.toString('utf8')));
  if (!read.success) {
    return err({
      where: say('release-news.the-news-at', { address }),
      what: say('release-news.are-signed-but-not-in-a'),
      fix: say('release-news.look-by-hand-where-you-have'),
    });
  }
  const { program: _, ...news } = read.data;
  return ok({ news: isLater(news.version, version) ? news : null });
}

async function fetched(address: string): Promise<Uint8Array> {
  if (!address.startsWith('https://')) throw new Error('it is not an https address');
  const answer = await fetch(address, {
    redirect: 'error',
    credentials: 'omit',
    headers: { accept: 'text/plain' },
    signal: AbortSignal.timeout(longestWaitMs),
  });
  if (!answer.ok || answer.body === null) throw new Error(`it answered ${answer.status}`);
  const chunks: Uint8Array[] = [];
  let sizeBytes = 0;
  for await (const chunk of answer.body) {
    sizeBytes += chunk.length;
    if (sizeBytes > largestNewsBytes) throw new Error('it is too large');
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Both "major.minor.patch". */
export function isLater(version: string, than: string): boolean {
  const [a, b] = [version, than].map((text) => text.split('.').map(Number));
  for (const at of [0, 1, 2]) {
    const difference = (a?.[at] ?? 0) - (b?.[at] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return false;
}
