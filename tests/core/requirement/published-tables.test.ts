/** Tables of the product as they are published: a slip of the hand in one of them shows here. */
import { describe, expect, it } from 'vitest';
import { ironC } from '../../../shared-core/requirement/law/iron.ts';
import { flammabilityExemptGPerM2 } from '../../../shared-core/requirement/law/cautions.ts';
import { defaultSeparatingZipsMm } from '../../../shared-core/requirement/fastenings.ts';
import { needleChoice, needleLifeHours } from '../../../shared-core/requirement/thread/needles.ts';
import { easeLeft } from '../../../shared-core/requirement/finished/padding.ts';
import { sizeTables } from '../../../shared-core/requirement/finished/size-tables.ts';
import { stitchThreads } from '../../../shared-core/requirement/thread/thread-ratios.ts';
import { cloPerCm, conductivityWPerMK } from '../../../shared-core/requirement/finished/warmth.ts';

describe('size tables', () => {
  const rowOf = (id: string, size: string) =>
    sizeTables.find((table) => table.id === id)!.rows.find((row) => row.size === size)!;
  it('rise at the bust from size 00 to 20 as ASTM D5585-11 does, in eighths of an inch', () => {
    const { rows } = sizeTables.find(({ id }) => id === 'misses 2011')!;
    const eighths = rows.slice(1).map((row, index) => ((row.bustMm - rows[index]!.bustMm) / 25.4) * 8);
    expect(eighths.map((step) => Math.round(step * 1e6) / 1e6)).toEqual([
      5, 10, 9, 9, 8, 8, 12, 13, 14, 15, 16,
    ]);
    expect(rowOf('misses 2011', '8').bustMm).toBeCloseTo(36.25 * 25.4, 9);
  });
  it('keep the older misses table and the European one apart', () => {
    expect(rowOf('misses 1995', '8').bustMm).toBeCloseTo(35 * 25.4, 9);
    expect(rowOf('misses 1995', '14').hipMm).toBeCloseTo(41.5 * 25.4, 9);
    expect(rowOf('women 13402', '100').waistMm).toBe(840);
    expect(rowOf('women 13402', '110').hipMm).toBe(1170);
  });
});

it.each([
  [1.75, 'as close as a close-fitting dress'],
  [3, 'as close as a fitted dress'],
  [3.75, 'a fitted jacket'],
  [4.5, 'a semi-fitted jacket'],
  [6, 'a fitted coat'],
  [7.5, 'a semi-fitted coat'],
  [10, 'a loose coat'],
])('%s in of ease at the bust is %s', (easeIn, words) => {
  const [bust] = easeLeft([{ place: 'bust', bodyMm: 900, garmentMm: 900 + easeIn * 25.4, thicknessMm: 0 }]);
  expect(bust!.words).toBe(words);
});

it('thread and its share through the needles go by the thread maker’s guide to ISO 4915', () => {
  const percent = Object.entries(stitchThreads).map(
    ([stitch, { ratio, needleShareRatio }]) => [stitch, ratio, Math.round(100 * needleShareRatio)] as const,
  );
  expect(percent.filter(([stitch]) => stitch !== 'hand')).toEqual([
    ['301', 2.5, 50],
    ['304', 7, 50],
    ['401', 5.5, 25],
    ['503', 12, 55],
    ['504', 14, 20],
    ['516', 20, 20],
    ['605', 28, 30],
  ]);
});

it('irons are no hotter than the dots of the care symbol allow: 110, 150, 200 C', () => {
  expect(ironC).toMatchObject({
    nylon: 110,
    acrylic: 110,
    acetate: 110,
    polyester: 150,
    wool: 150,
    cotton: 200,
    linen: 200,
  });
});

it('plain cloth of 2.6 oz/yd2, printed as 88.2 g/m2 in 16 CFR 1610, needs no burning test', () => {
  expect(flammabilityExemptGPerM2).toBeCloseTo(88.2, 1);
});

it('separating zips are sold from 10 to 36 in, and from 25 cm in steps of 5', () => {
  const { imperial, metric } = defaultSeparatingZipsMm;
  expect([imperial.at(0), imperial.at(-1)]).toEqual([10 * 25.4, 36 * 25.4]);
  expect([metric.at(0), metric.at(1), metric.at(-1)]).toEqual([250, 300, 1000]);
});

it('clo of a thickness goes from what a patent on down substitutes allows to the best nonwoven that was measured', () => {
  expect(conductivityWPerMK(cloPerCm.min)).toBeLessThan(0.072);
  expect(cloPerCm.max * 1.5 * 0.155).toBeCloseTo(0.4522, 1);
});

describe('needles', () => {
  const ozPerYd2 = 33.905747475;
  const plain = {
    arealMassGPerM2: 54,
    seamGPerM2: 108,
    threadTex: null,
    isDense: false,
    isDownProof: false,
    isKnit: false,
  };
  it.each([
    ['very fine sheer', 25, 60],
    ['light coat nylon, 1.6 oz', 1.6 * ozPerYd2, 70],
    ['medium cloth, 4.5 oz', 4.5 * ozPerYd2, 80],
    ['mid-heavy cloth, 8 oz', 8 * ozPerYd2, 90],
    ['denim, 12 oz', 12 * ozPerYd2, 100],
    ['canvas, 18 oz', 18 * ozPerYd2, 110],
  ])('for %s go by its weight', (_cloth, arealMassGPerM2, sizeNm) => {
    expect(needleChoice({ ...plain, arealMassGPerM2 }).sizeNm).toBe(sizeNm);
  });
  it('for a bulky seam of six plies of medium cloth, 6 oz, are 90', () => {
    const work = { ...plain, arealMassGPerM2: 6 * ozPerYd2, seamGPerM2: 36 * ozPerYd2 };
    expect(needleChoice(work).sizeNm).toBe(90);
  });
  it('for very densely woven light cloth are 65 to 70, as a needle maker has it', () => {
    const work = { ...plain, arealMassGPerM2: 37, seamGPerM2: 150, isDense: true, isDownProof: true };
    expect(needleChoice({ ...work, threadTex: 18 }).sizeNm).toBe(70);
    expect(needleChoice({ ...work, arealMassGPerM2: 28, seamGPerM2: 110, threadTex: 18 }).sizeNm).toBe(65);
  });
  it('for plain woven cloth are universal, and last 8 to 12 hours', () => {
    expect(needleChoice(plain).point).toBe('universal');
    expect(needleLifeHours).toEqual({ min: 8, max: 12 });
  });
});
