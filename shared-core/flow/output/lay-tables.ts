/** The tables of a cutting sheet: where each piece of a length lies, and which pieces these are. */
import { say } from '../../wording/say.ts';
import { type Ring, ringBox } from '../../geometry/ring.ts';
import type { Placement } from '../../lay/job.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import { showQuantity } from '../../measure/show.ts';
import type { PaperTable } from '../../paper/paper-table.ts';
import { type CoatPlan, type Piece, slotById } from '../../plan/model/coat-plan.ts';
import { quiltingOrder } from '../../plan/model/quilting-order.ts';
import { orderWords } from '../../plan/model/quilting-order-words.ts';
import { plansBySize } from '../../plan/model/sizes.ts';
import type { ShapeToCut } from '../../requirement/need.ts';

/** One copy of a shape on its length. */
export interface Laid {
  readonly placement: Placement;
  readonly shape: ShapeToCut;
  readonly ring: Ring;
  /** Of this shape among all that the slot cuts, from 1. */
  readonly copy: number;
  readonly copyCount: number;
}

/** The piece that a shape is cut for, in the plan of its size; null for a panel. */
export function pieceOf(
  plan: CoatPlan,
  { pieceId, size }: ShapeToCut,
): { plan: CoatPlan; piece: Piece } | null {
  const own = plansBySize(plan).find((each) => each.size === size) ?? plan;
  const piece = own.pieces.find((candidate) => candidate.id === pieceId);
  return piece ? { plan: own, piece } : null;
}

/** In the order given, numbered from 1. lowMm: from the lower edge of the cloth to where y is 0. */
export function placementTable(
  plan: CoatPlan,
  laid: readonly Laid[],
  { lowMm, edge, system }: { lowMm: number; edge: string; system: MeasureSystem },
): PaperTable {
  const distance = (mm: number) =>
    showQuantity('length', Math.max(0, system === 'metric' ? Math.round(mm) : mm), {
      system,
      unit: { metric: 'cm', imperial: 'in' },
      ...(system === 'metric' && { digits: 1 }),
    });
  const hasSizes = (plan.sizes ?? []).length > 0;
  return {
    title: '',
    lead: '',
    sectionHead: '',
    isDense: true,
    columns: [
      { head: say('lay-tables.no'), kind: 'number' },
      { head: say('common.piece'), kind: 'text' },
      ...(hasSizes ? [{ head: say('common.size'), kind: 'text' } as const] : []),
      { head: say('lay-tables.copy'), kind: 'text' },
      { head: say('common.from-the-start'), kind: 'number' },
      { head: say('lay-tables.from-the', { edge }), kind: 'number' },
      { head: say('lay-tables.long'), kind: 'number' },
      { head: say('lay-tables.wide'), kind: 'number' },
      { head: say('lay-tables.turned'), kind: 'text' },
    ],
    sections: [
      {
        title: say('lay-tables.where-the-pieces-lie'),
        rows: laid.map(({ shape, ring, placement, copy, copyCount }, index) => {
          const box = ringBox(ring);
          return [
            String(index + 1),
            shape.name,
            ...(hasSizes ? [shape.size] : []),
            say('lay-tables.of', { copy, copyCount }),
            distance(box.minX),
            distance(box.minY + lowMm),
            distance(box.maxX - box.minX),
            distance(box.maxY - box.minY),
            `${placement.turnDeg}°${placement.mirrored ? say('common.mirrored') : ''}`,
          ];
        }),
      },
    ],
    notes: [say('lay-tables.distances-go-to-the-red-corner')],
  };
}

/** One row for each shape. */
export function pieceTable(
  plan: CoatPlan,
  slotId: string,
  laid: readonly Laid[],
  system: MeasureSystem,
): PaperTable {
  const hasSizes = (plan.sizes ?? []).length > 0;
  const byShape = Map.groupBy(laid, ({ shape }) => shape.shapeId);
  return {
    title: '',
    lead: '',
    sectionHead: '',
    isDense: true,
    columns: [
      { head: say('common.piece'), kind: 'text' },
      ...(hasSizes ? [{ head: say('common.size'), kind: 'text' } as const] : []),
      { head: say('lay-tables.here'), kind: 'number' },
      { head: say('lay-tables.of-them-mirrored'), kind: 'number' },
      { head: say('lay-tables.how-it-is-quilted'), kind: 'text' },
    ],
    sections: [
      {
        title: say('lay-tables.pieces-on-this-length'),
        rows: [...byShape.values()].map((copies) => {
          const { shape } = copies[0]!;
          const mirrored = copies.filter(({ placement }) => placement.mirrored).length;
          return [
            shape.name,
            ...(hasSizes ? [shape.size] : []),
            String(copies.length),
            mirrored === 0 ? '' : String(mirrored),
            quiltedWords(plan, slotId, shape, system),
          ];
        }),
      },
    ],
    notes: [],
  };
}

function quiltedWords(plan: CoatPlan, slotId: string, shape: ShapeToCut, system: MeasureSystem): string {
  if (shape.carries) {
    const pieces = shape.carries.map(
      ({ shape: { name }, count, mirroredCount }) => `${count + mirroredCount} x ${name}`,
    );
    return say('lay-tables.quilted-as-a-panel-then-cut', { pieces: pieces.join(', ') });
  }
  const own = pieceOf(plan, shape);
  const order = own && quiltingOrder(own.plan, own.piece, slotById(plan, slotId));
  if (!order) return say('lay-tables.not-quilted');
  return sentenceCase(orderWords(order, (mm) => showQuantity('length', mm, { system })));
}
