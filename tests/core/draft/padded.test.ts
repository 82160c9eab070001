import { describe, expect, it } from 'vitest';
import { bodyFromRow, bodyTables } from '../../../shared-core/draft/body-tables.ts';
import { wholeBody } from '../../../shared-core/draft/body.ts';
import { draftCoat } from '../../../shared-core/draft/draft.ts';
import type { DraftInput } from '../../../shared-core/draft/draft-input.ts';
import { goneUpToSize, widenedForPadding } from '../../../shared-core/draft/padded.ts';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import { pieceById } from '../../../shared-core/plan/model/coat-plan.ts';
import { edgeLengthMm, seamRing } from '../../../shared-core/plan/geometry/outline-ring.ts';
import { coat } from './bodies.ts';

function report(input: DraftInput) {
  const outcome = draftCoat(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value.report;
}

describe('a coat drawn larger for its padding', () => {
  it('grows by what the padding takes at bust and hip, and at the upper arm', () => {
    const plain = report(coat('women'));
    const padded = report(widenedForPadding(coat('women'), { bodyMm: 79.8, sleeveMm: 39.9 }));
    expect(padded.girthMm.bust - plain.girthMm.bust).toBeCloseTo(79.8, 6);
    expect(padded.girthMm.hip - plain.girthMm.hip).toBeCloseTo(79.8, 6);
    expect(padded.girthMm.waist - plain.girthMm.waist).toBeGreaterThanOrEqual(79.8 - 1e-6);
    expect(padded.girthMm.upperArm).toBeGreaterThan(plain.bodyMm.upperArm + 0.42 * 180 + 39.9 - 1e-6);
    expect(padded.armholeMm).toBeGreaterThan(plain.armholeMm);
  });

  it('gives neck, collar and hood the room that their one layer takes', () => {
    const hooded = coat('women', { hood: 'three panels' });
    const drawn = (input: DraftInput) => {
      const outcome = draftCoat(input);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const { plan } = outcome.value;
      const edgeMm = (pieceId: string, edge: string) => edgeLengthMm(pieceById(plan, pieceId).outline, edge);
      const hood = ringBox(seamRing(pieceById(plan, 'hood-side').outline));
      return {
        neckMm: 2 * edgeMm('collar', 'neck edge'),
        hoodHighMm: hood.maxX - hood.minX,
        hoodDeepMm: hood.maxY - hood.minY,
        hoodWideMm: edgeMm('hood-centre', 'face'),
        misfits: outcome.value.report.seams.filter(({ fits }) => !fits),
      };
    };
    const plain = drawn(hooded);
    // Two layers of 6.35 mm as worn in the body, of which collar and hood have one: 39.9 mm of girth.
    const padded = drawn(widenedForPadding(hooded, { bodyMm: 79.8, sleeveMm: 39.9 }));
    expect(padded.neckMm - plain.neckMm).toBeGreaterThan(39.9 - 12);
    expect(padded.neckMm - plain.neckMm).toBeLessThan(39.9 + 12);
    expect(padded.hoodHighMm - plain.hoodHighMm).toBeGreaterThan(6);
    expect(padded.hoodDeepMm - plain.hoodDeepMm).toBeGreaterThan(6);
    expect(padded.hoodWideMm - plain.hoodWideMm).toBeGreaterThan(12.6);
    expect([plain.misfits, padded.misfits]).toEqual([[], []]);
  });

  it('keeps the wearer’s lengths when it goes up a size', () => {
    const input = coat('women', {}, { upperArmMm: 281 });
    const row = { size: '46', bustMm: 973, waistMm: 793, hipMm: null };
    const up = goneUpToSize(input, row);
    expect(up.size).toBe('46');
    expect(up.coatLengthMm).toBe(input.coatLengthMm);
    expect(wholeBody(up.body).backLengthMm).toBe(wholeBody(input.body).backLengthMm);
    expect(wholeBody(up.body).armMm).toBe(wholeBody(input.body).armMm);
    expect(up.body.upperArmMm).toBeCloseTo((281 * 973) / 893, 6);
    expect(report(up).girthMm.bust - report(input).girthMm.bust).toBeCloseTo(80, 6);
  });

  it('refuses a padding below nothing', () => {
    expect(() => widenedForPadding(coat('men'), { bodyMm: -1, sleeveMm: 0 })).toThrow(RangeError);
  });
});

describe('every size of a table', () => {
  it.each(bodyTables.flatMap((table) => table.rows.map((row) => [table.kind, row.size, row] as const)))(
    '%s %s can be drafted, and is larger than the one before',
    (kind, size, row) => {
      const body = bodyFromRow(kind, row, 1771);
      const outcome = draftCoat({ ...coat(kind), size, body, coatLengthMm: 0.5 * body.heightMm });
      expect(outcome.ok ? [] : outcome.problems).toEqual([]);
      const rows = bodyTables.find((table) => table.kind === kind)!.rows;
      const before = rows[rows.findIndex((each) => each.size === size) - 1];
      if (before) expect(row.bustMm).toBeGreaterThan(before.bustMm);
    },
  );
});
