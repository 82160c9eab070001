/** The catalogue against the code: which message is said where, and with which values. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Saying {
  readonly file: string;
  readonly id: string;
  /** Names of the values given; null where they are not written out as an object. */
  readonly values: readonly string[] | null;
}

/** Files of the product that may say something. root: the top of the project. */
export function sourceFiles(root: string): string[] {
  return ['shared-core', 'main', 'renderer'].flatMap((room) =>
    readdirSync(join(root, room), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name)),
  );
}

/** Each `say('id', { … })` of a file. */
export function sayings(file: string): Saying[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/\bsay\(\s*'([^']+)'\s*(,?)/g)].map((match) => {
    const after = match.index + match[0].length;
    if (match[2] !== ',') return { file, id: match[1]!, values: [] };
    const open = /^\s*\{/.exec(text.slice(after));
    if (!open) return { file, id: match[1]!, values: /^\s*\)/.test(text.slice(after)) ? [] : null };
    return { file, id: match[1]!, values: keysOf(text, after + open[0].length) };
  });
}

/** Names at the top level of an object literal whose first sign after { is at `at`. */
function keysOf(text: string, at: number): string[] | null {
  const names: string[] = [];
  let depth = 0;
  let isName = true;
  for (let i = at; i < text.length; i++) {
    const sign = text[i]!;
    if (depth === 0 && sign === '}') return names;
    if (depth === 0 && isName) {
      const name = /^\s*(\w+)\s*(?=[:,}])/.exec(text.slice(i));
      if (name) {
        names.push(name[1]!);
        i += name[0].length - 1;
        isName = false;
        continue;
      }
      if (/^\s*\}/.test(text.slice(i))) continue;
      if (!/^\s/.test(sign)) return null;
    }
    if (sign === "'" || sign === '"' || sign === '`') i = endOfText(text, i);
    else if ('([{'.includes(sign)) depth++;
    else if (')]}'.includes(sign)) depth--;
    else if (sign === ',' && depth === 0) isName = true;
  }
  return null;
}

/** Where the text that begins at `from` ends. */
function endOfText(text: string, from: number): number {
  const quote = text[from];
  for (let i = from + 1; i < text.length; i++) {
    if (text[i] === '\\') i++;
    else if (quote === '`' && text[i] === '$' && text[i + 1] === '{') {
      let depth = 1;
      for (i += 2; depth > 0 && i < text.length; i++) {
        if (text[i] === '`' || text[i] === "'") i = endOfText(text, i);
        else if (text[i] === '{') depth++;
        else if (text[i] === '}') depth--;
      }
      i--;
    } else if (text[i] === quote) return i;
  }
  return text.length;
}
