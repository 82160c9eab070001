import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { needleAdvice } from '../../../../shared-core/requirement/thread/needle-advice.ts';
import { adviceText } from '../../../../shared-core/requirement/sewing-advice.ts';
import {
  needleChoice,
  needleCount,
  needleNeed,
  planNeedleChoice,
} from '../../../../shared-core/requirement/thread/needles.ts';
import { howText } from '../../../../shared-core/measure/basis.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, smallCoat, stuffedCoat } from '../small-coat.ts';

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
  const work = {
    arealMassGPerM2: 54,
    seamGPerM2: 108,
    threadTex: 24,
    isDense: false,
    isDownProof: false,
    isKnit: false,
  };
  it('a light nylon with fine thread takes 70', () => {
    expect(needleChoice(work)).toMatchObject({ sizeNm: 70, point: 'universal', conflict: '' });
    expect(needleChoice({ ...work, threadTex: null }).sizeNm).toBe(70);
  });
  it('four light plies are no heavy seam', () => {
    expect(needleChoice({ ...work, seamGPerM2: 4 * 54 }).sizeNm).toBe(70);
  });
  it('a heavy seam takes 90, and it says why', () => {
    const choice = needleChoice({ ...work, arealMassGPerM2: 200, seamGPerM2: 6 * 200 });
    expect(choice.sizeNm).toBe(90);
    expect(howText(choice.reason, 'metric')).toContain('1200 g/m² in all at a seam');
  });
  it('thick thread alone asks for a thicker needle', () => {
    expect(needleChoice({ ...work, threadTex: 60 })).toMatchObject({ sizeNm: 100 });
  });
  it('a down-proof shell is never pierced by more than 75, and a thicker thread is said not to fit it', () => {
    const downProof = { ...work, isDense: true, isDownProof: true };
    expect(needleChoice(downProof)).toMatchObject({ sizeNm: 70, point: 'sharp', conflict: '' });
    expect(needleChoice({ ...downProof, arealMassGPerM2: 28, seamGPerM2: 110, threadTex: 15 }).sizeNm).toBe(
      65,
    );
    expect(needleChoice({ ...downProof, threadTex: 40 })).toMatchObject({
      sizeNm: 75,
      conflict: 'thread of tex 40 would ask for {needleSize 90}, and the cloth is down-proof.',
      fix: 'Take a thread of tex 27 or finer, and try it on a scrap.',
    });
    expect(needleChoice({ ...downProof, seamGPerM2: 900 }).fix).toContain('out of the allowances');
  });
  it('dense cloth wants a sharp point, a knit a ball point', () => {
    expect(needleChoice({ ...work, isDense: true }).point).toBe('sharp');
    expect(needleChoice({ ...work, isKnit: true }).point).toBe('ball point');
  });
  it('heavier cloth, heavier seams or thicker thread never ask for a finer needle', () => {
    const one = fc.record({
      arealMassGPerM2: fc.double({ min: 10, max: 900, noNaN: true }),
      seamGPerM2: fc.double({ min: 20, max: 2500, noNaN: true }),
      threadTex: fc.double({ min: 8, max: 140, noNaN: true }),
    });
    fc.assert(
      fc.property(one, one, fc.boolean(), (a, b, isDownProof) => {
        const both = {
          arealMassGPerM2: Math.max(a.arealMassGPerM2, b.arealMassGPerM2),
          seamGPerM2: Math.max(a.seamGPerM2, b.seamGPerM2),
          threadTex: Math.max(a.threadTex, b.threadTex),
        };
        expect(needleChoice({ ...work, ...both, isDownProof }).sizeNm).toBeGreaterThanOrEqual(
          needleChoice({ ...work, ...a, isDownProof }).sizeNm,
        );
      }),
    );
  });
  it('the plan’s needle goes by cloth, thread and batting of its padded seams', () => {
    const items = filled({
      shell: item('cloth', 'ripstop', { arealMassGPerM2: 50 }),
      batting: item('batting', 'fleece', { arealMassGPerM2: 400 }),
      thread: item('thread', 'fine', { sizeTex: 24 }),
    });
    expect(planNeedleChoice(quiltedCoat(), items)).toMatchObject({ sizeNm: 80, point: 'sharp' });
    expect(planNeedleChoice(smallCoat(), items)).toMatchObject({ sizeNm: 70 });
  });
  it('a stuffed coat of light down-proof cloth, four plies at a seam, keeps its fine needle', () => {
    const items = filled({
      shell: item('cloth', 'shell', { arealMassGPerM2: 54, isDownProof: true }),
      thread: item('thread', 'fine', { sizeTex: 27 }),
    });
    expect(planNeedleChoice(stuffedCoat(), items)).toMatchObject({
      sizeNm: 75,
      point: 'sharp',
      conflict: '',
    });
  });
  it('a trim that is not padded does not ask for a stouter needle in the padded seams', () => {
    const trim = { slotId: 'trim', plyCount: 1 };
    const coat = quiltedCoat({
      slots: [...quiltedCoat().slots, slot('trim', 'cloth')],
      pieces: [...quiltedCoat().pieces, { ...smallCoat().pieces[0]!, id: 'flap', cutFrom: [trim] }],
    });
    const items = filled({
      shell: item('cloth', 'ripstop', { arealMassGPerM2: 50 }),
      trim: item('cloth', 'melton', { arealMassGPerM2: 500 }),
    });
    expect(planNeedleChoice(coat, items)?.sizeNm).toBe(70);
  });
  it('says nothing while no cloth is chosen', () => {
    expect(planNeedleChoice(quiltedCoat(), nothingChosen)).toBeNull();
  });
});

describe('advice on needles', () => {
  const nylon = (sizeTex: number, sizeNm: number) =>
    filled({
      shell: item('cloth', 'nylon', { arealMassGPerM2: 54, isDownProof: true }),
      batting: item('batting', 'fleece', { arealMassGPerM2: 240 }),
      thread: item('thread', 'spun', { sizeTex }),
      needles: item('needle', 'sharp', { sizeNm }),
    });
  const coat = quiltedCoat({ slots: [...quiltedCoat().slots, needles] });
  const said = (sizeTex: number, sizeNm: number) =>
    needleAdvice(coat, nylon(sizeTex, sizeNm)).map((each) => adviceText(each, 'metric'));
  it('is none where thread, needle and cloth go together', () => {
    expect(said(25, 75)).toEqual([]);
  });
  it('a thread too thick for a down-proof shell is to be taken finer', () => {
    expect(said(40, 75)).toEqual([
      'Thread of tex 40 would ask for NM 90/14, and the cloth is down-proof. Take a thread of tex 27 or finer, and try it on a scrap.',
    ]);
  });
  it('a needle that is too fine or too coarse is said to be', () => {
    expect(said(25, 65)[0]).toMatch(/^The needle chosen, NM 65\/9, is finer than the NM 75\/11/);
    expect(said(25, 90)[0]).toMatch(/^The needle chosen, NM 90\/14, is coarser than the NM 75\/11/);
    const two = { ...coat, slots: [...coat.slots, slot('fine', 'needle')] };
    const items = new Map([...nylon(25, 90), ['fine', item('needle', 'fine', { sizeNm: 75 })] as const]);
    expect(needleAdvice(two, items)).toEqual([]);
    expect(needleAdvice(coat, nothingChosen)).toEqual([]);
  });
});
