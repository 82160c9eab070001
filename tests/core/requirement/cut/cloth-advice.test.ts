import { describe, expect, it } from 'vitest';
import type { Slot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { clothAdvice } from '../../../../shared-core/requirement/cut/cloth-advice.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { filled, smallCoat } from '../small-coat.ts';

const kinds = (cloth: ReturnType<typeof item>, more: Partial<Slot> = {}) =>
  clothAdvice(
    smallCoat({ slots: [slot('shell', 'cloth', more), slot('thread', 'thread')] }),
    filled({ shell: cloth }),
  ).map(({ kind }) => kind);
const cloth = (name: string, colour: string, facts: object = {}) => ({
  ...item('cloth', name, facts),
  colour,
});

describe('a cloth with a pattern', () => {
  it('whose repeat nobody has typed is asked for it, by its colour or its name', () => {
    expect(kinds(cloth('Emberday', 'rust check'))).toEqual(['pattern matching']);
    expect(kinds(cloth('Broad stripe drill', 'ink'))).toEqual(['pattern matching']);
    expect(kinds(cloth('Glen plaid', 'grey'))).toEqual(['pattern matching']);
    const [advice] = clothAdvice(smallCoat(), filled({ shell: cloth('Emberday', 'rust check') }));
    expect(advice?.says).toContain('Emberday is a check by its name and has no repeat written down');
  });
  it('whose repeat is typed is left alone, and so is one that nobody sees or a plain one', () => {
    expect(kinds(cloth('Emberday', 'rust check', { repeatAlongMm: 62, repeatAcrossMm: 58 }))).toEqual([]);
    expect(kinds(cloth('Emberday', 'rust check'), { isSeen: false })).toEqual([]);
    expect(kinds(cloth('Drill', 'checkout green'))).toEqual([]);
  });
  it('that is not cut is not spoken of', () => {
    const plan = smallCoat({
      slots: [slot('shell', 'cloth'), slot('trim', 'cloth'), slot('thread', 'thread')],
    });
    expect(clothAdvice(plan, filled({ trim: cloth('Tartan', 'red') }))).toEqual([]);
  });
});

describe('a cloth that runs one way', () => {
  it.each([
    ['Needlecord', 'moss'],
    ['Otter velvet', 'ink'],
    ['Twill', 'shot violet'],
    ['Lawn', 'ombré'],
  ])('%s in %s is asked about until the maker says yes or no', (name, colour) => {
    expect(kinds(cloth(name, colour))).toEqual(['one way']);
    expect(kinds(cloth(name, colour, { hasNap: true }))).toEqual([]);
    expect(kinds(cloth(name, colour, { hasNap: false }))).toEqual([]);
  });
  it('a brushed finish counts as much as a name', () => {
    expect(kinds(cloth('Drill', 'sand', { finish: 'brushed on one side' }))).toEqual(['one way']);
  });
});

describe('an interfacing that is fused', () => {
  const plan = smallCoat({
    slots: [slot('shell', 'cloth'), slot('facing interfacing', 'cloth', { isSeen: false })],
    pieces: smallCoat().pieces.map((each) => ({
      ...each,
      cutFrom: [...each.cutFrom, { slotId: 'facing interfacing', plyCount: 1 }],
    })),
  });
  const found = (fibre: string, finish: string) =>
    clothAdvice(
      plan,
      filled({
        shell: item('cloth', 'taffeta', { fibre }),
        'facing interfacing': item('cloth', 'woven stay', { finish }),
      }),
    ).map(({ kind, says }) => [kind, says]);
  it('wants more heat than a nylon shell bears', () => {
    expect(found('100 % nylon', 'fusible')).toEqual([
      ['interfacing', 'woven stay is fused, which asks for 150 °C and more, and taffeta bears 110 °C.'],
    ]);
  });
  it('is at home on cotton, and sewn in on any', () => {
    expect(found('100 % cotton', 'fusible')).toEqual([]);
    expect(found('100 % nylon', 'sew-in')).toEqual([]);
  });
});
