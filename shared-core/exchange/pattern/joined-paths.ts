/** Lines that were drawn one by one, chained to outlines where their ends meet. */
import { say } from '../../wording/say.ts';
import type { Point } from '../../geometry/ring.ts';
import { closedWithin, type DrawnPath, distance, pathEnd, reversedPath } from './drawn.ts';
import type { ReadMeter } from '../read-meter.ts';

/**
 * Open paths chained where their ends lie within `reach`, whichever way each was drawn; closed ones as they are.
 * Takes the nearest end each time. Ends are looked up by a grid, so the work grows with the paths and with how many
 * ends lie in one spot.
 */
export function joinedPaths(paths: readonly DrawnPath[], reach: number, meter: ReadMeter): DrawnPath[] {
  const done: DrawnPath[] = [];
  const open: DrawnPath[] = [];
  for (const path of paths) {
    const closed = closedWithin(path, reach);
    (closed.isClosed ? done : open).push(closed);
  }
  const ends = endGrid(open, reach, meter);
  /** The path with all that hangs on its end. */
  const followed = (path: DrawnPath): DrawnPath => {
    const segments = [...path.segments];
    let end = pathEnd(path);
    for (let next = ends.takeNearest(end); next; next = ends.takeNearest(end)) {
      for (const segment of next.segments) segments.push(segment);
      end = pathEnd(next);
    }
    return { ...path, segments };
  };
  for (const [index, path] of open.entries()) {
    if (!ends.take(index)) continue;
    const chain = closedWithin(followed(path), reach);
    // What hangs on its start is found from the other side.
    const longer = chain.isClosed ? chain : closedWithin(followed(reversedPath(chain)), reach);
    done.push(longer.segments.length > chain.segments.length ? longer : chain);
  }
  return done;
}

interface EndGrid {
  /** Takes a path out; false where it is out already. */
  take(index: number): boolean;
  /** Takes out the path with the end nearest to a point within reach, running on from there; null where there is none. */
  takeNearest(point: Point): DrawnPath | null;
}

interface End {
  readonly index: number;
  readonly at: Point;
  readonly isLast: boolean;
}

function endGrid(paths: readonly DrawnPath[], reach: number, meter: ReadMeter): EndGrid {
  const isTaken = new Uint8Array(paths.length);
  /** By column, then by row. */
  const cells = new Map<number, Map<number, End[]>>();
  const place = (value: number) => (reach > 0 ? Math.floor(value / reach) : value);
  const add = (end: End) => {
    const [x, y] = [place(end.at.x), place(end.at.y)];
    const column = cells.get(x) ?? new Map<number, End[]>();
    cells.set(x, column);
    const cell = column.get(y);
    if (cell) cell.push(end);
    else column.set(y, [end]);
  };
  paths.forEach((path, index) => {
    add({ index, at: path.start, isLast: false });
    add({ index, at: pathEnd(path), isLast: true });
  });
  const steps = reach > 0 ? [-1, 0, 1] : [0];
  return {
    take(index) {
      const isFree = isTaken[index] === 0;
      isTaken[index] = 1;
      return isFree;
    },
    takeNearest(point) {
      let best: End | null = null;
      let bestDistance = reach;
      for (const dx of steps) {
        const column = cells.get(place(point.x) + dx);
        for (const dy of column ? steps : []) {
          const cell = column?.get(place(point.y) + dy);
          if (!cell) continue;
          meter.steps(2 * cell.length, say('joined-paths.line', { line: paths[cell[0]!.index]!.line }));
          for (const end of cell) {
            if (isTaken[end.index] === 1) continue;
            const far = distance(point, end.at);
            // Of two as near, the one that was drawn first.
            if (far > bestDistance || (best !== null && far === bestDistance)) continue;
            best = end;
            bestDistance = far;
          }
        }
      }
      if (!best) return null;
      isTaken[best.index] = 1;
      const path = paths[best.index]!;
      return best.isLast ? reversedPath(path) : path;
    },
  };
}
