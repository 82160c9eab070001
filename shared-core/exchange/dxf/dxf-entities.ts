/**
 * The text of a DXF as entities by section and block. Read by hand rather than by a library: the form is pairs of lines,
 * and only here can a bad value be named by its line and the limits hold while it is read.
 */
import { say } from '../../wording/say.ts';
import type { Point } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import { givenPointCount } from '../pattern/drawn.ts';
import { type Entity, entityFrom, longestName } from './dxf-entity.ts';
import { numberIn, numberOf, type Pair, startOf, textOf } from './dxf-pairs.ts';
import { type Corner, cornerOf, pointOf } from './dxf-shapes.ts';
import type { ReadLimits } from '../pattern/pattern.ts';
import { BeyondLimit, beyondWords, type ReadMeter } from '../read-meter.ts';

export interface Block {
  readonly name: string;
  readonly line: number;
  readonly base: Point;
  readonly entities: readonly Entity[];
}

export interface DxfDrawing {
  /** In the order of the file. Two may have one name: an insert takes the first. */
  readonly blocks: readonly Block[];
  readonly entities: readonly Entity[];
  /** $INSUNITS of the header; null where it has none. */
  readonly unitCode: number | null;
  /** Kinds of entity that are not read: how many, and the line of the first. */
  readonly unread: ReadonlyMap<string, { readonly count: number; readonly line: number }>;
  readonly problems: readonly Problem[];
}

export type ReadDrawing =
  | { readonly ok: true; readonly drawing: DxfDrawing }
  | { readonly ok: false; readonly problem: Problem };

/** Everything of the drawing that patterns use, or why it cannot be read. Linear in the text. */
export function readDrawing(text: string, limits: ReadLimits, meter: ReadMeter): ReadDrawing {
  const { cursor, next, rest } = startOf(text);
  const blocks: Block[] = [];
  const entities: Entity[] = [];
  const unread = new Map<string, { count: number; line: number }>();
  const problems: Problem[] = [];
  const hiddenLayers = new Set<string>();
  let unitCode: number | null = null;
  let section = '';
  let block: { name: string; line: number; base: Point; entities: Entity[] } | null = null;
  let hasEnd = false;

  /** The pairs after the current 0 up to the next one. */
  const group = (): Pair[] => {
    const pairs: Pair[] = [];
    for (next(); !cursor.isAtEnd && cursor.code !== 0; next()) {
      if (pairs.length > 4 * limits.pointCount)
        throw new BeyondLimit(
          say('dxf-entities.line', { line: cursor.line }),
          beyondWords(limits.pointCount),
        );
      pairs.push({ code: cursor.code, value: cursor.value });
    }
    return pairs;
  };
  /** The corners that follow the head of a heavy polyline, up to its end. */
  const corners = (line: number): (Corner | null)[] => {
    const all: (Corner | null)[] = [];
    while (!cursor.isAtEnd && cursor.code === 0) {
      const part = cursor.value.trim().toUpperCase();
      if (part === 'SEQEND') {
        group();
        break;
      }
      if (part !== 'VERTEX') break;
      meter.points(1, say('dxf-entities.line', { line }));
      const vertex = group();
      // Points that steer a spline do not lie on its line.
      if ((numberOf(vertex, 70, 0) & 16) === 0) all.push(cornerOf(vertex, 0));
    }
    return all;
  };

  next();
  while (!cursor.isAtEnd) {
    if (cursor.code === 999) {
      next();
      continue;
    }
    if (cursor.code !== 0) {
      if (section === '') break;
      next();
      continue;
    }
    const kind = cursor.value.trim().slice(0, longestName).toUpperCase();
    const line = cursor.line + 1;
    if (kind === 'EOF') {
      hasEnd = true;
      break;
    }
    if (kind === 'SECTION') {
      // A header has no 0 before its end, so all of it comes with the name of the section.
      const values = group();
      section = textOf(values, 2).toUpperCase();
      const units = values.findIndex(({ code, value }) => code === 9 && value.trim() === '$INSUNITS');
      if (units >= 0) unitCode = numberIn(values[units + 1]?.value ?? '');
      continue;
    }
    if (kind === 'ENDSEC') {
      section = 'between';
      next();
      continue;
    }
    if (kind === 'LAYER' && section === 'TABLES') {
      const values = group();
      // Frozen, or with a colour below 0: switched off.
      if ((numberOf(values, 70, 0) & 1) === 1 || numberOf(values, 62, 1) < 0)
        hiddenLayers.add(textOf(values, 2).slice(0, longestName).toUpperCase());
      continue;
    }
    if (section !== 'ENTITIES' && section !== 'BLOCKS') {
      group();
      continue;
    }
    if (kind === 'ENDBLK') {
      if (block) blocks.push(block);
      block = null;
      group();
      continue;
    }
    meter.things(1, say('dxf-entities.line', { line }));
    if (kind === 'BLOCK') {
      const values = group();
      const base = pointOf(values) ?? { x: 0, y: 0 };
      block = { name: textOf(values, 2).slice(0, longestName), line, base, entities: [] };
      continue;
    }
    const values = group();
    const read = entityFrom(kind, line, values, kind === 'POLYLINE' ? corners(line) : []);
    if (read === null) {
      const known = unread.get(kind);
      if (known) known.count++;
      else unread.set(kind, { count: 1, line });
    } else if (read !== 'nothing' && 'problem' in read) problems.push(read.problem);
    else if (read !== 'nothing') {
      if (read.kind === 'path' && kind !== 'POLYLINE')
        meter.points(givenPointCount(read.path), say('dxf-entities.line', { line }));
      if (read.kind === 'point') meter.points(1, say('dxf-entities.line', { line }));
      (section === 'ENTITIES' ? entities : block?.entities)?.push(read);
    }
  }
  const stop = cursor.problem ?? (hasEnd ? null : endProblem(section, cursor.line));
  if (stop) return { ok: false, problem: stop };
  if (rest().trim() !== '') problems.push(afterEnd(cursor.line + 2));
  problems.push(...twinProblems(blocks), ...missingProblems(blocks, entities));
  const hidden = new Map<string, number>();
  const shown = (drawn: readonly Entity[]) =>
    drawn.filter(({ layer }) => {
      const isHidden = hiddenLayers.has(layer.toUpperCase());
      if (isHidden) hidden.set(layer, (hidden.get(layer) ?? 0) + 1);
      return !isHidden;
    });
  const drawing = {
    blocks: blocks.map((each) => ({ ...each, entities: shown(each.entities) })),
    entities: shown(entities),
  };
  problems.push(...hiddenProblems(hidden));
  return { ok: true, drawing: { ...drawing, unitCode, unread, problems } };
}

function endProblem(section: string, line: number): Problem {
  if (section === '')
    return {
      where: say('dxf-entities.line-1'),
      what: say('dxf-entities.does-not-begin-a-dxf-drawing'),
      fix: say('dxf-entities.choose-an-ascii-dxf-file'),
    };
  return {
    where: say('dxf-entities.line', { line }),
    what: say('dxf-entities.is-the-end-of-the-file'),
    fix: say('dxf-entities.save-or-copy-the-file-again'),
  };
}

function afterEnd(line: number): Problem {
  return {
    where: say('dxf-entities.line', { line }),
    what: say('dxf-entities.comes-after-the-end-that-the'),
    fix: say('dxf-entities.save-the-file-again-if-pieces'),
  };
}

function hiddenProblems(hidden: ReadonlyMap<string, number>): Problem[] {
  return [...hidden].map(([layer, count]) => ({
    where: say('dxf-entities.layer', { layer }),
    what: say('dxf-entities.is-switched-off-or-frozen-in', { count }),
    fix: say('dxf-entities.switch-it-on-and-save-the'),
  }));
}

function twinProblems(blocks: readonly Block[]): Problem[] {
  const first = new Map<string, Block>();
  return blocks.flatMap((block): Problem[] => {
    const twin = first.get(block.name);
    first.set(block.name, twin ?? block);
    if (!twin) return [];
    return [
      {
        where: say('dxf-entities.line', { line: block.line }),
        what: say('dxf-entities.begins-a-second-block-of-the', { blockName: block.name, line: twin.line }),
        fix: say('dxf-entities.both-are-read-as-drawn-give'),
      },
    ];
  });
}

function missingProblems(blocks: readonly Block[], entities: readonly Entity[]): Problem[] {
  const told = new Set(blocks.map(({ name }) => name));
  return [...entities, ...blocks.flatMap((block) => block.entities)].flatMap((entity): Problem[] => {
    if (entity.kind !== 'insert' || told.has(entity.block)) return [];
    told.add(entity.block);
    const what = say('dxf-entities.places-the-block-which-the-file', { block: entity.block });
    return [
      {
        where: say('dxf-entities.line', { line: entity.line }),
        what,
        fix: say('dxf-entities.save-the-file-again-with-all'),
      },
    ];
  });
}
