import { describe, expect, it } from 'vitest';
import { seamWalk } from '../../../../shared-core/plan/geometry/seam-walk.ts';
import { vest, withEdgeChanged, withPieceChanged } from '../vest.ts';

const report = (plan = vest(), seamId = 'side') => seamWalk(plan).find((walked) => walked.seamId === seamId)!;

describe('walking the seams of a vest', () => {
  it('the back’s two sides meet the two fronts’ sides', () => {
    expect(report()).toMatchObject({
      sides: 'two',
      firstMm: 860,
      secondMm: 860,
      differenceMm: 0,
      fits: true,
      stitchedMm: 860,
    });
    expect(report().first).toEqual([{ pieceId: 'back', edge: 'side', lengthMm: 430, count: 2 }]);
  });

  it('a front let down by 7 mm at the side no longer fits', () => {
    const longer = withEdgeChanged(vest(), 'front', 'side', (edge) => ({
      ...edge,
      segments: [{ kind: 'line', to: { x: -7, y: 240 } }],
    }));
    expect(report(longer)).toMatchObject({ differenceMm: -14, fits: false, stitchedMm: 874 });
  });

  it('a front let down by half a millimetre in all still fits', () => {
    const longer = withEdgeChanged(vest(), 'front', 'side', (edge) => ({
      ...edge,
      segments: [{ kind: 'line', to: { x: -0.4, y: 240 } }],
    }));
    expect(report(longer).fits).toBe(true);
  });

  it('ease that is meant fits, and its absence does not', () => {
    const eased = (leastMm: number, maxMm: number) => {
      const plan = vest();
      const longer = withEdgeChanged(plan, 'back', 'side', (edge) => ({
        ...edge,
        segments: [{ kind: 'line', to: { x: -6, y: 255 } }],
      }));
      return {
        ...longer,
        seams: longer.seams.map((seam) =>
          seam.id === 'side'
            ? { ...seam, firstSide: [{ pieceId: 'back', edge: 'side' }], ease: { leastMm, maxMm } }
            : seam,
        ),
      };
    };
    expect(report(eased(10, 15))).toMatchObject({ differenceMm: 12, fits: true });
    expect(report(eased(13, 15)).fits).toBe(false);
    expect(report(eased(-15, -10)).fits).toBe(false);
  });

  it('a hem is sewn by itself', () => {
    expect(report(vest(), 'hem')).toMatchObject({
      sides: 'one',
      firstMm: 2 * 255 + 2 * 240,
      secondMm: 0,
      fits: true,
      stitchedMm: 990,
    });
  });

  it('a seam of mirrored backs meets its mirror image', () => {
    const plan = withEdgeChanged(
      withPieceChanged(vest(), 'back', (piece) => ({
        ...piece,
        foldEdge: null,
        cutCount: 2,
        isMirrored: true,
      })),
      'back',
      'centre back',
      (edge) => ({ ...edge, seam: 'centre' }),
    );
    const seams = [...plan.seams, { ...plan.seams[0]!, id: 'centre', label: 'Centre back' }];
    expect(report({ ...plan, seams }, 'centre')).toMatchObject({
      sides: 'mirror',
      firstMm: 600,
      secondMm: 600,
      fits: true,
    });
  });

  it('a seam that no edge is sewn in is none', () => {
    const plan = vest();
    const seams = [...plan.seams, { ...plan.seams[0]!, id: 'yoke', label: 'Yoke' }];
    expect(report({ ...plan, seams }, 'yoke')).toMatchObject({ sides: 'none', stitchedMm: 0 });
  });

  it('three edges without a stated side are parted so that they come out even', () => {
    // A yoke edge as long as both shoulders: 2 x 100 + 2 x 100 meet 1 x 400.
    const plan = vest();
    const yoke = { ...plan.pieces[2]!, id: 'yoke', name: 'Yoke', cutCount: 1, isMirrored: false };
    const edges = yoke.outline.edges.map((edge) =>
      edge.name === 'hem' ? { ...edge, seam: 'shoulder' } : { ...edge, seam: null },
    );
    const start = { x: 0, y: -160 };
    const moved = edges.map((edge, index) =>
      index === edges.length - 1 ? { ...edge, segments: [{ kind: 'line' as const, to: start }] } : edge,
    );
    const widened = { ...plan, pieces: [...plan.pieces, { ...yoke, outline: { start, edges: moved } }] };
    const walked = report(widened, 'shoulder');
    expect(walked).toMatchObject({ firstMm: 400, secondMm: 400, fits: true });
    expect(walked.second.map((edge) => edge.pieceId)).toEqual(['yoke']);
  });
});
