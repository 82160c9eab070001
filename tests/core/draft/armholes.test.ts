import { describe, expect, it } from 'vitest';
import { draftCoat } from '../../../shared-core/draft/draft.ts';
import { coat } from './bodies.ts';

function reportOf(input: ReturnType<typeof coat>) {
  const outcome = draftCoat(input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value.report;
}

describe('armholes and sleeves from the smallest size to the largest', () => {
  const sized = (kind: 'women' | 'men' | 'children', bustMm: number, heightMm: number) =>
    reportOf(
      coat(
        kind,
        { paddingGirthMm: { body: 57, sleeve: 28 } },
        { bustMm, waistMm: 0.86 * bustMm, hipMm: null, heightMm },
      ),
    );
  const grown = [800, 880, 920, 960, 1040, 1120, 1220, 1300, 1400];
  const all = [
    ...grown.map((bustMm) => sized('women', bustMm, 1680)),
    ...grown.map((bustMm) => sized('men', bustMm, 1780)),
    ...[920, 1040, 1160, 1280, 1400, 1520].map((heightMm) =>
      sized('children', 180 + 0.37 * heightMm, heightMm),
    ),
  ];
  it('an armhole is about half of the coat round the chest, a sleeve seven tenths of the armhole', () => {
    for (const { armholeMm, girthMm } of all) {
      expect(armholeMm / girthMm.bust).toBeGreaterThan(0.45);
      expect(armholeMm / girthMm.bust).toBeLessThan(0.56);
      expect(girthMm.upperArm / armholeMm).toBeGreaterThan(0.7);
      expect(girthMm.upperArm / armholeMm).toBeLessThan(0.74);
    }
  });
  it('the cap is about a third of the armhole, and every seam of sleeve and armhole walks', () => {
    for (const { armholeMm, capHeightMm, seams } of all) {
      expect(capHeightMm / armholeMm).toBeGreaterThan(0.3);
      expect(capHeightMm / armholeMm).toBeLessThan(0.35);
      expect(seams.filter(({ fits }) => !fits)).toEqual([]);
    }
  });
  it('a child’s lines lie closer and its coat takes fewer hours, and the notes say so', () => {
    const plans = (['children', 'women'] as const).map((kind) => {
      const outcome = draftCoat(coat(kind));
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      return outcome.value.plan;
    });
    expect(plans.map(({ quilting }) => quilting?.spacingMm)).toEqual([50.8, 76.2]);
    expect(plans.map((plan) => plan.sewingMinutesPerCoat)).toEqual([420, 600]);
    expect(plans[0]!.notes).toContain('set for a child’s coat');
    expect(plans[1]!.notes).not.toContain('child');
  });
  it('a man of chest 112 and a woman of bust 92 have room for the arm and no more than a coat’s', () => {
    const man = sized('men', 1120, 1830);
    expect(man.armholeMm).toBeLessThan(690);
    expect(man.girthMm.upperArm).toBeLessThan(505);
    const woman = sized('women', 920, 1680);
    expect(woman.girthMm.upperArm - woman.bodyMm.upperArm).toBeLessThan(125);
    expect(woman.girthMm.upperArm - woman.bodyMm.upperArm).toBeGreaterThan(0.42 * 180 + 28);
  });
});
