/** Reads apparel patterns by the open DXF standard, and closed lines of any other DXF as plain pieces. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import { isWithin } from '../pattern/drawn.ts';
import { flattened, insertedBlocks } from './dxf-blocks.ts';
import { type DxfDrawing, readDrawing } from './dxf-entities.ts';
import type { Entity } from './dxf-entity.ts';
import { layerNumber, layers, unkept } from './dxf-layers.ts';
import { keyedTexts, loosePieces, onLayer, standardPieces } from './dxf-pieces.ts';
import { bytesProblem, fileText } from '../file-text.ts';
import { settledPieces, unitOfFile } from '../pattern/found-pattern.ts';
import {
  furthestMm,
  nothingFound,
  type ReadChoices,
  type ReadLimits,
  type ReadPattern,
} from '../pattern/pattern.ts';
import { openMeter } from '../read-meter.ts';

/** Throws BeyondLimit where the file goes beyond a limit. */
export function read(bytes: Uint8Array, limits: ReadLimits, choices: ReadChoices): ReadPattern {
  const refusal = bytesProblem(bytes, limits);
  if (refusal) return nothingFound(refusal);
  const meter = openMeter(limits);
  const outcome = readDrawing(fileText(bytes), limits, meter);
  if (!outcome.ok) return nothingFound(outcome.problem);
  const { drawing } = outcome;
  const all = flattened(drawing, limits);
  const style = keyedTexts(all);
  const statedMmPerUnit = statedUnit(style.get('units'), drawing);
  const far = farThings(unitOfFile(statedMmPerUnit, choices));
  const flat = far.without(all);
  const blocks = insertedBlocks(drawing, limits)
    .map((block) => ({ ...block, entities: far.without(block.entities) }))
    .filter(({ entities }) => onLayer(entities, layers.boundary).length > 0);
  const { pieces, problems, notes } =
    blocks.length > 0 ? standardPieces(blocks, meter) : loosePieces(flat, limits, meter);
  const before = [...drawing.problems, ...far.problems(), ...problems];
  return settledPieces(
    pieces,
    before,
    { limits, choices, meter },
    {
      format: 'DXF',
      styleName: style.get('style name') ?? '',
      sampleSize: style.get('sample size') ?? '',
      statedMmPerUnit,
      notes: [...unreadNotes(drawing), ...notes, ...unkeptNotes(blocks.flatMap(({ entities }) => entities))],
    },
  );
}

/** Leaves out what lies so far off that a unit or a number must be wrong, and says so. */
function farThings(mmPerUnit: number) {
  const reach = furthestMm / mmPerUnit;
  const lines = new Set<number>();
  return {
    without: (entities: readonly Entity[]): readonly Entity[] =>
      entities.filter((entity) => {
        const isNear =
          entity.kind === 'path'
            ? isWithin(entity.path, reach)
            : entity.kind !== 'point' || Math.max(Math.abs(entity.at.x), Math.abs(entity.at.y)) <= reach;
        if (!isNear) lines.add(entity.line);
        return isNear;
      }),
    problems: (): Problem[] =>
      [...lines].map((line) => ({
        where: say('dxf.line', { line }),
        what: say('dxf.draws-further-than-1-km-from'),
        fix: say('dxf.it-is-left-out-check-the'),
      })),
  };
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
  switch (drawing.unitCode) {
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
  return [...drawing.unread].map(([kind, { count, line }]) =>
    say('dxf.not-read-the-first-on-line', { count, kind, line }),
  );
}

function unkeptNotes(entities: readonly Entity[]): string[] {
  return [...unkept].flatMap(([layer, called]) => {
    const count = entities.filter(
      (entity) => entity.kind !== 'text' && layerNumber(entity.layer) === layer,
    ).length;
    return count === 0 ? [] : [say('dxf.not-kept-a-piece-has-no', { count, things: say(called, { count }) })];
  });
}
