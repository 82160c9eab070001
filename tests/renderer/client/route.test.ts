import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Route, readRoute, routeHash, steps } from '../../../renderer/client/route.ts';

test('a damaged address opens the room that it names', () => {
  expect(readRoute('#/stash/%E0%A4')).toEqual({ kind: 'stash', itemId: '%E0%A4' });
  expect(readRoute('#/coats/%/cover/50%25%zz')).toEqual({
    kind: 'coat',
    planId: '%',
    step: 'cover',
    slotId: '50%25%zz',
  });
});

test('whatever stands in the address, there is a room for it', () => {
  const address = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.array(fc.constantFrom('stash', 'coats', 'cover', '%', '%E0%A4', '/', '#', 'a'), { maxLength: 6 }),
  );
  fc.assert(
    fc.property(address, (parts) => {
      const hash = `#/${typeof parts === 'string' ? parts : parts.join('/')}`;
      expect(readRoute(hash).kind).toMatch(/^[a-z]+$/);
    }),
    { seed: 20, numRuns: 300 },
  );
});

test('the address of a room leads back to it, whatever its ids are made of', () => {
  const id = fc.string({ unit: 'grapheme', minLength: 1 });
  const route = fc.oneof(
    fc.record({ kind: fc.constant('stash' as const), itemId: id }),
    fc.record({
      kind: fc.constant('coat' as const),
      planId: id,
      step: fc.constantFrom(...steps),
      slotId: id,
    }),
  );
  fc.assert(
    fc.property(route, (each: Route) => {
      expect(readRoute(routeHash(each))).toEqual(each);
    }),
    { seed: 21, numRuns: 300 },
  );
});
