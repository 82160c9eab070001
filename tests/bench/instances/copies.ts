/** Many copies of few small shapes: one block is cut, and the strip is made of blocks. */
import { ringMoved } from '../../../shared-core/geometry/ring.ts';
import type { CutStrip } from './made.ts';

/** The cut of a block, repeated in columns and rows. */
export function copiesCut(block: CutStrip, columns: number, rows: number): CutStrip {
  const places = Array.from({ length: columns * rows }, (_, k) => ({
    x: (k % columns) * block.lengthMm,
    y: Math.floor(k / columns) * block.widthMm,
  }));
  return {
    widthMm: block.widthMm * rows,
    lengthMm: block.lengthMm * columns,
    cut: block.cut.map(([ring]) => places.map(({ x, y }) => ringMoved(ring!, x, y))),
  };
}
