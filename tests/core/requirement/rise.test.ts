import { describe, expect, it } from 'vitest';
import { quiltedRise } from '../../../shared-core/requirement/rise.ts';
import { item } from '../../fixtures/small-workshop.ts';
import { filled, nothingChosen, quiltedCoat, stuffedCoat } from './small-coat.ts';

describe('how high quilted cloth stands', () => {
  const rise = (coat: ReturnType<typeof quiltedCoat>, items = nothingChosen) =>
    quiltedRise(coat, coat.pieces[0]!, items);
  it('a quarter of the loft on each face, as a rule of thumb', () => {
    const found = rise(quiltedCoat(), filled({ batting: item('batting', 'fleece', { loftMm: 14 }) }));
    expect([found.riseMm, found.basis.kind]).toEqual([3.5, 'rule of thumb']);
  });
  it('the maker’s own measure wins', () => {
    const found = rise(quiltedCoat({ quilting: { ...quiltedCoat().quilting!, riseMm: 6 } }));
    expect([found.riseMm, found.basis.kind]).toEqual([6, 'measured']);
  });
  it('a stuffed channel rises an eighth of its width', () => {
    expect(
      rise(stuffedCoat({ quilting: { ...stuffedCoat().quilting!, riseMm: null, spacingMm: 72 } })).riseMm,
    ).toBe(9);
  });
});
