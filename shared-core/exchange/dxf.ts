/** Reads apparel patterns by the open DXF standard, and closed lines of any other DXF as plain pieces. */
import { type Box, type Point, ringAreaMm2, ringBox } from '../geometry/ring.ts';
import type { Problem } from '../measure/problem.ts';
import {
  type DrawnPath,
  type DrawnPiece,
  distance,
  isInside,
  joinedPaths,
  pathEnd,
  pathRing,
} from './drawn.ts';
import { flattened, insertedBlocks } from './dxf-blocks.ts';
import { type DxfDrawing, type Entity, readDrawing } from './dxf-entities.ts';
import { layerNumber, layers, notchLayers, unkept } from './dxf-layers.ts';
import { bytesProblem, fileText } from './file-text.ts';
import { settledPieces } from './found-pattern.ts';
import { nothingFound, type ReadChoices, type ReadLimits, type ReadPattern } from './pattern.ts';

/** More loose lines than this are not joined to outlines, since each is tried against each. */
const mostLooseLines = 4000;

export function read(bytes: Uint8Array, limits: ReadLimits, choices: ReadChoices): ReadPattern {
  const refusal = bytesProblem(bytes, limits);
  if (refusal) return nothingFound(refusal);
  const outcome = readDrawing(fileText(bytes), limits);
  if (!outcome.ok) return nothingFound(outcome.problem);
  const { drawing } = outcome;
  const problems: Problem[] = [...drawing.problems];
  const flat = flattened(drawing, limits);
  if (isProblem(flat)) return nothingFound(flat);
  const blocks = insertedBlocks(drawing, limits);
  if (isProblem(blocks)) return nothingFound(blocks);
  const asStandard = blocks.filter(({ entities }) => onLayer(entities, layers.boundary).length > 0);
  const drawn =
    asStandard.length > 0
      ? asStandard.flatMap(({ name, line, entities }) => {
          const piece = pieceFrom(name, line, entities);
          if (isProblem(piece)) problems.push(piece);
          return isProblem(piece) ? [] : [piece];
        })
      : loosePieces(flat, problems);
  const style = keyedTexts(flat);
  return settledPieces(drawn, problems, limits, choices, {
    format: 'DXF',
    styleName: style.get('style name') ?? '',
    sampleSize: style.get('sample size') ?? '',
    statedMmPerUnit: statedUnit(style.get('units'), drawing),
    notes: [...unreadNotes(drawing), ...unkeptNotes(asStandard.flatMap(({ entities }) => entities))],
  });
}

function isProblem(value: object): value is Problem {
  return 'mend' in value;
}

function onLayer(entities: readonly Entity[], layer: number): DrawnPath[] {
  return entities.flatMap((entity) =>
    entity.kind === 'path' && layerNumber(entity.layer) === layer ? [entity.path] : [],
  );
}

function pointsOn(entities: readonly Entity[], wanted: readonly number[]): Point[] {
  return entities.flatMap((entity) => {
    if (!wanted.includes(layerNumber(entity.layer) ?? -1)) return [];
    if (entity.kind === 'point') return [entity.at];
    // Some draw a notch as a short line from the boundary inwards.
    return entity.kind === 'path' ? [entity.path.start] : [];
  });
}

/** Texts of the form "Key: value" by key in lower case; the first of a key counts. */
function keyedTexts(entities: readonly Entity[]): Map<string, string> {
  const texts = new Map<string, string>();
  for (const entity of entities) {
    if (entity.kind !== 'text') continue;
    const match = /^\s*([^:]{1,40}?)\s*:\s*(.*)$/s.exec(entity.text);
    const key = match?.[1]?.toLowerCase();
    if (key && !texts.has(key)) texts.set(key, match?.[2]?.trim() ?? '');
  }
  return texts;
}

/** Points of lines that are to meet lie within a ten-thousandth of the drawing's size. */
function joinReach(paths: readonly DrawnPath[]): number {
  const boxes = paths.map((path) => pathBox(path));
  const width = Math.max(...boxes.map((box) => box.maxX)) - Math.min(...boxes.map((box) => box.minX));
  const height = Math.max(...boxes.map((box) => box.maxY)) - Math.min(...boxes.map((box) => box.minY));
  return Math.max(width, height) * 1e-4;
}

function pathBox(path: DrawnPath): Box {
  return ringBox(
    Float64Array.from([path.start, ...path.segments.map(({ to }) => to)].flatMap(({ x, y }) => [x, y])),
  );
}

function areaOf(path: DrawnPath): number {
  return Math.abs(ringAreaMm2(pathRing(path, 0.1)));
}

function pieceFrom(key: string, line: number, entities: readonly Entity[]): DrawnPiece | Problem {
  const texts = keyedTexts(entities);
  const drawn = onLayer(entities, layers.boundary);
  const where = `The piece ${texts.get('piece name') || key} (line ${line})`;
  if (drawn.length > mostLooseLines)
    return {
      where,
      what: `has a boundary of ${drawn.length} single lines`,
      mend: 'Save it as one polyline.',
    };
  const joined = joinedPaths(drawn, joinReach(drawn));
  const closed = joined.filter((path) => path.isClosed).sort((a, b) => areaOf(b) - areaOf(a));
  const [boundary] = closed;
  if (!boundary) {
    const open = joined[0]!;
    const gap = distance(open.start, pathEnd(open));
    return {
      where,
      what: `has an open boundary: its ends lie ${Number(gap.toFixed(3))} of the file's units apart`,
      mend: `Close the line that begins on line ${open.line}.`,
    };
  }
  return { ...marksOf(entities), key, line, texts, boundary };
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

/** A drawing of no standard blocks: every closed line that lies in no other is a piece, with the marks inside it. */
function loosePieces(entities: readonly Entity[], problems: Problem[]): DrawnPiece[] {
  const standard = onLayer(entities, layers.boundary);
  const drawn =
    standard.length > 0
      ? standard
      : entities.flatMap((entity) => (entity.kind === 'path' ? [entity.path] : []));
  if (drawn.length === 0) return [];
  if (drawn.filter((path) => !path.isClosed).length > mostLooseLines) {
    problems.push({
      where: 'The drawing',
      what: `has more than ${mostLooseLines} loose lines`,
      mend: 'Save its outlines as polylines.',
    });
    return [];
  }
  const joined = joinedPaths(drawn, joinReach(drawn));
  for (const path of joined.filter((each) => !each.isClosed && each.segments.length > 2)) {
    problems.push({
      where: `The line that begins on line ${path.line}`,
      what: 'is open, so it is no piece',
      mend: 'Close it if it is an outline.',
    });
  }
  const rings = joined.flatMap((path) => (path.isClosed ? [{ path, ring: pathRing(path, 0.1) }] : []));
  const outer = rings.filter(
    ({ path, ring }) => !rings.some((other) => other.ring !== ring && isInside(other.ring, path.start)),
  );
  return outer.map(({ path, ring }, index) => {
    const own = standard.length > 0 ? entities.filter((entity) => isMarkIn(entity, ring)) : [];
    return {
      ...marksOf(own),
      key: `Piece ${index + 1}`,
      line: path.line,
      texts: keyedTexts(own),
      boundary: path,
    };
  });
}

function isMarkIn(entity: Entity, ring: Float64Array): boolean {
  if (entity.kind !== 'path' && entity.kind !== 'point') return false;
  const at = entity.kind === 'point' ? entity.at : entity.path.start;
  const box = ringBox(ring);
  return at.x >= box.minX && at.x <= box.maxX && at.y >= box.minY && at.y <= box.maxY;
}

/** mm for a unit by the style's own text, else by the drawing's header; null where neither says. */
function statedUnit(text: string | undefined, drawing: DxfDrawing): number | null {
  switch (text?.toUpperCase()) {
    case 'ENGLISH':
      return 25.4;
    case 'METRIC':
      return 1;
    default:
  }
  switch (drawing.header.get('$INSUNITS')) {
    case 1:
      return 25.4;
    case 4:
      return 1;
    case 5:
      return 10;
    case 6:
      return 1000;
    default:
      return null;
  }
}

function unreadNotes(drawing: DxfDrawing): string[] {
  return [...drawing.unread].map(
    ([kind, { count, line }]) =>
      `${count} ${kind} not read, the first on line ${line}: save curves as polylines.`,
  );
}

function unkeptNotes(entities: readonly Entity[]): string[] {
  return [...unkept].flatMap(([layer, [one, many]]) => {
    const count = entities.filter(
      (entity) => entity.kind !== 'text' && layerNumber(entity.layer) === layer,
    ).length;
    return count === 0
      ? []
      : [`${count} ${count === 1 ? one : many} not kept: a piece has no place for them.`];
  });
}
