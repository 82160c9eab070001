import { describe, expect, it } from 'vitest';
import { showTyped } from '../../../shared-core/measure/typed.ts';

describe('what was typed is shown back as it was typed', () => {
  it('in its own words, while they are true', () => {
    expect(showTyped('length', 114.3, '4-1/2"', { system: 'metric' })).toBe('4-1/2"');
    expect(showTyped('length', 1473.2, '58 in', { system: 'metric' })).toBe('58 in');
    expect(showTyped('threadSize', 100 / 3, '30 wt', { system: 'imperial' })).toBe('30 wt');
    expect(showTyped('length', -40, '-4 cm', { system: 'metric' })).toBe('-4 cm');
    expect(showTyped('length', 3000, '3', { system: 'metric', unit: 'm' })).toBe('3');
    expect(showTyped('length', 0, '0 in', { system: 'metric' })).toBe('0 in');
  });
  it('but anew once the value is another one', () => {
    expect(showTyped('length', 120, '4-1/2"', { system: 'metric' })).toBe('120 mm');
    expect(showTyped('length', 114.3001, '4 1/2 in', { system: 'imperial' })).toBe('4 1/2 in');
    expect(showTyped('length', 114.3001, '11.43 cm', { system: 'imperial' })).toBe('4 1/2 in');
    expect(showTyped('length', 5, '0 in', { system: 'metric' })).toBe('5 mm');
  });
  it('but anew when a bare number would change its meaning', () => {
    expect(showTyped('length', 115, '115', { system: 'metric' })).toBe('115');
    expect(showTyped('length', 115, '115', { system: 'imperial' })).toBe('4 1/2 in');
  });
  it('and what is missing or cannot be read is left aside', () => {
    expect(showTyped('length', 115, undefined, { system: 'metric' })).toBe('115 mm');
    expect(showTyped('length', 115, 'wide', { system: 'metric' })).toBe('115 mm');
    expect(showTyped('length', 115, '', { system: 'metric' })).toBe('115 mm');
  });
});
