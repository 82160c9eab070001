import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outsideMm2 } from '../../../../shared-core/geometry/boolean.ts';
import { ringAreaMm2, ringBox } from '../../../../shared-core/geometry/ring.ts';
import type { CoatPlan, QuiltingOrder } from '../../../../shared-core/plan/model/coat-plan.ts';
import { slotById } from '../../../../shared-core/plan/model/coat-plan.ts';
import { toOutline } from '../../../../shared-core/plan/model/quilting-order.ts';
import { coatMass } from '../../../../shared-core/requirement/finished/mass.ts';
import type { ShapesNeed } from '../../../../shared-core/requirement/need.ts';
import { requirement } from '../../../../shared-core/requirement/requirement.ts';
import { stillToCut } from '../../../../shared-core/requirement/cut/still-to-cut.ts';
import { threadNeed } from '../../../../shared-core/requirement/thread/thread.ts';
import {
  trimmedMm2,
  trimmingsOf,
  trimmingsWords,
} from '../../../../shared-core/requirement/cut/trimmings.ts';
import type { Cutting } from '../../../../shared-core/stash/cutting.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { vest } from '../../plan/vest.ts';
import { filled, quiltedCoat } from '../small-coat.ts';

const shell = item('cloth', 'taffeta', { arealMassGPerM2: 50 });
const batting = item('batting', 'fleece', { arealMassGPerM2: 120, loftMm: 4 });
const items = filled({ shell, batting });

function ordered(of: CoatPlan, order: QuiltingOrder): CoatPlan {
  return { ...of, quilting: { ...of.quilting!, order } };
}

function shapesOf(of: CoatPlan, slotId: string): ShapesNeed {
  const need = requirement(of, items).find((each) => each.slotId === slotId);
  if (need?.kind !== 'shapes') throw new Error(`${slotId} is not cut`);
  return need;
}

const rough = (marginMm: number): QuiltingOrder => ({ kind: 'rough', marginMm });

describe('a coat that is rough-cut with 30 mm to spare', () => {
  const coat = ordered(quiltedCoat({ coatCount: 2 }), rough(30));
  it('lays each piece larger by its take-up and then by the spare all round', () => {
    const [back, front] = shapesOf(coat, 'shell').shapes;
    // 700 x 520 opened, and 700 x 240: 2.5 % larger each way.
    expect(back?.areaMm2).toBeCloseTo((717.5 + 60) * (533 + 60), 3);
    expect(front?.areaMm2).toBeCloseTo((717.5 + 60) * (246 + 60), 3);
    expect(ringAreaMm2(back!.keptRing!)).toBeCloseTo(717.5 * 533, 6);
  });
  it('trims off what lies between the two, weighed by the cloth', () => {
    const need = shapesOf(coat, 'shell');
    const areaMm2 = 2 * (777.5 * 593 - 717.5 * 533) + 4 * (777.5 * 306 - 717.5 * 246);
    const trimmings = trimmingsOf(need, shell)!;
    expect(trimmings.areaMm2).toBeCloseTo(areaMm2, 2);
    expect(trimmings.massG).toBeCloseTo((areaMm2 / 1e6) * 50, 6);
    expect(trimmings.laidRatio).toBeCloseTo(areaMm2 / need.areaMm2, 9);
    expect(trimmingsWords(trimmings, 'metric')).toBe('0.40 m², 20.1 g');
    expect(trimmingsWords({ ...trimmings, massG: null }, 'imperial')).toBe('0.48 yd²');
    expect(trimmingsOf(need, undefined)?.massG).toBeNull();
  });
  it('weighs no more than one that is cut to the outline: trimmings do not stay in it', () => {
    const massOf = (of: CoatPlan) =>
      coatMass(of, items, requirement(of, items)).lines.map(({ slotId, massG }) => [slotId, massG]);
    const outlined = ordered(coat, toOutline);
    expect(massOf(coat).slice(0, 2)).toEqual(
      massOf(outlined)
        .slice(0, 2)
        .map(([id, g]) => [id, expect.closeTo(g as number, 6)]),
    );
    expect(shapesOf(coat, 'batting').areaMm2).toBeGreaterThan(shapesOf(outlined, 'batting').areaMm2 * 1.1);
  });
  it('is sewn over its spare too', () => {
    const metresOf = (of: CoatPlan) =>
      threadNeed(of, slotById(of, 'thread'), items).parts.find(({ what }) =>
        what.startsWith('quilting of back'),
      )!.amount;
    // Six lines as before, each 60 mm longer; nobody sews one in the spare beyond hem and neck.
    expect(metresOf(coat) / metresOf(ordered(coat, toOutline))).toBeCloseTo(580 / 520, 6);
  });
  it('says so among how the figure was got', () => {
    expect(shapesOf(coat, 'shell').basis.some(({ how }) => how.includes('{length 30} to spare'))).toBe(true);
  });
});

describe('whatever is chosen', () => {
  const margin = fc.integer({ min: 1, max: 60 });
  it('what is trimmed is what is laid less what is kept, and what is kept is what a cut to the outline lays', () => {
    fc.assert(
      fc.property(margin, margin, fc.constantFrom('across', 'along', null), (plan, own, quilted) => {
        const base = {
          ...vest(),
          slots: vest().slots.map((each) => ({ ...each, isQuilted: each.id !== 'lining' })),
        };
        const coat = ordered(
          {
            ...base,
            slots: base.slots.map((each) =>
              each.id === 'batting' ? { ...each, quiltingOrder: rough(own) } : each,
            ),
            pieces: base.pieces.map((each) => (each.id === 'front' ? { ...each, quilted } : each)),
          },
          rough(plan),
        );
        const outlined = {
          ...ordered(coat, toOutline),
          slots: coat.slots.map(({ quiltingOrder: _, ...each }) => each),
        };
        for (const slotId of ['shell', 'batting', 'lining']) {
          const laid = shapesOf(coat, slotId);
          const kept = shapesOf(outlined, slotId);
          expect(trimmedMm2(laid.shapes)).toBeCloseTo(laid.areaMm2 - kept.areaMm2, 3);
          expect(trimmedMm2(kept.shapes)).toBe(0);
          laid.shapes.forEach((shape, index) => {
            expect(outsideMm2(kept.shapes[index]!.ring, shape.ring)).toBe(0);
          });
        }
        expect(trimmedMm2(shapesOf(coat, 'lining').shapes)).toBe(0);
        expect(trimmedMm2(shapesOf(coat, 'shell').shapes)).toBeGreaterThan(0);
      }),
      { seed: 2611, numRuns: 20 },
    );
  });
  it('more to spare is more to trim, and a longer and wider piece', () => {
    fc.assert(
      fc.property(margin, margin, (a, b) => {
        const of = (marginMm: number) => shapesOf(ordered(quiltedCoat(), rough(marginMm)), 'shell');
        const [less, more] = [of(Math.min(a, b)), of(Math.max(a, b))];
        expect(trimmedMm2(more.shapes)).toBeGreaterThanOrEqual(trimmedMm2(less.shapes));
        const box = (need: ShapesNeed) => ringBox(need.shapes[0]!.ring);
        expect(box(more).maxX - box(more).minX).toBeGreaterThanOrEqual(box(less).maxX - box(less).minX);
      }),
      { seed: 8, numRuns: 20 },
    );
  });
});

describe('a coat that was rough-cut and then grew', () => {
  const cutBefore = (of: CoatPlan): Cutting => ({
    id: 'one',
    planId: of.id,
    revision: 1,
    at: '2026-11-25T10:00:00.000Z',
    coats: [],
    note: '',
    undoes: null,
    undoneBy: null,
    movements: [],
    slots: [
      {
        slotId: 'shell',
        slotName: 'shell',
        kind: 'cloth',
        lines: [],
        met: {
          kind: 'shapes',
          shapes: shapesOf(of, 'shell').shapes.map((shape) => ({ ...shape, ring: Array.from(shape.ring) })),
        },
      },
    ],
  });
  /** Its hem lowered. */
  const longer = (of: CoatPlan, byMm: number): CoatPlan => ({
    ...of,
    pieces: of.pieces.map((piece) => ({
      ...piece,
      outline: {
        start: { ...piece.outline.start, x: -byMm },
        edges: piece.outline.edges.map((edge) => ({
          ...edge,
          segments: edge.segments.map((segment) => ({
            ...segment,
            to: { ...segment.to, x: segment.to.x === 0 ? -byMm : segment.to.x },
          })),
        })),
      },
    })),
  });
  const left = (of: CoatPlan, cut: CoatPlan) => {
    const [need] = stillToCut(of, requirement(of, items), [cutBefore(cut)]);
    return need?.kind === 'shapes' ? need.shapes.map(({ name }) => name) : [];
  };
  it('serves while it has grown no further than into its spare', () => {
    const coat = ordered(quiltedCoat(), rough(30));
    expect(left(longer(coat, 20), coat)).toEqual([]);
    expect(left(longer(coat, 40), coat)).toEqual(['back', 'front']);
  });
  it('would not have served cut to the outline', () => {
    const coat = ordered(quiltedCoat(), toOutline);
    expect(left(longer(coat, 20), coat)).toEqual(['back', 'front']);
  });
  it('a lining without lines is none of it', () => {
    const cutFrom = [{ slotId: 'lining', plyCount: 1 }];
    const coat = ordered(
      quiltedCoat({
        slots: [...quiltedCoat().slots, slot('lining', 'cloth')],
        pieces: quiltedCoat().pieces.map((piece) => ({ ...piece, cutFrom })),
      }),
      rough(30),
    );
    expect(trimmingsOf(shapesOf(coat, 'lining'), shell)).toBeNull();
  });
});
