import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beforeWashMm, care, ironLimitC } from '../../../shared-core/requirement/care.ts';
import { item, slot } from '../../fixtures/small-workshop.ts';
import { filled, nothingChosen, smallCoat } from './small-coat.ts';

const coat = smallCoat({
  slots: [
    slot('shell', 'cloth'),
    slot('lining', 'cloth'),
    slot('batting', 'batting'),
    slot('thread', 'thread'),
  ],
});
const kinds = (items: ReturnType<typeof filled>) => care(coat, items).conflicts.map(({ kind }) => kind);
const shell = item('cloth', 'taffeta', { fibre: '100 % nylon', care: 'wash at 30', shrinkageAlongRatio: 0 });

describe('shrinkage', () => {
  it('300 mm that shrink 5 % must be 315.8 mm before the wash, not 315', () => {
    expect(beforeWashMm(300, 0.05)).toBeCloseTo(315.789, 3);
    expect(() => beforeWashMm(300, 1)).toThrow(RangeError);
  });
  it('what was cut larger is right after the wash', () => {
    const share = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 1, max: 9000, noNaN: true }), (p, mm) => {
        expect(beforeWashMm(mm, p) * (1 - p)).toBeCloseTo(mm, 6);
      }),
    );
  });
  it('a flannel lining that shrinks is to be washed first, and warns beside a shell that does not', () => {
    const flannel = item('cloth', 'flannel', {
      care: 'wash at 30',
      shrinkageAlongRatio: 0.06,
      shrinkageAcrossRatio: 0.03,
    });
    const found = care(coat, filled({ shell, lining: flannel }));
    expect(found.prewash).toEqual([
      { slotId: 'lining', slotName: 'lining', alongRatio: 0.06, acrossRatio: 0.03 },
    ]);
    expect(found.conflicts.map(({ kind }) => kind)).toEqual(['mixed shrinkage']);
    expect(found.conflicts[0]?.slotIds).toEqual(['lining', 'shell']);
    expect(found.conflicts[0]?.says).toContain('lining shrinks 6 % and shell 0 %');
  });
  it('two that shrink alike are no conflict, nor is one whose shrinkage nobody knows', () => {
    const alike = item('cloth', 'poplin', { care: 'wash at 30', shrinkageAlongRatio: 0.015 });
    expect(kinds(filled({ shell, lining: alike }))).toEqual([]);
    expect(kinds(filled({ shell, lining: item('cloth', 'poplin', { care: 'wash at 30' }) }))).toEqual([]);
  });
});

describe('care of the whole coat', () => {
  it('a warm-wash lining in a cold-wash shell is washed cold', () => {
    const found = care(coat, filled({ shell, lining: item('cloth', 'poplin', { care: 'wash at 60' }) }));
    expect([found.gentlest, found.conflicts[0]?.kind]).toEqual(['wash at 30', 'hottest wash']);
    expect(found.conflicts[0]?.mend).toBe('Label the whole coat: wash at 30.');
  });
  it('a wool that is for dry cleaning decides over all that can be washed', () => {
    const found = care(coat, filled({ shell, lining: item('cloth', 'melton', { care: 'dry clean' }) }));
    expect([found.gentlest, found.conflicts[0]?.kind]).toEqual(['dry clean', 'wash and dry clean']);
  });
  it('materials whose care is not written down are named', () => {
    const found = care(coat, filled({ shell, batting: item('batting', 'fleece') }));
    expect([found.unknownSlotIds, found.conflicts]).toEqual([['batting'], []]);
    expect(care(coat, nothingChosen).gentlest).toBeNull();
  });
  it('a cotton lining wants a hotter iron than a nylon shell bears', () => {
    const cotton = item('cloth', 'poplin', { fibre: '100 % cotton', care: 'wash at 30' });
    expect(kinds(filled({ shell, lining: cotton }))).toEqual(['iron heat']);
    const polyester = item('cloth', 'satin', { fibre: '100 % polyester', care: 'wash at 30' });
    expect(kinds(filled({ shell, lining: polyester }))).toEqual([]);
  });
  it('a mix bears no more heat than its tenderest fibre', () => {
    expect(ironLimitC(item('cloth', 'mix', { fibre: '90 % cotton, 10 % nylon' }))).toBe(110);
    expect(ironLimitC(item('cloth', 'pure', { fibre: '100 % cotton' }))).toBe(200);
    expect(ironLimitC(item('cloth', 'unknown'))).toBeNull();
  });
});
