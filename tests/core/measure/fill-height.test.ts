import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { readQuantity } from '../../../shared-core/measure/read.ts';

const read = (text: string) =>
  readQuantity('fillPower', text, { system: 'metric', where: 'Fill power of Downdrift' });

describe('a height of down as a laboratory prints it', () => {
  it.each([
    ['120 mm/20 g', 120, 20],
    ['120 mm / 20g', 120, 20],
    ['120 mm EN 12130', 120, 20],
    ['120 mm (EN 12130)', 120, 20],
    ['165 mm/30 g', 165, 30],
    ['165 mm (IDFB)', 165, 30],
  ])('%s is the room in a cylinder of 289 mm over its sample', (text, mm, grams) => {
    const found = read(text);
    expect(found.ok && found.value).toBeCloseTo((Math.PI * 14.45 ** 2 * (mm / 10)) / grams, 3);
  });
  it('120 mm of 20 g is a good down, 681 in3/oz', () => {
    const found = read('120 mm/20 g');
    expect(found.ok && found.value / (16.387064 / 28.349523125)).toBeCloseTo(681, 0);
  });
  it('a height alone says nothing, and what is missing is said', () => {
    const found = read('120 mm');
    expect(found.ok ? '' : problemSentence(found.problems[0]!)).toBe(
      'Fill power of Downdrift is a height without the mass that was poured in. Type it with its sample: 120 mm/20 g (EN 12130) or 165 mm/30 g (IDFB).',
    );
  });
});
