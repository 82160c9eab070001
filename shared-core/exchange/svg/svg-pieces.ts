/** Shapes of an SVG as drawn pieces: as they were written here, or every closed outline of any other drawing. */
import { say } from '../../wording/say.ts';
import { type Point, ringBox } from '../../geometry/ring.ts';
import type { Problem } from '../../measure/problem.ts';
import { type DrawnPath, type DrawnPiece, distance, pathEnd } from '../pattern/drawn.ts';
import { type DrawnPieces, innerNote, maxLooseLines } from '../dxf/dxf-pieces.ts';
import { joinedPaths } from '../pattern/joined-paths.ts';
import { outerRings } from '../pattern/outer-rings.ts';
import type { ReadLimits } from '../pattern/pattern.ts';
import type { ReadMeter } from '../read-meter.ts';
import type { SvgNode } from './svg-tree.ts';
import { pieceAttribute, type Shape } from './svg-walk.ts';

/** The groups that hold pieces; shapes outside of them are told of. */
export function writtenPieces(shapes: readonly Shape[], groups: readonly SvgNode[]): DrawnPieces {
  const problems: Problem[] = [];
  const byGroup = Map.groupBy(shapes, ({ group }) => group);
  const pieces = groups.flatMap((group, index): DrawnPiece[] => {
    const own = byGroup.get(group) ?? [];
    const on = (role: string) => own.filter((shape) => shape.role === role).map(({ path }) => path);
    const name = (group.attributes[pieceAttribute] ?? '').slice(0, 120);
    const where = say('svg-pieces.the-piece-line', { name, line: group.line });
    const [boundary, ...others] = on('cut');
    if (!boundary?.isClosed) {
      const what = boundary
        ? say('svg-pieces.has-an-open-cutting-line')
        : say('svg-pieces.has-no-cutting-line');
      problems.push({ where, what, fix: say('svg-pieces.it-is-left-out-save-it') });
      return [];
    }
    if (others.length > 0)
      problems.push({
        where,
        what: say('svg-pieces.has-several-cutting-lines-the-first'),
        fix: say('svg-pieces.take-the-others-out'),
      });
    const ends = (path: DrawnPath | undefined): readonly [Point, Point] | null =>
      path && distance(path.start, pathEnd(path)) > 0 ? [path.start, pathEnd(path)] : null;
    const [edges] = on('edges');
    const texts = new Map<string, string>([['piece name', name]]);
    for (const key of ['size', 'quantity', 'material']) texts.set(key, group.attributes[`data-${key}`] ?? '');
    return [
      {
        key: say('found-pattern.piece', { number: index + 1 }),
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
  const outside = byGroup.get(null)?.length ?? 0;
  const notes =
    outside === 0 || pieces.length === 0
      ? []
      : [say('svg-pieces.lines-outside-of-the-pieces-not', { outside })];
  return { pieces, problems, notes };
}

/** Every closed outline that lies in no other. */
export function freePieces(shapes: readonly Shape[], limits: ReadLimits, meter: ReadMeter): DrawnPieces {
  const problems: Problem[] = [];
  if (shapes.length === 0) return { pieces: [], problems, notes: [] };
  const looseCount = shapes.filter(({ path }) => !path.isClosed).length;
  const names = new Map(shapes.map(({ path, name }) => [path.start, name]));
  if (looseCount > maxLooseLines)
    problems.push({
      where: say('common.the-drawing'),
      what: say('svg-pieces.has-more-than-loose-lines', { maxLooseLines }),
      fix: say('svg-pieces.join-its-outlines-to-closed-paths'),
    });
  const used = looseCount > maxLooseLines ? shapes.filter(({ path }) => path.isClosed) : shapes;
  const box = ringBox(Float64Array.from(used.flatMap(({ path }) => [path.start.x, path.start.y])));
  const reach = Math.max(box.maxX - box.minX, box.maxY - box.minY, 1) * 1e-4;
  const joined = joinedPaths(
    used.map(({ path }) => path),
    reach,
    meter,
  );
  for (const path of joined.filter((each) => !each.isClosed && each.segments.length > 2))
    problems.push({
      where: say('svg-pieces.the-line-on-line', { line: path.line }),
      what: say('svg-pieces.is-open-so-it-is-no'),
      fix: say('svg-pieces.close-it-if-it-is-an'),
    });
  const closed = joined.filter((path) => path.isClosed);
  const outer = outerRings(closed, Math.min(0.5, reach * 10), limits.pieceCount, meter);
  const taken = new Set<string>();
  const pieces = outer.map(({ path }, index) => {
    const given = names.get(path.start) || say('svg-pieces.piece', { index: index + 1 });
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
  return { pieces, problems, notes: innerNote(closed.length - outer.length) };
}
