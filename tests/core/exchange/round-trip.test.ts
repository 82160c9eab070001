import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { write as writeDxf } from '../../../shared-core/exchange/dxf/dxf-write.ts';
import { readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import {
  type FoundPattern,
  defaultChoices,
  defaultLimits,
} from '../../../shared-core/exchange/pattern/pattern.ts';
import { write as writeSvg } from '../../../shared-core/exchange/svg/svg-write.ts';
import { ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import type { CoatPlan, Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import {
  cutRing,
  edgeIndexOf,
  edgePoints,
  seamRing,
} from '../../../shared-core/plan/geometry/outline-ring.ts';
import { draftedName, draftedPiece, planOf } from './drafted.ts';
import { bytesOf } from './dxf-text.ts';

/** Curves go out as points within 0.02 mm, come in thinned within 0.1 mm, and their corner may lie 0.02 mm off. */
const lineToleranceMm = 0.145;

const ways: readonly (readonly [string, (plan: CoatPlan) => string, number])[] = [
  ['DXF in mm', (plan) => writeDxf(plan, { unit: 'mm' }), 1],
  ['DXF in inches', (plan) => writeDxf(plan, { unit: 'in' }), 25.4],
  ['SVG', writeSvg, 1],
];

function readBack(text: string, format: string): FoundPattern {
  const { found, problems } = readPattern(bytesOf(text), '', defaultLimits, defaultChoices);
  expect({ format, problems, notes: found?.notes }).toEqual({ format, problems: [], notes: [] });
  return found!;
}

/** Each point of the old edge lies this near to the new one, mm. */
function edgeOffMm(old: Piece, fresh: Pick<Piece, 'outline'>, index: number): number {
  const box = ringBox(seamRing(old.outline, 0.02));
  const chain = edgePoints(fresh.outline, index, 0.01);
  let worst = 0;
  for (const point of edgePoints(old.outline, index, 0.5)) {
    const x = point.x - box.minX;
    const y = point.y - box.minY;
    let best = Infinity;
    for (let i = 1; i < chain.length; i++) {
      const a = chain[i - 1]!;
      const b = chain[i]!;
      const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const share = Math.min(1, Math.max(0, ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / squared));
      best = Math.min(best, Math.hypot(x - a.x - share * (b.x - a.x), y - a.y - share * (b.y - a.y)));
    }
    worst = Math.max(worst, best);
  }
  return worst;
}

describe.each(ways)('a plan that goes out as %s and comes back', (format, write, mmPerUnit) => {
  it('has every name, number, fold, edge, allowance and notch that the file can carry', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(draftedPiece, { minLength: 1, maxLength: 2, selector: ({ name }) => name }),
        draftedName,
        fc.constantFrom('', '14', '2 tall'),
        (pieces, name, size) => {
          const plan = planOf(pieces, name, size);
          const found = readBack(write(plan), format);
          expect([found.styleName, found.sampleSize, found.mmPerUnit]).toEqual([name, size, mmPerUnit]);
          expect(found.pieces.map((piece) => piece.name)).toEqual(plan.pieces.map((piece) => piece.name));
          plan.pieces.forEach((old, at) => {
            const fresh = found.pieces[at]!;
            expect(fresh).toMatchObject({
              size,
              cutCount: old.cutCount,
              isMirrored: old.isMirrored,
              material: 'shell',
              hasSewLine: true,
              hasGrain: true,
            });
            const oldEdges = old.outline.edges;
            expect(fresh.outline.edges.length).toBe(oldEdges.length);
            expect(fresh.foldEdge === null ? -1 : edgeIndexOf(fresh.outline, fresh.foldEdge)).toBe(
              old.foldEdge === null ? -1 : edgeIndexOf(old.outline, old.foldEdge),
            );
            oldEdges.forEach((edge, index) => {
              expect(Math.abs(fresh.outline.edges[index]!.allowanceMm - edge.allowanceMm)).toBeLessThan(0.05);
              expect(edgeOffMm(old, fresh, index)).toBeLessThan(lineToleranceMm);
            });
            expect(fresh.notches.map((notch) => edgeIndexOf(fresh.outline, notch.edge))).toEqual(
              old.notches.map((notch) => edgeIndexOf(old.outline, notch.edge)),
            );
            old.notches.forEach((notch, index) => {
              expect(Math.abs(fresh.notches[index]!.atMm - notch.atMm)).toBeLessThan(0.5);
            });
            // The corners of the cutting line are drawn anew from the allowances, and may end otherwise beside a curve.
            const area = (piece: Pick<Piece, 'outline' | 'foldEdge'>) =>
              ringAreaMm2(cutRing(piece.outline, piece.foldEdge, 0.02));
            const cornersMm2 = oldEdges.reduce((sum, edge) => sum + 6 * edge.allowanceMm ** 2, 100);
            expect(Math.abs(area(fresh) - area(old))).toBeLessThan(cornersMm2);
          });
        },
      ),
      { numRuns: 25, seed: 1889 },
    );
  });
});

describe('a plan that goes out', () => {
  it('twice is the same file', () => {
    fc.assert(
      fc.property(draftedPiece, (piece) => {
        expect(writeDxf(planOf([piece]), { unit: 'mm' })).toBe(writeDxf(planOf([piece]), { unit: 'mm' }));
        expect(writeSvg(planOf([piece]))).toBe(writeSvg(planOf([piece])));
      }),
      { numRuns: 10, seed: 1889 },
    );
  });

  it('as DXF is plain ASCII, two lines to a pair, with blocks of names that readers take', () => {
    const [piece] = fc.sample(draftedPiece, { numRuns: 1, seed: 11 });
    const text = writeDxf(
      planOf([
        { ...piece!, name: 'Ärmel: "oben"\nlinks' },
        { ...piece!, name: 'Ärmel, oben links' },
      ]),
      { unit: 'mm' },
    );
    expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    const lines = text.trimEnd().split('\r\n');
    expect(lines.length % 2).toBe(0);
    const blocks = lines.flatMap((line, index) => (line === 'BLOCK' ? [lines[index + 4]!] : []));
    expect(blocks).toEqual(['A-RMEL-OBEN-LINKS-16', 'A-RMEL-OBEN-LINKS-16_2']);
    expect(blocks.every((name) => /^[A-Z0-9_-]{1,31}$/.test(name))).toBe(true);
    expect(lines).toContain('Piece Name: \\U+00C4rmel: "oben" links');
    expect(readBack(text, 'DXF').pieces[0]?.name).toBe('Ärmel: "oben" links');
  });

  it('as SVG is at its true size on the page', () => {
    const [piece] = fc.sample(draftedPiece, { numRuns: 1, seed: 5 });
    const text = writeSvg(planOf([piece!]));
    const [, width, height, boxWidth, boxHeight] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text) ?? [];
    expect([width, height]).toEqual([boxWidth, boxHeight]);
    const half = { ...piece!.outline, edges: piece!.outline.edges };
    const box = ringBox(cutRing(half, null, 0.02));
    expect(Number(height)).toBeCloseTo(box.maxX - box.minX + 40, 3);
    expect(Number(width)).toBeCloseTo(box.maxY - box.minY + 40, 3);
  });
});
