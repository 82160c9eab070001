/**
 * Reads pieces from an SVG: every closed outline that lies in no other is a piece, named by its title, label or id.
 * SVG has no standard for patterns, so grain is taken as up, except in files written here (svg-write.ts), whose lines
 * say in `data-line` what they are.
 */
import { type Point, ringBox } from '../geometry/ring.ts';
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
import { bytesProblem, fileText } from './file-text.ts';
import { settledPieces } from './found-pattern.ts';
import { nothingFound, type ReadChoices, type ReadLimits, type ReadPattern } from './pattern.ts';
import { pathData, shapePaths } from './svg-shapes.ts';
import { readTree, type SvgNode } from './svg-tree.ts';

/** Attributes of files written here. */
export const lineAttribute = 'data-line';
export const pieceAttribute = 'data-piece';

interface Shape {
  readonly path: DrawnPath;
  readonly role: string;
  readonly name: string;
  /** The group of one piece that it was written in, or null. */
  readonly group: SvgNode | null;
}

const notDrawn = [
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'metadata',
  'style',
  'script',
  'title',
  'desc',
];
const containers = ['svg', 'g', 'a', 'switch'];

export function read(bytes: Uint8Array, limits: ReadLimits, choices: ReadChoices): ReadPattern {
  const refusal = bytesProblem(bytes, limits);
  if (refusal) return nothingFound(refusal);
  const tree = readTree(fileText(bytes), limits);
  if (!tree.ok) return nothingFound(tree.problem);
  const { root } = tree;
  const problems: Problem[] = [];
  const shapes: Shape[] = [];
  const unread = new Map<string, number>();
  const byId = new Map<string, SvgNode>();
  indexIds(root, byId);
  let entityCount = 0;
  let pointCount = 0;
  let over: Problem | null = null;

  const walk = (
    node: SvgNode,
    outer: readonly string[],
    name: string,
    group: SvgNode | null,
    depth: number,
  ): void => {
    if (over || notDrawn.includes(node.name) || isHidden(node)) return;
    if (++entityCount > limits.entityCount) over = beyond(node, `more than ${limits.entityCount} shapes`);
    if (depth > limits.depthCount) over = beyond(node, `groups more than ${limits.depthCount} deep`);
    if (over) return;
    const { transform } = node.attributes;
    const transforms = transform === undefined ? outer : [transform, ...outer];
    const ownName = nameOf(node) || name;
    const ownGroup = node.attributes[pieceAttribute] === undefined ? group : node;
    if (containers.includes(node.name)) {
      for (const child of node.children)
        walk(child, transforms, node === root ? '' : ownName, ownGroup, depth + 1);
      return;
    }
    if (node.name === 'use') {
      const href = node.attributes.href ?? node.attributes['xlink:href'] ?? '';
      const target = byId.get(href.replace(/^#/, ''));
      const moved = `translate(${Number.parseFloat(node.attributes.x ?? '0')} ${Number.parseFloat(node.attributes.y ?? '0')})`;
      if (target)
        walk(
          target.name === 'symbol' ? { ...target, name: 'g' } : target,
          [moved, ...transforms],
          ownName,
          ownGroup,
          depth + 1,
        );
      return;
    }
    const data = pathData(node);
    if (data === null) {
      // What is written beside a piece here repeats its attributes.
      if (ownGroup) return;
      unread.set(node.name, (unread.get(node.name) ?? 0) + 1);
      return;
    }
    const read = shapePaths(data, transforms, node.line);
    if (!read.ok) {
      problems.push({
        where: `The ${node.name} on line ${node.line}`,
        what: `cannot be read: ${read.what}`,
        mend: 'It is left out; draw it anew, or save the file again.',
      });
      return;
    }
    pointCount += read.pointCount;
    if (pointCount > limits.pointCount) over = beyond(node, `more than ${limits.pointCount} points`);
    const role = node.attributes[lineAttribute] ?? '';
    for (const path of read.paths) shapes.push({ path, role, name: ownName, group: ownGroup });
  };
  walk(root, [], '', null, 0);
  if (over) return nothingFound(over);
  const written = writtenPieces(shapes);
  const drawn = written.length > 0 ? written : freePieces(shapes, problems);
  const notes = [...unread].map(([kind, count]) => `${count} <${kind}> not read: only lines and shapes are.`);
  return settledPieces(drawn, problems, limits, choices, {
    format: 'SVG',
    styleName: root.attributes['data-style'] ?? '',
    sampleSize: root.attributes['data-size'] ?? '',
    statedMmPerUnit: unitMm(root),
    notes,
  });
}

function beyond(node: SvgNode, what: string): Problem {
  return {
    where: `Line ${node.line}`,
    what: `goes beyond the limit: ${what}`,
    mend: 'Save fewer pieces in one file.',
  };
}

function indexIds(node: SvgNode, byId: Map<string, SvgNode>): void {
  const { id } = node.attributes;
  if (id !== undefined && !byId.has(id)) byId.set(id, node);
  for (const child of node.children) indexIds(child, byId);
}

function isHidden(node: SvgNode): boolean {
  return node.attributes.display === 'none' || /(^|;)\s*display\s*:\s*none/.test(node.attributes.style ?? '');
}

/** Its title, a label that a drawing program gave it, or its id. */
function nameOf(node: SvgNode): string {
  const title = node.children.find((child) => child.name === 'title')?.text;
  const label = Object.entries(node.attributes).find(
    ([key]) => key.endsWith(':label') || key === 'aria-label',
  );
  return (title || label?.[1] || node.attributes.id || '').trim().slice(0, 120);
}

/** mm for one unit of the drawing, by width or height with a real unit and the view box; null where only pixels are given. */
function unitMm(root: SvgNode): number | null {
  const width = lengthMm(root.attributes.width);
  const height = lengthMm(root.attributes.height);
  const box = (root.attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , boxWidth = Number.NaN, boxHeight = Number.NaN] = box;
  const hasBox = box.length === 4 && boxWidth > 0 && boxHeight > 0;
  if (!hasBox) return width === null && height === null ? null : pixelMm;
  const ratios = [
    width === null ? null : width / boxWidth,
    height === null ? null : height / boxHeight,
  ].filter((ratio) => ratio !== null);
  // A drawing keeps its proportions and is as large as fits.
  return ratios.length === 0 ? null : Math.min(...ratios);
}

/** 96 pixels to the inch: CSS Values and Units (from memory). */
const pixelMm = 25.4 / 96;

/** Null for pixels, shares and what cannot be read: those say nothing about cloth. */
function lengthMm(text: string | undefined): number | null {
  const match = /^\s*([\d.]+(?:e[+-]?\d+)?)\s*(mm|cm|in|pt|pc|Q)\s*$/i.exec(text ?? '');
  if (!match) return null;
  const mm = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, q: 0.25 }[match[2]!.toLowerCase()]!;
  const value = Number(match[1]) * mm;
  return value > 0 && Number.isFinite(value) ? value : null;
}

function writtenPieces(shapes: readonly Shape[]): DrawnPiece[] {
  const groups = new Set(shapes.flatMap(({ group }) => (group ? [group] : [])));
  return [...groups].flatMap((group, index): DrawnPiece[] => {
    const own = shapes.filter((shape) => shape.group === group);
    const on = (role: string) => own.filter((shape) => shape.role === role).map(({ path }) => path);
    const [boundary] = on('cut');
    if (!boundary?.isClosed) return [];
    const ends = (path: DrawnPath | undefined): readonly [Point, Point] | null =>
      path && distance(path.start, pathEnd(path)) > 0 ? [path.start, pathEnd(path)] : null;
    const [edges] = on('edges');
    const texts = new Map<string, string>([['piece name', group.attributes[pieceAttribute] ?? '']]);
    for (const key of ['size', 'quantity', 'material']) texts.set(key, group.attributes[`data-${key}`] ?? '');
    return [
      {
        key: `Piece ${index + 1}`,
        line: group.line,
        texts,
        boundary,
        sewLines: on('seam'),
        mirror: ends(on('fold')[0]),
        grain: ends(on('grain')[0]),
        turnPoints: edges ? [edges.start, ...edges.segments.map(({ to }) => to)] : [],
        notches: on('notch').map(({ start }) => start),
      },
    ];
  });
}

/** More loose lines than this are not joined to outlines, since each is tried against each. */
const mostLooseLines = 4000;

function freePieces(shapes: readonly Shape[], problems: Problem[]): DrawnPiece[] {
  if (shapes.length === 0) return [];
  const loose = shapes.filter(({ path }) => !path.isClosed);
  const names = new Map(shapes.map(({ path, name }) => [path.start, name]));
  if (loose.length > mostLooseLines)
    problems.push({
      where: 'The drawing',
      what: `has more than ${mostLooseLines} loose lines`,
      mend: 'Join its outlines to closed paths.',
    });
  const used = loose.length > mostLooseLines ? shapes.filter(({ path }) => path.isClosed) : shapes;
  const box = ringBox(Float64Array.from(used.flatMap(({ path }) => [path.start.x, path.start.y])));
  const reach = Math.max(box.maxX - box.minX, box.maxY - box.minY, 1) * 1e-4;
  const joined = joinedPaths(
    used.map(({ path }) => path),
    reach,
  );
  for (const path of joined.filter((each) => !each.isClosed && each.segments.length > 2))
    problems.push({
      where: `The line on line ${path.line}`,
      what: 'is open, so it is no piece',
      mend: 'Close it if it is an outline.',
    });
  const rings = joined.flatMap((path) => (path.isClosed ? [{ path, ring: pathRing(path, 0.5) }] : []));
  const taken = new Set<string>();
  return rings
    .filter(
      ({ path, ring }) => !rings.some((other) => other.ring !== ring && isInside(other.ring, path.start)),
    )
    .map(({ path }, index) => {
      const given = names.get(path.start) || `Piece ${index + 1}`;
      let key = given;
      for (let number = 2; taken.has(key); number++) key = `${given} ${number}`;
      taken.add(key);
      return {
        key,
        line: path.line,
        texts: new Map([['piece name', key]]),
        boundary: path,
        sewLines: [],
        mirror: null,
        grain: [
          { x: 0, y: 0 },
          { x: 0, y: 1 },
        ] as const,
        turnPoints: [],
        notches: [],
      };
    });
}
