/** Pieces of a DXF as they are drawn: one for each block of the standard, or each closed line of any other drawing. */
import { say } from '../../wording/say.ts';
import { type Point, ringAreaMm2, ringBox } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import {
  type DrawnPath,
  type DrawnPiece,
  distance,
  pathChordCount,
  pathEnd,
  pathRing,
} from '../pattern/drawn.ts';
import type { InsertedBlock } from './dxf-blocks.ts';
import type { Entity } from './dxf-entity.ts';
import { layerNumber, layers, notchLayers } from './dxf-layers.ts';
import { joinedPaths } from '../pattern/joined-paths.ts';
import { outerRings } from '../pattern/outer-rings.ts';
import type { ReadLimits } from '../pattern/pattern.ts';
import type { ReadMeter } from '../read-meter.ts';

/** What comes of a drawing, and what is said of the rest. */
export interface DrawnPieces {
  readonly pieces: readonly DrawnPiece[];
  readonly problems: readonly Problem[];
  readonly notes: readonly string[];
}

/** More loose lines than this are not joined to outlines. */
export const maxLooseLines = 4000;

export function onLayer(entities: readonly Entity[], layer: number): DrawnPath[] {
  return entities.flatMap((entity) =>
    entity.kind === 'path' && layerNumber(entity.layer) === layer ? [entity.path] : [],
  );
}

/** Texts of the form "Key: value" by key; the first of a key counts. */
export function keyedTexts(entities: readonly Entity[]): Map<string, string> {
  const texts = new Map<string, string>();
  for (const entity of entities)
    if (entity.kind === 'text' && entity.key !== '' && !texts.has(entity.key))
      texts.set(entity.key, entity.value);
  return texts;
}

/** A sentence for closed lines that a piece has no place for. */
export function innerNote(count: number): string[] {
  if (count === 0) return [];
  const lines = say('dxf-pieces.closed-lines-that-lie', { count });
  return [say('dxf-pieces.inside-a-piece-not-kept-a', { lines })];
}

/** One piece of each block that has a boundary; all of them together may take what the meter allows. */
export function standardPieces(blocks: readonly InsertedBlock[], meter: ReadMeter): DrawnPieces {
  const pieces: DrawnPiece[] = [];
  const problems: Problem[] = [];
  const keys = new Map<string, number>();
  for (const { name, line, entities } of blocks) {
    const count = (keys.get(name) ?? 0) + 1;
    keys.set(name, count);
    const piece = standardPiece(count === 1 ? name : `${name} (${count})`, line, entities, meter, problems);
    if (piece) pieces.push(piece);
  }
  return { pieces, problems, notes: [] };
}

function standardPiece(
  key: string,
  line: number,
  entities: readonly Entity[],
  meter: ReadMeter,
  problems: Problem[],
): DrawnPiece | null {
  const texts = keyedTexts(entities);
  const drawn = onLayer(entities, layers.boundary);
  const where = say('dxf-pieces.the-piece-line', { get: texts.get('piece name') || key, line });
  if (drawn.length > maxLooseLines) {
    const what = say('dxf-pieces.has-a-boundary-of-single-lines', { drawnCount: drawn.length });
    problems.push({ where, what, fix: say('dxf-pieces.save-it-as-one-polyline') });
    return null;
  }
  const reach = joinReach(drawn);
  const joined = joinedPaths(drawn, reach, meter);
  const closed = joined.filter((path) => path.isClosed);
  const sized = closed
    .map((path) => {
      meter.chords(pathChordCount(path, reach), where);
      return { path, area: Math.abs(ringAreaMm2(pathRing(path, reach))) };
    })
    .sort((a, b) => b.area - a.area);
  const boundary = sized[0]?.path;
  if (!boundary) {
    const open = joined[0]!;
    const gap = distance(open.start, pathEnd(open));
    problems.push({
      where,
      what: say('dxf-pieces.has-an-open-boundary-its-ends', { gap: Number(gap.toFixed(3)) }),
      fix: say('dxf-pieces.close-the-line-that-begins-on', { line: open.line }),
    });
    return null;
  }
  if (joined.length > 1) {
    const others = joined.length - 1;
    problems.push({
      where,
      what: say('dxf-pieces.draws-other-lines-on-the-layer', { others }),
      fix: say('dxf-pieces.give-each-piece-a-block-of'),
    });
  }
  return { ...marksOf(entities), key, line, texts, boundary };
}

/** A drawing of no standard blocks: every closed line that lies in no other is a piece, with the marks inside it. */
export function loosePieces(entities: readonly Entity[], limits: ReadLimits, meter: ReadMeter): DrawnPieces {
  const problems: Problem[] = [];
  const standard = onLayer(entities, layers.boundary);
  const drawn =
    standard.length > 0
      ? standard
      : entities.flatMap((entity) => (entity.kind === 'path' ? [entity.path] : []));
  if (drawn.filter((path) => !path.isClosed).length > maxLooseLines) {
    problems.push({
      where: say('common.the-drawing'),
      what: say('dxf-pieces.has-more-than-loose-lines', { maxLooseLines }),
      fix: say('dxf-pieces.save-its-outlines-as-polylines'),
    });
    return { pieces: [], problems, notes: [] };
  }
  const reach = joinReach(drawn);
  const joined = joinedPaths(drawn, reach, meter);
  for (const path of joined.filter((each) => !each.isClosed && each.segments.length > 2)) {
    problems.push({
      where: say('dxf-pieces.the-line-that-begins-on-line', { line: path.line }),
      what: say('dxf-pieces.is-open-so-it-is-no'),
      fix: say('dxf-pieces.close-it-if-it-is-an'),
    });
  }
  const closed = joined.filter((path) => path.isClosed);
  const outer = outerRings(closed, reach, limits.pieceCount, meter);
  const pieces = outer.map(({ path, ring }, index) => {
    const own = standard.length > 0 ? marksIn(entities, ring, meter) : [];
    return {
      ...marksOf(own),
      key: say('found-pattern.piece', { number: index + 1 }),
      line: path.line,
      texts: keyedTexts(own),
      boundary: path,
    };
  });
  return { pieces, problems, notes: innerNote(closed.length - outer.length) };
}

/** Points of lines that are to meet lie within a ten-thousandth of the drawing's size; so near its curves are followed, too. */
function joinReach(paths: readonly DrawnPath[]): number {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = ({ x, y }: Point) => {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  };
  for (const { start, segments } of paths) {
    take(start);
    for (const { to } of segments) take(to);
  }
  return Math.max(maxX - minX, maxY - minY, 0) * 1e-4;
}

function marksIn(entities: readonly Entity[], ring: Float64Array, meter: ReadMeter): Entity[] {
  meter.steps(entities.length, say('common.the-drawing'));
  const box = ringBox(ring);
  return entities.filter((entity) => {
    if (entity.kind !== 'path' && entity.kind !== 'point') return false;
    const at = entity.kind === 'point' ? entity.at : entity.path.start;
    return at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
  });
}

function marksOf(entities: readonly Entity[]) {
  const [mirror] = onLayer(entities, layers.mirrorLine);
  const [grain] = onLayer(entities, layers.grainLine);
  const ends = (path: DrawnPath | undefined): readonly [Point, Point] | null =>
    path && distance(path.start, pathEnd(path)) > 0 ? [path.start, pathEnd(path)] : null;
  return {
    sewLines: onLayer(entities, layers.sewLine),
    mirror: ends(mirror),
    grain: ends(grain),
    turnPoints: pointsOn(entities, [layers.turnPoints]),
    notches: pointsOn(entities, notchLayers),
  };
}

function pointsOn(entities: readonly Entity[], wanted: readonly number[]): Point[] {
  return entities.flatMap((entity) => {
    if (!wanted.includes(layerNumber(entity.layer) ?? -1)) return [];
    if (entity.kind === 'point') return [entity.at];
    // Some draw a notch as a short line from the boundary inwards.
    return entity.kind === 'path' ? [entity.path.start] : [];
  });
}
