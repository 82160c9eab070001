import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { isBareNumber, withUnit } from '../../../shared-core/measure/with-unit.ts';

describe('a number typed without its unit keeps the one it was meant in', () => {
  it('that of the field, or of the system where the field names none', () => {
    expect(withUnit('length', ' 147 ', 'metric', { metric: 'cm', imperial: 'in' })).toBe('147 cm');
    expect(withUnit('length', '4 1/2', 'imperial')).toBe('4 1/2 in');
    expect(withUnit('arealMass', '54', 'metric')).toBe('54 g/m²');
    expect(withUnit('threadSize', '40', 'metric')).toBe('40 tex');
  });
  it('and a text with a unit of its own is left as it is', () => {
    expect(withUnit('length', '58 in', 'metric', 'cm')).toBe('58 in');
    expect(withUnit('length', '4\'-6"', 'metric')).toBe('4\'-6"');
    expect(withUnit('needleSize', '80/12', 'metric')).toBe('80/12');
    expect(withUnit('count', '12', 'metric')).toBe('12');
    expect(isBareNumber('-')).toBe(false);
  });
  it('so that it reads to the same value once the workshop measures otherwise', () => {
    for (const [kind, text] of [
      ['length', '3.25'],
      ['mass', '12'],
      ['fillPower', '650'],
      ['threadSize', '40'],
      ['threadLength', '457'],
      ['ratio', '3.5'],
      ['arealMass', '1.9'],
    ] as const) {
      const before = readQuantity(kind, text, { system: 'imperial', where: 'here' });
      const after = readQuantity(kind, withUnit(kind, text, 'imperial'), {
        system: 'metric',
        where: 'there',
      });
      expect(after).toEqual(before);
    }
  });
});
