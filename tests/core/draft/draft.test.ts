import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blockOf } from '../../../shared-core/draft/block.ts';
import { draftCoat, type DraftedCoat, draftStyle } from '../../../shared-core/draft/draft.ts';
import type { DraftInput } from '../../../shared-core/draft/draft-input.ts';
import { ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import { type CoatPlan, pieceById } from '../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../shared-core/plan/validation/plan-problems.ts';
import {
  edgeIndexOf,
  edgeLengthMm,
  edgePoints,
  seamRing,
} from '../../../shared-core/plan/geometry/outline-ring.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { body, coat, coats } from './bodies.ts';

function drafted(input: DraftInput): DraftedCoat {
  const outcome = draftCoat(input);
  if (!outcome.ok) throw new Error(JSON.stringify({ problems: outcome.problems, input }));
  return outcome.value;
}

function areaMm2(plan: CoatPlan, pieceId: string): number {
  return ringAreaMm2(seamRing(pieceById(plan, pieceId).outline, 0.01));
}

function lengthMm(plan: CoatPlan, pieceId: string, edge: string): number {
  return edgeLengthMm(pieceById(plan, pieceId).outline, edge);
}

/** Where the armhole ends: at the underarm. */
function underarmMm(plan: CoatPlan, pieceId: 'back' | 'front'): number {
  const { outline } = pieceById(plan, pieceId);
  return edgePoints(outline, edgeIndexOf(outline, 'armhole')).at(-1)!.y;
}

function isSleevePart(pieceId: string): boolean {
  return pieceId === 'sleeve' || pieceId === 'top-sleeve' || pieceId === 'under-sleeve';
}

describe('a coat drafted for anybody', () => {
  it('is a plan without problems whose seams all fit', () => {
    fc.assert(
      fc.property(coats, (input) => {
        const { plan } = drafted(input);
        expect(planProblems(plan)).toEqual([]);
        const walked = seamWalk(plan);
        expect(
          walked.filter((seam) => !seam.fits || seam.sides === 'none').map((seam) => seam.label),
        ).toEqual([]);
        // Nothing is sewn in a seam that has no other side by mistake: these are sewn by themselves.
        expect(walked.filter((seam) => seam.sides === 'one').map((seam) => seam.seamId)).toEqual(
          expect.arrayContaining(['hem', 'lining hem']),
        );
      }),
      { numRuns: 40, seed: 1889 },
    );
  });

  it('has caps longer than its armholes by the ease that was asked for', () => {
    fc.assert(
      fc.property(coats, (input) => {
        const { plan, report } = drafted(input);
        const caps = plan.pieces.filter((piece) => isSleevePart(piece.id));
        const capMm = caps.reduce((sum, piece) => sum + edgeLengthMm(piece.outline, 'cap'), 0);
        const roundMm =
          lengthMm(plan, 'back', 'armhole') + lengthMm(plan, 'front', 'armhole') + input.sideStripMm;
        expect(capMm - roundMm).toBeCloseTo(input.capEaseMm, 1);
        expect(report.capEaseMm).toBeCloseTo(input.capEaseMm, 6);
        expect(report.capHeightMm / roundMm).toBeGreaterThan(0.1);
        expect(report.capHeightMm / roundMm).toBeLessThan(0.45);
      }),
      { numRuns: 25, seed: 1889 },
    );
  });

  it('measures bust and ease round the pattern at the underarm', () => {
    fc.assert(
      fc.property(coats, (input) => {
        const { plan, report } = drafted(input);
        const girthMm = 2 * (underarmMm(plan, 'back') + underarmMm(plan, 'front') + input.sideStripMm);
        expect(girthMm).toBeCloseTo(input.body.bustMm + input.easeMm + input.paddingGirthMm.body, 6);
        expect(report.girthMm.bust).toBeCloseTo(girthMm, 6);
        expect(report.girthMm.hip).toBeGreaterThan(report.bodyMm.hip);
        expect(report.girthMm.waist).toBeGreaterThan(report.bodyMm.waist);
        expect(report.girthMm.upperArm).toBeGreaterThan(report.bodyMm.upperArm + 0.4 * input.easeMm);
      }),
      { numRuns: 25, seed: 1889 },
    );
  });

  it('has facing and lining that make up the front, and the back, piece for piece', () => {
    fc.assert(
      fc.property(coats, (input) => {
        const { plan, report } = drafted(input);
        expect(report.madeUp.map(({ whole, parts }) => [whole, ...parts])).toEqual([
          ['Front', 'Front facing', 'Front lining'],
          ['Back', 'Back neck facing', 'Back lining'],
        ]);
        for (const { shoulderMm, hemMm, areaMm2: restMm2 } of report.madeUp) {
          expect(Math.max(Math.abs(shoulderMm), Math.abs(hemMm))).toBeLessThan(0.1);
          expect(Math.abs(restMm2)).toBeLessThan(100);
        }
        expect(areaMm2(plan, 'front-facing') + areaMm2(plan, 'front-lining')).toBeCloseTo(
          areaMm2(plan, 'front'),
          -1,
        );
        const neck = pieceById(plan, 'back-lining').outline;
        const pleatMm2 = (input.pleatMm / 2) * lengthMm(plan, 'back-lining', 'centre back');
        expect(neck.start.y).toBeCloseTo(-input.pleatMm / 2, 9);
        expect(areaMm2(plan, 'back-neck-facing') + areaMm2(plan, 'back-lining') - pleatMm2).toBeCloseTo(
          areaMm2(plan, 'back'),
          -1,
        );
        for (const edge of ['shoulder', 'hem']) {
          expect(lengthMm(plan, 'front-facing', edge) + lengthMm(plan, 'front-lining', edge)).toBeCloseTo(
            lengthMm(plan, 'front', edge),
            3,
          );
        }
        expect(lengthMm(plan, 'front-facing', 'inner edge')).toBeCloseTo(
          lengthMm(plan, 'front-lining', 'facing edge'),
          6,
        );
      }),
      { numRuns: 20, seed: 1889 },
    );
  });

  it('grows round the body with the bust, and down the body with the coat’s length', () => {
    fc.assert(
      fc.property(coats, fc.integer({ min: 5, max: 60 }), (input, moreMm) => {
        const larger = { ...input, body: { ...input.body, bustMm: input.body.bustMm + moreMm } };
        const longer = { ...input, coatLengthMm: input.coatLengthMm + moreMm };
        const before = drafted(input);
        const bustAfter = draftCoat(larger);
        // A body at the end of the range may grow out of it.
        if (bustAfter.ok) {
          expect(bustAfter.value.report.girthMm.bust).toBeGreaterThan(
            before.report.girthMm.bust + moreMm - 0.01,
          );
          // One that ends just above the waist goes no deeper.
          const { scyeDepthMm, body } = blockOf(larger, bustAfter.value.report.loweredMm);
          if (scyeDepthMm < body.backLengthMm - 15) {
            expect(bustAfter.value.report.armholeMm).toBeGreaterThan(before.report.armholeMm);
          }
        }
        const after = draftCoat(longer);
        if (after.ok) expect(areaMm2(after.value.plan, 'back')).toBeGreaterThan(areaMm2(before.plan, 'back'));
      }),
      { numRuns: 20, seed: 1889 },
    );
  });
});

describe('the maker’s choices', () => {
  const ids = (input: DraftInput) => drafted(input).plan.pieces.map((piece) => piece.id);

  it('bring the pieces of a hood of three panels and leave them out without one', () => {
    expect(ids(coat('women', { hood: 'three panels' }))).toEqual(
      expect.arrayContaining(['hood-side', 'hood-centre']),
    );
    expect(ids(coat('women', { hood: 'two panels' }))).not.toContain('hood-centre');
    expect(ids(coat('women')).filter((id) => id.startsWith('hood'))).toEqual([]);
  });

  it('let a strip in under the arm without changing the girth', () => {
    const plain = drafted(coat('men'));
    const { plan, report } = drafted(coat('men', { sideStripMm: 66 }));
    expect(
      plan.pieces.filter((piece) => piece.id.startsWith('side-strip')).map((piece) => piece.cutCount),
    ).toEqual([2, 2]);
    expect(report.girthMm.bust).toBeCloseTo(plain.report.girthMm.bust, 9);
    expect(lengthMm(plan, 'side-strip', 'front side')).toBeCloseTo(lengthMm(plan, 'front', 'side'), 0);
  });

  it('lap the fronts over each other by the width asked for', () => {
    const { plan } = drafted(coat('women', { lapMm: 57 }));
    const flat = drafted(coat('women'));
    const wide = (of: CoatPlan) => ringBox(seamRing(pieceById(of, 'front').outline)).minY;
    expect(wide(plan) - wide(flat.plan)).toBeCloseTo(-57, 6);
    expect(plan.slots.map((slot) => slot.id)).toContain('snaps');
    expect(flat.plan.slots.map((slot) => slot.id)).toContain('zip');
  });

  it('cut the sleeve lining from the shell when asked', () => {
    const { plan } = drafted(coat('women', { sleeveLining: 'shell' }));
    expect(pieceById(plan, 'top-sleeve-lining').cutFrom).toEqual([{ slotId: 'shell', plyCount: 1 }]);
    expect(plan.slots.map((slot) => slot.id)).not.toContain('sleeve-lining');
  });

  it('give every edge 5/8 in, the hem its own depth and a fold none', () => {
    const { plan } = drafted(coat('children', { hemDepthMm: 53 }));
    expect([plan.isForChild, drafted(coat('men')).plan.isForChild]).toEqual([true, false]);
    const { edges } = pieceById(plan, 'back').outline;
    expect(edges.map((edge) => [edge.name, edge.allowanceMm])).toEqual([
      ['centre back', 0],
      ['neckline', 15.875],
      ['shoulder', 15.875],
      ['armhole', 15.875],
      ['side', 15.875],
      ['hem', 53],
    ]);
  });

  it('set the armhole deeper for a large upper arm, and say by how much', () => {
    const { report } = drafted(coat('women', { easeMm: 110 }, { upperArmMm: 410 }));
    expect(report.loweredMm).toBeGreaterThan(0);
    expect(report.girthMm.upperArm).toBeGreaterThanOrEqual(410 + 0.42 * 110 - 1e-9);
    expect(drafted(coat('women')).report.loweredMm).toBe(0);
  });
});

it('a toddler’s coat with room for thick padding keeps its armholes above the waist', () => {
  const input = coat(
    'children',
    { easeMm: 231, paddingGirthMm: { body: 114, sleeve: 57 }, coatLengthMm: 376.5, sleeve: 'one part' },
    { bustMm: 540, waistMm: 400, heightMm: 869 },
  );
  const { plan, report } = drafted(input);
  expect(planProblems(plan)).toEqual([]);
  const waistDepthMm =
    376.5 -
    edgePoints(pieceById(plan, 'back').outline, edgeIndexOf(pieceById(plan, 'back').outline, 'side'))[0]!.x;
  expect(report.scyeDepthMm).toBeCloseTo(waistDepthMm, 6);
  expect(report.seams.every((seam) => seam.fits)).toBe(true);
});

describe('what cannot be drafted', () => {
  const refusal = (input: DraftInput) => {
    const outcome = draftCoat(input);
    return outcome.ok ? [] : outcome.problems.map((problem) => `${problem.where} ${problem.what}`);
  };

  it.each([
    ['Bust or chest is too small', coat('women', {}, { bustMm: 89, waistMm: 71, hipMm: 96 })],
    ['Height is not a number', coat('women', {}, { heightMm: Number.NaN })],
    ['Waist is too large', coat('men', {}, { waistMm: 1500 })],
    ['Length of the coat is too small', coat('men', { coatLengthMm: 431 })],
    ['The neck has neither collar nor hood', coat('men', { hasCollar: false })],
    ['Name of the coat is missing', coat('men', { name: '  ' })],
    ['Width of the side strip is too large', coat('men', { sideStripMm: 300 })],
    ['Layers of batting in the sleeve are 1.5', coat('men', { battingPlies: { body: 2, sleeve: 1.5 } })],
  ])('%s', (sentence, input) => {
    expect(refusal(input)).toContain(sentence);
  });

  it('however much room is asked for, an outline never crosses itself', () => {
    const room = fc.record({
      ease: fc.integer({ min: 40, max: 500 }),
      padding: fc.integer({ min: 0, max: 300 }),
    });
    fc.assert(
      fc.property(coats, room, (input, { ease, padding }) => {
        const roomy = { ...input, easeMm: ease, paddingGirthMm: { body: padding, sleeve: padding / 2 } };
        for (const sentence of refusal(roomy)) expect(sentence).not.toMatch(/^Outline of/);
      }),
      { numRuns: 20, seed: 1889 },
    );
  });

  it('an upper arm that no armhole takes', () => {
    const thin = coat('children', { easeMm: 40 }, { upperArmMm: 303, bustMm: 607 });
    const arm = { ...thin, paddingGirthMm: { body: 0, sleeve: 300 } };
    expect(refusal(arm)).toEqual(['The upper arm is too large for any armhole of this coat']);
  });
});

describe('several sizes of one style', () => {
  const larger = body('women', { bustMm: 1001, waistMm: 841, hipMm: 1083 });

  it('are one plan: the first at hand, the others kept until their number is said', () => {
    const input = coat('women', { size: '38' });
    const outcome = draftStyle(input, [{ size: '44', body: larger }]);
    if (!outcome.ok) throw new Error('refused');
    const { plan } = outcome.value;
    expect([plan.name, plan.size, plan.coatCount]).toEqual(['Harrow coat', '38', 1]);
    expect(plan.pieces).toEqual(drafted(input).plan.pieces);
    expect(plan.sizes).toEqual([
      { size: '44', coatCount: 0, pieces: drafted({ ...input, size: '44', body: larger }).plan.pieces },
    ]);
    expect(planProblems(plan)).toEqual([]);
  });

  it('are refused together, with the size that is wrong', () => {
    const bad = { size: '99', body: body('women', { bustMm: 12 }) };
    const outcome = draftStyle(coat('women'), [{ size: '44', body: larger }, bad]);
    expect(outcome.ok ? '' : outcome.problems[0]!.where).toBe('Size 99: Bust or chest');
    const twice = draftStyle(coat('women', { size: '44' }), [{ size: '44', body: larger }]);
    expect(twice.ok ? '' : twice.problems[0]!.where).toBe('Size 44');
  });
});
