/** How the seams of a coat that is written as code are put down: in short, with the usual filled in. */
import type { EdgePlace, Seam } from '../plan/model/outline.ts';

const assembly: Omit<Seam, 'id' | 'label'> = {
  stitch: '301',
  threadSlotId: 'sewing-thread',
  overcast: null,
  topstitchRowCount: 0,
};

/** "front hem" of piece front-facing is written 'front-facing: front hem'. */
export function places(...texts: readonly string[]): EdgePlace[] {
  return texts.map((text) => {
    const [pieceId, edge] = text.split(': ');
    return { pieceId: pieceId!, edge: edge! };
  });
}

/** A seam named by its id, assembled with a lockstitch unless said otherwise. */
export function seam(id: string, more: Partial<Seam> = {}): Seam {
  return { ...assembly, id, label: id.charAt(0).toUpperCase() + id.slice(1), ...more };
}
