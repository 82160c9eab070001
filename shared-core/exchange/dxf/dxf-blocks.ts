/** Blocks of a DXF put in where they are inserted, within the limits on their depth and number. */
import { say } from '../../wording/say.ts';
import type { Point } from '../../geometry/ring.ts';
import { givenPointCount, type Matrix, movedPath, movedPoint, product, unmoved } from '../pattern/drawn.ts';
import type { Block, DxfDrawing } from './dxf-entities.ts';
import { type Entity, faceDown, type Insert } from './dxf-entity.ts';
import type { ReadLimits } from '../pattern/pattern.ts';
import { BeyondLimit, openMeter, type ReadMeter } from '../read-meter.ts';

export interface InsertedBlock {
  readonly name: string;
  readonly line: number;
  readonly entities: readonly Entity[];
}

/** Each block as it first stands in the drawing, scaled and turned as there; as it is where it stands nowhere. Parts of other blocks are none. */
export function insertedBlocks(drawing: DxfDrawing, limits: ReadLimits): InsertedBlock[] {
  const expand = expander(drawing, limits);
  const parts = new Set(
    drawing.blocks.flatMap(({ entities }) =>
      entities.flatMap((entity) => (entity.kind === 'insert' ? [entity.block] : [])),
    ),
  );
  const inserts = new Map<string, Insert>();
  for (const entity of drawing.entities)
    if (entity.kind === 'insert' && !inserts.has(entity.block)) inserts.set(entity.block, entity);
  return drawing.blocks.flatMap((block) => {
    if (block.name.startsWith('*')) return [];
    const insert = inserts.get(block.name);
    if (!insert && parts.has(block.name)) return [];
    const matrix = insert ? insertMatrix({ ...insert, at: { x: 0, y: 0 } }, { x: 0, y: 0 }) : unmoved;
    return [{ name: block.name, line: block.line, entities: expand(block.entities, matrix, 1) }];
  });
}

/** Everything that stands in the drawing, wherever it was drawn. */
export function flattened(drawing: DxfDrawing, limits: ReadLimits): readonly Entity[] {
  return expander(drawing, limits)(drawing.entities, unmoved, 0);
}

type Expand = (entities: readonly Entity[], matrix: Matrix, depth: number) => readonly Entity[];

/** Puts blocks in; every insert and everything in it counts each time, in all that one expander puts in. */
function expander(drawing: DxfDrawing, limits: ReadLimits): Expand {
  const meter = openMeter(limits);
  const blocks = new Map<string, Block>();
  for (const block of drawing.blocks) if (!blocks.has(block.name)) blocks.set(block.name, block);
  return (entities, matrix, depth) => {
    const all: Entity[] = [];
    expandInto(all, entities, matrix, depth, { blocks, limits, meter });
    return all;
  };
}

interface Sources {
  readonly blocks: ReadonlyMap<string, Block>;
  readonly limits: ReadLimits;
  readonly meter: ReadMeter;
}

function expandInto(
  all: Entity[],
  entities: readonly Entity[],
  matrix: Matrix,
  depth: number,
  sources: Sources,
): void {
  const { blocks, limits, meter } = sources;
  for (const entity of entities) {
    const where = say('dxf-blocks.line', { line: entity.line });
    meter.things(1, say('dxf-blocks.what-is-repeated-by', { where: where.toLowerCase() }));
    switch (entity.kind) {
      case 'path':
        meter.points(givenPointCount(entity.path), where);
        all.push({ ...entity, path: movedPath(matrix, entity.path) });
        break;
      case 'point':
        all.push({ ...entity, at: movedPoint(matrix, entity.at) });
        break;
      case 'text':
        all.push(entity);
        break;
      case 'insert': {
        const block = blocks.get(entity.block);
        if (!block) break;
        if (depth >= limits.depthCount)
          throw new BeyondLimit(
            where,
            say('dxf-blocks.puts-blocks-within-blocks', { depthCount: limits.depthCount }),
            say('dxf-blocks.save-the-pieces-without-blocks'),
          );
        for (const place of insertPlaces(entity)) {
          meter.things(1, say('dxf-blocks.what-is-repeated-by', { where: where.toLowerCase() }));
          const inner = product(matrix, insertMatrix({ ...entity, at: place }, block.base));
          expandInto(all, block.entities, inner, depth + 1, sources);
        }
        break;
      }
      default:
        entity satisfies never;
    }
  }
}

/** Where the copies of an insert stand: rows and columns run along its own turned axes. */
function* insertPlaces({
  at,
  turnDeg,
  columnCount,
  rowCount,
  columnStep,
  rowStep,
}: Insert): Generator<Point> {
  const { cos, sin } = turnOf(turnDeg);
  for (let row = 0; row < rowCount; row++) {
    for (let column = 0; column < columnCount; column++) {
      const x = column * columnStep;
      const y = row * rowStep;
      yield { x: at.x + x * cos - y * sin, y: at.y + x * sin + y * cos };
    }
  }
}

function turnOf(turnDeg: number): { readonly cos: number; readonly sin: number } {
  return { cos: Math.cos((turnDeg * Math.PI) / 180), sin: Math.sin((turnDeg * Math.PI) / 180) };
}

function insertMatrix(
  insert: Pick<Insert, 'at' | 'scaleX' | 'scaleY' | 'turnDeg' | 'isFaceDown'>,
  base: Point,
): Matrix {
  const { cos, sin } = turnOf(insert.turnDeg);
  const placed: Matrix = [
    cos * insert.scaleX,
    sin * insert.scaleX,
    -sin * insert.scaleY,
    cos * insert.scaleY,
    insert.at.x,
    insert.at.y,
  ];
  return product(insert.isFaceDown ? product(faceDown, placed) : placed, [1, 0, 0, 1, -base.x, -base.y]);
}
