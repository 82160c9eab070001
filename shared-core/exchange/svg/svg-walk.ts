/** Every shape of an SVG where it stands, with y up: groups, uses, transforms and styles followed, within the limits. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import {
  type DrawnPath,
  givenPointCount,
  isWithin,
  type Matrix,
  movedPath,
  product,
  unmoved,
} from '../pattern/drawn.ts';
import { furthestMm, type ReadLimits } from '../pattern/pattern.ts';
import { BeyondLimit, beyondWords, type ReadMeter } from '../read-meter.ts';
import { inUnits, svgLength } from './svg-length.ts';
import { pathWordCount, type ReadPaths, shapeData, shapePaths } from './svg-shapes.ts';
import { lookOf, type StyleSheet, styleSheet, type SvgLook } from './svg-styles.ts';
import { transformMatrix } from './svg-transform.ts';
import type { SvgNode } from './svg-tree.ts';

/** Attributes of files written here. */
export const lineAttribute = 'data-line';
export const pieceAttribute = 'data-piece';

export interface Shape {
  readonly path: DrawnPath;
  readonly role: string;
  readonly name: string;
  /** The group of one piece that it was written in, or null. */
  readonly group: SvgNode | null;
}

export interface SvgShapes {
  readonly shapes: readonly Shape[];
  /** Groups of pieces, each once, those without a shape included. */
  readonly groups: readonly SvgNode[];
  readonly problems: readonly Problem[];
  readonly notes: readonly string[];
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

/** What a node says of itself, worked out once however often it is used. */
interface NodeFacts {
  readonly look: SvgLook;
  readonly name: string;
  /** null: it cannot be read. */
  readonly matrix: Matrix | null;
  readonly target: string;
  readonly paths: ReadPaths | 'no shape';
}

/** Where a node stands. */
interface Place {
  readonly matrix: Matrix;
  readonly name: string;
  readonly group: SvgNode | null;
  readonly isHidden: boolean;
  readonly depth: number;
}

/** frame: from the drawing's units to ones of equal size both ways, with y up. mmPerUnit: of those. */
export function svgShapes(
  root: SvgNode,
  { frame, mmPerUnit }: { readonly frame: Matrix; readonly mmPerUnit: number },
  limits: ReadLimits,
  meter: ReadMeter,
): SvgShapes {
  const byId = new Map<string, SvgNode>();
  const sheets: string[] = [];
  indexed(root, byId, sheets);
  const sheet = styleSheet(sheets);
  const facts = new Map<SvgNode, NodeFacts>();
  const problems = new Map<string, Problem>();
  const shapes: Shape[] = [];
  const groups = new Set<SvgNode>();
  /** Symbols and drawings that are repeated, each once. */
  const asGroups = new Map<SvgNode, SvgNode>();
  const unread = new Map<string, number>();
  const reach = furthestMm / mmPerUnit;
  let hiddenCount = 0;
  let wordCount = 0;
  let unitNote: string | null = null;

  /** Each node is named once, however often it is used. */
  const trouble = (node: SvgNode, what: string, fix: string): void => {
    const where = say('svg-walk.the-on-line', { nodeName: node.name.slice(0, 40), line: node.line });
    problems.set(`${where} ${what}`, { where, what, fix });
  };
  const pathsOf = (node: SvgNode): ReadPaths | 'no shape' => {
    const shape = shapeData(node);
    if (shape.kind === 'no shape') return 'no shape';
    if (shape.kind === 'unreadable') return { ok: false, what: shape.what };
    if (shape.unitIn !== null)
      unitNote ??= say('svg-walk.on-line', { unitIn: shape.unitIn, line: node.line });
    wordCount += pathWordCount(shape.data);
    if (wordCount > 3 * limits.pointCount)
      throw new BeyondLimit(
        say('svg-walk.line', { line: node.line }),
        beyondWords(limits.pointCount),
        say('svg-walk.save-fewer-pieces-in-one-file'),
      );
    return shapePaths(shape.data, node.line);
  };
  const factsOf = (node: SvgNode): NodeFacts => {
    const known = facts.get(node);
    if (known) return known;
    meter.steps(10 * sheet.rules.length, say('svg-walk.line', { line: node.line }));
    const { transform, href } = node.attributes;
    const fresh = {
      look: lookOf(node, sheet),
      name: nameOf(node),
      matrix: transform === undefined ? unmoved : transformMatrix(transform),
      target: href ?? node.attributes['xlink:href'] ?? '',
      paths: containers.includes(node.name) || node.name === 'use' ? ('no shape' as const) : pathsOf(node),
    };
    facts.set(node, fresh);
    return fresh;
  };

  const walk = (node: SvgNode, place: Place): void => {
    if (notDrawn.includes(node.name)) return;
    const where = say('svg-walk.line', { line: node.line });
    meter.things(1, where);
    if (place.depth > limits.depthCount)
      throw new BeyondLimit(
        where,
        say('svg-walk.goes-beyond-the-limit-groups', { depthCount: limits.depthCount }),
        say('svg-walk.ungroup-the-pieces'),
      );
    const { look, name, matrix, target, paths } = factsOf(node);
    if (look.isGone) {
      hiddenCount++;
      return;
    }
    const isGroup = containers.includes(node.name) || node.name === 'use';
    if (paths === 'no shape' && !isGroup) {
      // What is written beside a piece here repeats its attributes.
      if (!place.group) unread.set(node.name, (unread.get(node.name) ?? 0) + 1);
      return;
    }
    if (look.isMovedByStyle || matrix === null) {
      if (look.isMovedByStyle) trouble(node, say('svg-walk.is-moved-or-scaled-by-a'), withoutStyles());
      else trouble(node, say('svg-walk.has-a-transform-that-cannot-be'), savedAgain());
      return;
    }
    const isPiece = node.attributes[pieceAttribute] !== undefined;
    if (isPiece) groups.add(node);
    const here: Place = {
      matrix: product(place.matrix, matrix),
      name: name || place.name,
      group: isPiece ? node : place.group,
      isHidden: look.isHidden ?? place.isHidden,
      depth: place.depth + 1,
    };
    if (containers.includes(node.name)) {
      const own = node === root ? { ...here, name: '' } : withOffset(node, here);
      if (own) for (const child of node.children) walk(child, own);
      else trouble(node, say('svg-walk.is-a-drawing-within-the-drawing'), ungrouped());
      return;
    }
    if (paths === 'no shape') {
      walkUse(node, target, here);
      return;
    }
    if (here.isHidden) {
      hiddenCount++;
      return;
    }
    if (!paths.ok) {
      trouble(node, say('svg-walk.cannot-be-read', { what: paths.what }), drawnAnew());
      return;
    }
    const role = node.attributes[lineAttribute] ?? '';
    for (const drawn of paths.paths) {
      meter.points(givenPointCount(drawn), where);
      const path = movedPath(here.matrix, drawn);
      if (isWithin(path, reach)) shapes.push({ path, role, name: here.name, group: here.group });
      else trouble(node, say('svg-walk.lies-further-than-1-km-from'), inAnotherUnit());
    }
  };
  const walkUse = (node: SvgNode, target: string, here: Place): void => {
    const used = target.startsWith('#') ? byId.get(target.slice(1)) : undefined;
    const moved = withOffset(node, here);
    const isDrawing = used?.name === 'symbol' || used?.name === 'svg';
    if (!target.startsWith('#')) trouble(node, say('svg-walk.repeats-a-shape-of-another-file'), putThere());
    else if (!used) trouble(node, say('svg-walk.repeats-a-shape-that-is-not'), putThere());
    else if (!moved) trouble(node, say('svg-walk.has-a-place-that-is-not'), savedAgain());
    else if (!isDrawing) walk(used, moved);
    else if (used.attributes.viewBox !== undefined)
      trouble(node, say('svg-walk.repeats-a-drawing-with-a-scale'), ungrouped());
    else {
      const group = asGroups.get(used) ?? { ...used, name: 'g' };
      asGroups.set(used, group);
      walk(group, moved);
    }
  };
  walk(root, { matrix: frame, name: '', group: null, isHidden: false, depth: 0 });
  return {
    shapes,
    groups: [...groups],
    problems: [...problems.values()],
    notes: [
      ...[...unread].map(([kind, count]) => say('svg-walk.not-read-only-lines-and-shapes', { count, kind })),
      ...hiddenNote(hiddenCount),
      ...styleNotes(sheet),
      ...(unitNote === null ? [] : [say('svg-walk.measures-with-a-unit-such-as', { unitNote })]),
    ],
  };
}

/** What is done with a thing that is left out. */
const withoutStyles = () => say('svg-walk.it-is-left-out-apply-its');
const savedAgain = () => say('svg-walk.it-is-left-out-save-the');
const drawnAnew = () => say('svg-walk.it-is-left-out-draw-it');
const inAnotherUnit = () => say('svg-walk.it-is-left-out-check-the');
const putThere = () => say('svg-walk.it-is-left-out-put-the');
const ungrouped = () => say('svg-walk.it-is-left-out-ungroup-it');

function indexed(node: SvgNode, byId: Map<string, SvgNode>, sheets: string[]): void {
  const { id } = node.attributes;
  if (id !== undefined && !byId.has(id)) byId.set(id, node);
  if (node.name === 'style') sheets.push(node.text);
  for (const child of node.children) indexed(child, byId, sheets);
}

/** Its title, a label that a drawing program gave it, or its id. */
function nameOf(node: SvgNode): string {
  const title = node.children.find((child) => child.name === 'title')?.text;
  const label = Object.entries(node.attributes).find(
    ([key]) => key.endsWith(':label') || key === 'aria-label',
  );
  return (title || label?.[1] || node.attributes.id || '').slice(0, 500).trim().slice(0, 120);
}

/** Moved by the x and y of a use or an inner drawing; null where they are no numbers, or where it has a scale of its own. */
function withOffset(node: SvgNode, place: Place): Place | null {
  if (node.name !== 'use' && node.name !== 'svg') return place;
  if (node.name === 'svg' && node.attributes.viewBox !== undefined) return null;
  const [x, y] = [node.attributes.x, node.attributes.y].map((text) =>
    text === undefined ? 0 : inUnits(svgLength(text)),
  ) as [number, number];
  return Number.isFinite(x + y) ? { ...place, matrix: product(place.matrix, [1, 0, 0, 1, x, y]) } : null;
}

function hiddenNote(count: number): string[] {
  if (count === 0) return [];
  return [say('svg-walk.things-that-the-drawing-hides-are', { count })];
}

function styleNotes(sheet: StyleSheet): string[] {
  return sheet.unread.map((selector) => say('svg-walk.the-style-may-hide-or-move', { selector }));
}
