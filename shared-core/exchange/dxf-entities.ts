/**
 * The text of a DXF as entities by section and block. Read by hand rather than by a library: the form is pairs of lines,
 * and only here can a bad value be named by its line and the limits hold while it is read.
 */
import type { Point } from '../geometry/ring.ts';
import type { Problem } from '../measure/problem.ts';
import type { DrawnPath } from './drawn.ts';
import { numberOf, type Pair, startOf, textOf } from './dxf-pairs.ts';
import { arcPath, type Corner, cornerOf, lightCorners, pathOf, pointOf } from './dxf-shapes.ts';
import type { ReadLimits } from './pattern.ts';

interface Placed {
  readonly layer: string;
  readonly line: number;
}

export type Entity =
  | (Placed & { readonly kind: 'path'; readonly path: DrawnPath })
  | (Placed & { readonly kind: 'point'; readonly at: Point })
  | (Placed & { readonly kind: 'text'; readonly text: string })
  | (Placed & {
      readonly kind: 'insert';
      readonly block: string;
      readonly at: Point;
      readonly scaleX: number;
      readonly scaleY: number;
      readonly turnDeg: number;
    });

export interface Block {
  readonly name: string;
  readonly line: number;
  readonly base: Point;
  readonly entities: readonly Entity[];
}

export interface DxfDrawing {
  readonly blocks: ReadonlyMap<string, Block>;
  readonly entities: readonly Entity[];
  /** Numbers of the header by name: $INSUNITS, $MEASUREMENT. */
  readonly header: ReadonlyMap<string, number>;
  /** Kinds of entity that are not read: how many, and the line of the first. */
  readonly unread: ReadonlyMap<string, { readonly count: number; readonly line: number }>;
  readonly problems: readonly Problem[];
}

export type ReadDrawing =
  | { readonly ok: true; readonly drawing: DxfDrawing }
  | { readonly ok: false; readonly problem: Problem };

/** Everything of the drawing that patterns use, or why it cannot be read. Linear in the text. */
export function readDrawing(text: string, limits: ReadLimits): ReadDrawing {
  const { cursor, next } = startOf(text);
  const blocks = new Map<string, Block>();
  const entities: Entity[] = [];
  const header = new Map<string, number>();
  const unread = new Map<string, { count: number; line: number }>();
  const problems: Problem[] = [];
  let entityCount = 0;
  let pointCount = 0;
  let section = '';
  let block: { name: string; line: number; base: Point; entities: Entity[] } | null = null;
  let hasEnd = false;
  let over: Problem | null = null;

  /** The pairs after the current 0 up to the next one. */
  const group = (): Pair[] => {
    const pairs: Pair[] = [];
    for (next(); !cursor.isAtEnd && cursor.code !== 0; next())
      pairs.push({ code: cursor.code, value: cursor.value });
    return pairs;
  };

  next();
  while (!cursor.isAtEnd && !over) {
    if (cursor.code === 999) {
      next();
      continue;
    }
    if (cursor.code !== 0) {
      if (section === '') break;
      next();
      continue;
    }
    const kind = cursor.value.trim().toUpperCase();
    const line = cursor.line + 1;
    if (kind === 'EOF') {
      hasEnd = true;
      break;
    }
    if (kind === 'SECTION') {
      // A header has no 0 before its end, so all of it comes with the name of the section.
      const values = group();
      section = textOf(values, 2).toUpperCase();
      values.forEach(({ code, value }, index) => {
        if (code === 9) header.set(value.trim(), Number(values[index + 1]?.value));
      });
      continue;
    }
    if (kind === 'ENDSEC') {
      section = 'between';
      next();
      continue;
    }
    const isDrawn = section === 'ENTITIES' || section === 'BLOCKS';
    if (!isDrawn) {
      group();
      continue;
    }
    if (kind === 'BLOCK') {
      const values = group();
      const base = pointOf(values) ?? { x: 0, y: 0 };
      block = { name: textOf(values, 2), line, base, entities: [] };
      continue;
    }
    if (kind === 'ENDBLK') {
      if (block) blocks.set(block.name, block);
      block = null;
      group();
      continue;
    }
    if (++entityCount > limits.entityCount) {
      over = tooMuch(line, `more than ${limits.entityCount} drawn things`);
      break;
    }
    const into = section === 'ENTITIES' ? entities : (block?.entities ?? []);
    const values = group();
    const layer = textOf(values, 8);
    const isClosed = (numberOf(values, 70, 0) & 1) === 1;
    const add = (path: DrawnPath | null, pointsHere: number) => {
      pointCount += pointsHere;
      if (pointCount > limits.pointCount) over = tooMuch(line, `more than ${limits.pointCount} points`);
      else if (path === null) problems.push(unreadable(kind, line));
      else if (path.segments.length > 0) into.push({ kind: 'path', layer, line, path });
    };
    switch (kind) {
      case 'POLYLINE': {
        const corners: (Corner | null)[] = [];
        let isEnded = false;
        while (!cursor.isAtEnd && cursor.code === 0) {
          const part = cursor.value.trim().toUpperCase();
          if (part === 'SEQEND') {
            isEnded = true;
            group();
            break;
          }
          if (part !== 'VERTEX') break;
          const vertex = group();
          // Points that steer a spline do not lie on its line.
          if ((numberOf(vertex, 70, 0) & 16) === 0) corners.push(cornerOf(vertex, 0));
          if (corners.length + pointCount > limits.pointCount) break;
        }
        if (!isEnded && cursor.isAtEnd) break;
        add(pathOf(corners, isClosed, line), corners.length);
        break;
      }
      case 'LWPOLYLINE': {
        const corners = lightCorners(values);
        add(pathOf(corners, isClosed, line), corners.length);
        break;
      }
      case 'LINE':
        add(pathOf([cornerOf(values, 0), cornerOf(values, 1)], false, line), 2);
        break;
      case 'CIRCLE':
      case 'ARC':
        add(arcPath(values, kind === 'CIRCLE', line), 4);
        break;
      case 'POINT': {
        const at = pointOf(values);
        if (at) into.push({ kind: 'point', layer, line, at });
        else problems.push(unreadable(kind, line));
        if (++pointCount > limits.pointCount) over = tooMuch(line, `more than ${limits.pointCount} points`);
        break;
      }
      case 'TEXT':
      case 'MTEXT':
        into.push({ kind: 'text', layer, line, text: plainText(values) });
        break;
      case 'INSERT': {
        const at = pointOf(values);
        const scaleX = numberOf(values, 41, 1);
        const scaleY = numberOf(values, 42, 1);
        const turnDeg = numberOf(values, 50, 0);
        if (!at || !Number.isFinite(scaleX + scaleY + turnDeg)) problems.push(unreadable(kind, line));
        else {
          into.push({ kind: 'insert', layer, line, block: textOf(values, 2), at, scaleX, scaleY, turnDeg });
        }
        break;
      }
      default: {
        if (kind === 'SEQEND' || kind === 'VERTEX' || kind === 'ATTDEF' || kind === 'ATTRIB') break;
        const known = unread.get(kind);
        if (known) known.count++;
        else unread.set(kind, { count: 1, line });
      }
    }
  }
  const stop = over ?? cursor.problem ?? (hasEnd ? null : endProblem(section, cursor.line));
  if (stop) return { ok: false, problem: stop };
  return { ok: true, drawing: { blocks, entities, header, unread, problems } };
}

function endProblem(section: string, line: number): Problem {
  if (section === '')
    return { where: 'Line 1', what: 'does not begin a DXF drawing', mend: 'Choose an ASCII DXF file.' };
  return {
    where: `Line ${line}`,
    what: 'is the end of the file, but its EOF is missing: it was cut short',
    mend: 'Save or copy the file again.',
  };
}

function tooMuch(line: number, what: string): Problem {
  return {
    where: `Line ${line}`,
    what: `goes beyond the limit: ${what}`,
    mend: 'Save fewer pieces or sizes in one file.',
  };
}

function unreadable(kind: string, line: number): Problem {
  return {
    where: `Line ${line}`,
    what: `begins a ${kind} with a place that is not a number`,
    mend: 'It is left out; mend it in the file, or save the file again.',
  };
}

/** All of an entity's text (long ones come in several), letters written as \\U+00E9 and line ends read. */
function plainText(pairs: readonly Pair[]): string {
  const text = [3, 1].flatMap((code) => pairs.filter((pair) => pair.code === code)).map(({ value }) => value);
  return text
    .join('')
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\P/g, ' ')
    .trim();
}
