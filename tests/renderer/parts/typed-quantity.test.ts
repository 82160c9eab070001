import { describe, expect, test } from 'vitest';
import {
  readTyped,
  savedOnLeaving,
  type TypedOptions,
} from '../../../renderer/parts/forms/typed-quantity.ts';

const options: TypedOptions = { system: 'metric', where: 'Lines apart', isRequired: true };

/** Typed key by key, as the field reads it. */
function typing(text: string, more: Partial<TypedOptions> = {}) {
  const reads = Array.from(text, (_, at) =>
    readTyped('length', text.slice(0, at + 1), { ...options, ...more }),
  );
  return reads.at(-1) ?? readTyped('length', '', { ...options, ...more });
}

describe('a field that saves by itself', () => {
  test('saves what was typed: 12 in', () => {
    expect(savedOnLeaving(typing('12 in'), 76.2, false)).toEqual({ value: 304.8 });
  });

  test('saves nothing of 12 inn, although 12 in stood there on the way', () => {
    expect(typing('12 inn')).toEqual({ misread: expect.stringContaining('12 inn') });
    expect(savedOnLeaving(typing('12 inn'), 76.2, false)).toBeNull();
    expect(savedOnLeaving(typing('12 inn'), 76.2, true)).toBeNull();
  });

  test('saves nothing when it was emptied and must hold a number, and null when it may be empty', () => {
    expect(typing('')).toEqual({ misread: 'Lines apart is missing.' });
    expect(savedOnLeaving(typing(''), 76.2, false)).toBeNull();
    expect(savedOnLeaving(typing('', { isRequired: false }), 76.2, false)).toEqual({ value: null });
  });

  test('saves nothing that stands already, but sets it again where another value was refused', () => {
    expect(savedOnLeaving(typing('7.62 cm'), 76.2, false)).toBeNull();
    expect(savedOnLeaving(typing('7.62 cm'), 76.2, true)).toEqual({ value: 76.2 });
  });

  test('saves nothing when nothing was typed', () => {
    expect(savedOnLeaving(null, 76.2, true)).toBeNull();
  });
});
