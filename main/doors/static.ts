/** The built renderer as both doors serve it: which file answers a path, and under which rules the page runs. */
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';

/** The page may run, show and reach only what comes from its own door. */
export const contentSecurityPolicy = [
  "default-src 'none'",
  // The solver of the cheapest basket is WebAssembly, from the same door; it needs no eval of scripts.
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  // data: for the photos of swatches, which come out of the workshop's file.
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const contentTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
};

export interface StaticAnswer {
  readonly status: 200 | 404;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array<ArrayBuffer>;
}

/**
 * The file for a path of the page's address ("/" is the page itself).
 *
 * rendererDir: absolute. path: as in a URL, still percent-encoded. A path that leaves the folder, names a
 * folder or has an unknown ending answers 404.
 */
export async function staticAnswer(rendererDir: string, path: string): Promise<StaticAnswer> {
  const file = fileFor(rendererDir, path);
  const contentType = file === undefined ? undefined : contentTypes[extname(file)];
  if (file === undefined || contentType === undefined) return notThere();
  try {
    const body = new Uint8Array(await readFile(file));
    return { status: 200, headers: { ...headersOf(file), 'content-type': contentType }, body };
  } catch {
    return notThere();
  }
}

export const pageHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentSecurityPolicy,
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'cache-control': 'no-store',
};

/** What the build made bears its content in its name, and holds nothing of a workshop: a browser may keep it. */
function headersOf(file: string): Readonly<Record<string, string>> {
  return /[\\/]assets[\\/][^\\/]*-[\w-]{8}\.\w+$/.test(file)
    ? { ...pageHeaders, 'cache-control': 'private, max-age=31536000, immutable' }
    : pageHeaders;
}

function notThere(): StaticAnswer {
  const body = new TextEncoder().encode('Not here.');
  return { status: 404, headers: { ...pageHeaders, 'content-type': 'text/plain; charset=utf-8' }, body };
}

function fileFor(rendererDir: string, path: string): string | undefined {
  let decoded: string;
  try {
    decoded = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  if (decoded.includes('\0') || decoded.includes('\\')) return undefined;
  const file = normalize(join(rendererDir, decoded === '/' ? 'index.html' : decoded));
  return file.startsWith(normalize(rendererDir) + sep) ? file : undefined;
}
