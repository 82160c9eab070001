import { describe, expect, it } from 'vitest';
import { setFootLift } from '../../../../shared-core/plan/edits/measured.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { seamBulk, seamBulkAdvice } from '../../../../shared-core/requirement/thread/seam-bulk.ts';
import { adviceText } from '../../../../shared-core/requirement/sewing-advice.ts';
import { item } from '../../../fixtures/small-workshop.ts';
import { edited, refusal } from '../../plan/edit-outcomes.ts';
import { filled, nothingChosen, quiltedCoat } from '../small-coat.ts';

const shell = item('cloth', 'taffeta', { thicknessMm: 0.1 });
const padded = (arealMassGPerM2: number) =>
  filled({ shell, batting: item('batting', 'fleece', { arealMassGPerM2 }) });
const said = (coat: ReturnType<typeof quiltedCoat>, arealMassGPerM2: number) =>
  seamBulkAdvice(coat, padded(arealMassGPerM2)).map((each) => adviceText(each, 'metric'));

describe('seams under the foot', () => {
  it('both sides lie on each other, the batting pressed flat by its weight', () => {
    const bulk = seamBulk(quiltedCoat(), padded(240));
    expect(bulk).toMatchObject({ label: 'Side', footLiftMm: 5.5 });
    expect(bulk?.thicknessMm).toBeCloseTo(2 * (0.1 + 0.24 / 0.175), 9);
    expect(bulk?.crossingMm).toBeCloseTo(2 * bulk!.thicknessMm, 9);
    expect(bulk?.basis.map(({ kind }) => kind)).toEqual(['rule of thumb', 'rule of thumb']);
  });
  it('four layers of 120 g/m² go under a domestic foot, their crossing does not', () => {
    expect(said(quiltedCoat(), 240)).toEqual([
      'Where padded seams cross, as at the underarm, about 5.9 mm lie under the foot, which lifts 5.5 mm. Trim the batting out of the allowances to the seam line, and grade the cloth, before the second seam is sewn.',
    ]);
    expect(said(quiltedCoat(), 120)).toEqual([]);
  });
  it('a seam that does not go under at all is said to be too thick itself', () => {
    expect(said(quiltedCoat(), 600)[0]).toMatch(/^The seam “Side” is about 7.1 mm thick under the foot/);
  });
  it('a machine that lifts higher takes it', () => {
    const { plan, said: sentence } = edited(setFootLift(quiltedCoat(), 9));
    expect(sentence).toBe('The foot of the machine lifts 9 mm.');
    expect(said(plan, 240)).toEqual([]);
    expect(seamBulk(plan, padded(240))?.basis[1]?.kind).toBe('measured');
    expect(planProblems(plan)).toEqual([]);
    expect(edited(setFootLift(plan, null)).plan).toEqual(quiltedCoat());
    expect(refusal(setFootLift(plan, 0.5))).toContain('Lift of the foot is 0.5 mm');
  });
  it('says nothing while a weight is not written down', () => {
    expect(seamBulk(quiltedCoat(), nothingChosen)).toBeNull();
    const noWeight = filled({ shell, batting: item('batting', 'fleece', { loftMm: 12 }) });
    expect(seamBulkAdvice(quiltedCoat(), noWeight)).toEqual([]);
  });
});
