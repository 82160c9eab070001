/** Blocks of a DXF put in where they are inserted, within the limits on their depth and number. */
import type { Point } from '../geometry/ring.ts';
import type { Problem } from '../measure/problem.ts';
import { type Matrix, movedPath, movedPoint, product, unmoved } from './drawn.ts';
import type { DxfDrawing, Entity } from './dxf-entities.ts';
import type { ReadLimits } from './pattern.ts';

export interface InsertedBlock {
  readonly name: string;
  readonly line: number;
  readonly entities: readonly Entity[];
}

/** Each block as it first stands in the drawing, scaled and turned as there; as it is where it stands nowhere. Parts of other blocks are none. */
export function insertedBlocks(drawing: DxfDrawing, limits: ReadLimits): InsertedBlock[] | Problem {
  const found: InsertedBlock[] = [];
  let entityCount = 0;
  const parts = new Set(
    [...drawing.blocks.values()].flatMap(({ entities }) =>
      entities.flatMap((entity) => (entity.kind === 'insert' ? [entity.block] : [])),
    ),
  );
  for (const block of drawing.blocks.values()) {
    if (block.name.startsWith('*')) continue;
    const insert = drawing.entities.find((entity) => entity.kind === 'insert' && entity.block === block.name);
    if (!insert && parts.has(block.name)) continue;
    const matrix = insert?.kind === 'insert' ? { ...insert, at: { x: 0, y: 0 } } : null;
    const entities = expanded(
      block.entities,
      matrix ? insertMatrix(matrix, { x: 0, y: 0 }) : unmoved,
      drawing,
      limits,
      1,
      entityCount,
    );
    if ('mend' in entities) return entities;
    entityCount += entities.length;
    found.push({ name: block.name, line: block.line, entities });
  }
  return found;
}

export function flattened(drawing: DxfDrawing, limits: ReadLimits): readonly Entity[] | Problem {
  return expanded(drawing.entities, unmoved, drawing, limits, 0, 0);
}

/** Blocks put in where they are inserted, to the depth and number that the limits allow. */
function expanded(
  entities: readonly Entity[],
  matrix: Matrix,
  drawing: DxfDrawing,
  limits: ReadLimits,
  depth: number,
  before: number,
): readonly Entity[] | Problem {
  const all: Entity[] = [];
  for (const entity of entities) {
    if (before + all.length >= limits.entityCount)
      return {
        where: `Line ${entity.line}`,
        what: `repeats blocks beyond the limit of ${limits.entityCount} drawn things`,
        mend: 'Save the pieces without repeats.',
      };
    switch (entity.kind) {
      case 'path':
        all.push({ ...entity, path: movedPath(matrix, entity.path) });
        break;
      case 'point':
        all.push({ ...entity, at: movedPoint(matrix, entity.at) });
        break;
      case 'text':
        all.push(entity);
        break;
      case 'insert': {
        const block = drawing.blocks.get(entity.block);
        if (!block) break;
        if (depth >= limits.depthCount)
          return {
            where: `Line ${entity.line}`,
            what: `puts blocks within blocks more than ${limits.depthCount} deep`,
            mend: 'Save the pieces without blocks inside each other.',
          };
        const inner = expanded(
          block.entities,
          product(matrix, insertMatrix(entity, block.base)),
          drawing,
          limits,
          depth + 1,
          before + all.length,
        );
        if ('mend' in inner) return inner;
        for (const each of inner) all.push(each);
        break;
      }
      default:
        entity satisfies never;
    }
  }
  return all;
}

function insertMatrix(
  insert: { readonly at: Point; readonly scaleX: number; readonly scaleY: number; readonly turnDeg: number },
  base: Point,
): Matrix {
  const cos = Math.cos((insert.turnDeg * Math.PI) / 180);
  const sin = Math.sin((insert.turnDeg * Math.PI) / 180);
  const linear: Matrix = [
    cos * insert.scaleX,
    sin * insert.scaleX,
    -sin * insert.scaleY,
    cos * insert.scaleY,
    insert.at.x,
    insert.at.y,
  ];
  return product(linear, [1, 0, 0, 1, -base.x, -base.y]);
}
