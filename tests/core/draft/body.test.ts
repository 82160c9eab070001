/** The proportions that a body is filled in by, and the sizes that a maker chooses from. */
import { describe, expect, it } from 'vitest';
import { blockOf } from '../../../shared-core/draft/block.ts';
import { wholeBody } from '../../../shared-core/draft/body.ts';
import { bodyFromRow, bodyTables } from '../../../shared-core/draft/body-tables.ts';
import { defaultDraft } from '../../../shared-core/draft/draft-input.ts';

describe('a woman of bust 88', () => {
  const body = wholeBody(bodyFromRow('women', { size: '38', bustMm: 880, waistMm: 700, hipMm: 940 }, 1680));
  it('has the measures of the direct draft', () => {
    expect(body).toMatchObject({ scyeDepthMm: 193, backWidthMm: 165, armWidthMm: 95, chestWidthMm: 180 });
  });
  it('has back, arm and chest that are half of the bust', () => {
    expect(body.backWidthMm + body.armWidthMm + body.chestWidthMm).toBeCloseTo(440, 9);
  });
});

describe('a man of height 176 and chest 96', () => {
  const row = bodyFromRow('men', { size: '48', bustMm: 960, waistMm: 880, hipMm: 1000 }, 1760);
  const body = wholeBody(row);
  // The worked example has 11 cm of ease on the half, of which 2.5 cm at the arm are taken out again in darts.
  const jacket = blockOf({ ...defaultDraft('plan', 'Jacket', '48', row), easeMm: 170, coatLengthMm: 780 }, 0);
  it('has the back length and the depth of the armhole that the rules of the draft give', () => {
    expect(body.backLengthMm).toBe(450);
    // 1/8 chest, 1/4 back length and half a centimetre; the draft itself prints 23.5 cm, the half centimetre below.
    expect(body.scyeDepthMm).toBeCloseTo(237.5, 9);
  });
  it('wears a jacket of 59 cm on the half less its darts, its arm 18 cm less the darts', () => {
    expect(jacket.backQuarterMm + jacket.frontQuarterMm).toBeCloseTo(590 - 25, 6);
    // A fifth of the chest and half a centimetre, and the back's share of the ease: the draft prints 21.5 cm.
    const backMm = body.backWidthMm + 15;
    expect(backMm).toBeCloseTo(212, 9);
    expect(2 * (jacket.backQuarterMm - backMm)).toBeCloseTo(180 - 25, 6);
  });
});

it('children’s heights go up by 6 cm from 92 to 152', () => {
  const heights = bodyTables.find(({ kind }) => kind === 'children')!.rows.map(({ heightMm }) => heightMm);
  expect(heights).toEqual(Array.from({ length: 11 }, (_, step) => 920 + 60 * step));
});
