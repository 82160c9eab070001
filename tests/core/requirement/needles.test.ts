import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  needleChoice,
  needleCount,
  needleNeed,
  planNeedleChoice,
} from '../../../shared-core/requirement/needles.ts';
import { item, slot } from '../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat } from './small-coat.ts';

const needles = slot('needles', 'needle');

describe('how many needles', () => {
  it('five coats of nine hours wear out six needles', () => {
    const coat = smallCoat({ coatCount: 5, sewingMinutesPerCoat: 540, slots: [needles] });
    const need = needleNeed(coat, needles, nothingChosen);
    expect([need.amount, need.counted, need.basis[0]?.kind]).toEqual([6, 'pieces', 'rule of thumb']);
    expect(need.basis[0]?.how).toContain('12 h 4 would do');
  });
  it('two kinds of needle share the hours', () => {
    const coat = smallCoat({
      coatCount: 5,
      sewingMinutesPerCoat: 540,
      slots: [needles, slot('quilting needles', 'needle')],
    });
    expect(needleNeed(coat, needles, nothingChosen).amount).toBe(3);
  });
  it('an hour of sewing takes one needle, none takes none', () => {
    expect([needleCount(1, 8), needleCount(0, 8), needleCount(16, 8)]).toEqual([1, 0, 2]);
  });
  it('half a needle for each of three coats, as typed, is two needles', () => {
    const typed = slot('needles', 'needle', { amountPerCoat: 0.5 });
    const need = needleNeed(smallCoat({ coatCount: 3, slots: [typed] }), typed, nothingChosen);
    expect([need.amount, need.basis[0]?.kind]).toEqual([2, 'measured']);
  });
});

describe('which needle', () => {
  const work = { arealMassGPerM2: 54, plyCount: 2, threadTex: 24, isDense: false, isKnit: false };
  it('a light nylon with fine thread takes 70', () => {
    expect(needleChoice(work)).toMatchObject({ sizeNm: 70, point: 'universal' });
    expect(needleChoice({ ...work, threadTex: null }).sizeNm).toBe(70);
  });
  it('six plies at a seam take 90, and it says why', () => {
    const choice = needleChoice({ ...work, plyCount: 6 });
    expect(choice.sizeNm).toBe(90);
    expect(choice.reason).toContain('6 plies');
  });
  it('thick thread alone asks for a thicker needle', () => {
    expect(needleChoice({ ...work, threadTex: 60 })).toMatchObject({ sizeNm: 100 });
  });
  it('dense cloth wants a sharp point, a knit a ball point', () => {
    expect(needleChoice({ ...work, isDense: true }).point).toBe('sharp');
    expect(needleChoice({ ...work, isKnit: true }).point).toBe('ball point');
  });
  it('heavier cloth, more plies or thicker thread never ask for a finer needle', () => {
    const one = fc.record({
      arealMassGPerM2: fc.double({ min: 10, max: 900, noNaN: true }),
      plyCount: fc.integer({ min: 1, max: 9 }),
      threadTex: fc.double({ min: 8, max: 140, noNaN: true }),
    });
    fc.assert(
      fc.property(one, one, (a, b) => {
        const both = {
          arealMassGPerM2: Math.max(a.arealMassGPerM2, b.arealMassGPerM2),
          plyCount: Math.max(a.plyCount, b.plyCount),
          threadTex: Math.max(a.threadTex, b.threadTex),
        };
        expect(needleChoice({ ...work, ...both }).sizeNm).toBeGreaterThanOrEqual(
          needleChoice({ ...work, ...a }).sizeNm,
        );
      }),
    );
  });
  it('the plan’s needle goes by its cloth, its thread and the plies at a seam', () => {
    const items = filled({
      shell: item('cloth', 'ripstop', { arealMassGPerM2: 50 }),
      thread: item('thread', 'fine', { sizeTex: 27 }),
    });
    expect(planNeedleChoice(quiltedCoat(), items)).toMatchObject({ sizeNm: 90, point: 'sharp' });
    expect(planNeedleChoice(smallCoat(), items)).toMatchObject({ sizeNm: 75 });
  });
  it('says nothing while no cloth is chosen', () => {
    expect(planNeedleChoice(quiltedCoat(), nothingChosen)).toBeNull();
  });
});
