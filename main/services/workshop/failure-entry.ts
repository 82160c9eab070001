/**
 * What the log says of a failure: when, in which version and step, what kind it was, and where in the program. Never
 * the message, nor anything that a maker typed: messages of the system and of libraries quote names and amounts. So an
 * entry is not cleaned of them but made of parts that cannot hold them.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The program's own folder, whether its sources run as they are or built. */
const root = folderWithPackage(import.meta.dirname).replaceAll('\\', '/');
const maxFrames = 30;
const maxCauses = 3;

/** By itself the engine keeps ten frames, which are all a library's when a query fails. */
export function keepLongStacks(): void {
  Error.stackTraceLimit = Math.max(Error.stackTraceLimit, maxFrames);
}

export interface Failure {
  readonly at: Date;
  /** The name of a call, or a word for another step of the program; nothing that came from outside. */
  readonly step: string;
  readonly error: unknown;
}

/** Whole lines, with an end. */
export function failureEntry({ at, step, error }: Failure): string {
  const lines = [`${at.toISOString()} ${programVersion()} ${process.platform} ${step}: ${kindOf(error)}`];
  let cause = error;
  for (let depth = 0; depth < maxCauses; depth++) {
    if (!(cause instanceof Error)) break;
    lines.push(...framesOf(cause.stack ?? '', cause.message));
    if (cause.cause === undefined) break;
    cause = cause.cause;
    lines.push(`  because of ${kindOf(cause)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** Of what the window tells: it sends no message either. kind: as an error names itself. */
export function windowFailureEntry(at: Date, place: string, kind: string, stack: string): string {
  const head = `${at.toISOString()} ${programVersion()} ${process.platform} window, ${place}: ${word(kind)}`;
  return `${[head, ...framesOf(stack, '')].join('\n')}\n`;
}

/** Of a state that is worth knowing beside failures. what: fixed words of the program. */
export function noteEntry(at: Date, what: string): string {
  return `${at.toISOString()} ${programVersion()} ${process.platform} note: ${what}\n`;
}

function kindOf(error: unknown): string {
  if (!(error instanceof Error)) return `thrown ${typeof error}`;
  const code = (error as { code?: unknown }).code;
  const isCode = typeof code === 'string' && /^[A-Z][A-Z0-9_]{1,60}$/.test(code);
  return isCode ? `${word(error.name)} ${code}` : word(error.name);
}

function word(name: string): string {
  return /^[A-Za-z]{1,40}$/.test(name) ? name : 'Error';
}

/** Where it was, innermost first. Only lines at the end of the stack are frames: the message before them may have any lines. */
function framesOf(stack: string, message: string): string[] {
  const at = message === '' ? -1 : stack.indexOf(message);
  const lines = (at < 0 ? stack : stack.slice(at + message.length)).trimEnd().split('\n');
  const first = lines.findLastIndex((line) => !/^\s+at /.test(line)) + 1;
  return lines.slice(first, first + maxFrames).map((line) => `    at ${frameText(line)}`);
}

const frame = /^\s+at (?:(?:async )?(.*?) \()?(?:async )?(\S+):(\d+):(\d+)\)?$/;

function frameText(line: string): string {
  const match = frame.exec(line);
  const place = match ? placeText(match[2]!) : null;
  if (!match || place === null) return 'elsewhere';
  const name = (match[1] ?? '').replace(/ \[as .*\]$/, '');
  const isName = /^(new )?[\w$.#<>]{1,80}$/.test(name);
  return `${isName ? `${name} ` : ''}${place}:${match[3]}:${match[4]}`;
}

/** A file of the program, from its own folder on; null for any other, which would tell of the maker's machine. */
function placeText(location: string): string | null {
  const path = decoded(location.replace(/^file:\/\/(?=\/)/, '')).replaceAll('\\', '/');
  const inside = [
    // Windows names a drive behind one more slash.
    path.startsWith(`${root}/`) || path.startsWith(`/${root}/`)
      ? path.slice(path.indexOf(root) + root.length + 1)
      : null,
    /^node:[\w/]+$/.exec(path)?.[0],
    // The page lives under an address that is a secret.
    /\/(assets\/[\w.-]+\.js)$/.exec(path)?.[1],
  ].find((text) => typeof text === 'string');
  return inside !== undefined && inside !== null && /^[\w@.+/:-]{1,200}$/.test(inside) ? inside : null;
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

function folderWithPackage(folder: string): string {
  if (existsSync(join(folder, 'package.json')) || dirname(folder) === folder) return folder;
  return folderWithPackage(dirname(folder));
}

let version = '';

function programVersion(): string {
  if (version !== '') return version;
  try {
    const said: unknown = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    version = String((said as { version?: unknown }).version);
  } catch {
    version = 'unknown version';
  }
  return version;
}
