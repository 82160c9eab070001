import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Outline } from '../../../shared-core/plan/model/outline.ts';
import { piece } from '../../fixtures/small-workshop.ts';

/** A piece from corners, with the seam of each side by its place. */
export function drawn(
  id: string,
  corners: readonly (readonly [number, number])[],
  seams: readonly (string | null)[],
  more: Partial<Piece> = {},
) {
  const outline: Outline = {
    start: { x: corners[0]![0], y: corners[0]![1] },
    edges: corners.map((_, index) => {
      const [x, y] = corners[(index + 1) % corners.length]!;
      return {
        name: `edge ${index}`,
        segments: [{ kind: 'line', to: { x, y } }],
        allowanceMm: 0,
        seam: seams[index] ?? null,
      };
    }),
  };
  return piece(id, outline, { quilted: 'across', ...more });
}

/** A pair of fronts and backs whose side seams lie on y = the given heights at hem and underarm. */
export const body = (backHemY: number, frontHemY: number, frontDownMm = 0) => [
  drawn(
    'back',
    [
      [0, 0],
      [700, 0],
      [700, 240],
      [0, backHemY],
    ],
    [null, null, 'side seam', null],
    { cutCount: 2, isMirrored: true },
  ),
  drawn(
    'front',
    [
      [frontDownMm, 0],
      [700 + frontDownMm, 0],
      [700 + frontDownMm, 260],
      [frontDownMm, frontHemY],
    ],
    [null, null, 'side seam', null],
    { cutCount: 2, isMirrored: true },
  ),
];
