/** What may happen in a workshop, as fast-check draws it: numbers that each step reads in its own way. */
import fc from 'fast-check';

const kinds = [
  'receive cloth',
  'receive fill',
  'receive snaps',
  'set aside',
  'set aside',
  'set aside what the cover takes',
  'release',
  'cut',
  'cut',
  'cut',
  'take back',
  'take back',
  'write off',
  'count',
  'undo',
  'undo',
  'bring another size to hand',
  'change the coats',
  'change the margin',
] as const;

export const step = fc.record({
  kind: fc.constantFrom(...kinds),
  plan: fc.nat({ max: 2 }),
  which: fc.nat({ max: 10_000 }),
  other: fc.nat({ max: 10_000 }),
  share: fc.double({ min: 0.02, max: 1.05, noNaN: true }),
  part: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
  many: fc.nat({ max: 3 }),
  price: fc.integer({ min: 0, max: 400_000 }),
  yes: fc.boolean(),
  also: fc.boolean(),
});

export type Step = typeof step extends fc.Arbitrary<infer Value> ? Value : never;

export const history = (stepCount: number) => fc.array(step, { minLength: stepCount, maxLength: stepCount });
