import { describe, expect, test } from 'vitest';
import { placeOfFind, placesByName } from '../../../renderer/client/find-places.ts';
import { stepNames, steps } from '../../../renderer/client/route.ts';

const named = steps.map((step) => ({ step, name: stepNames[step] }));

describe('where the search leads', () => {
  test('before anything is typed: every room, and every step of the open coat first', () => {
    const places = placesByName('', 'plan-1', named);
    expect(places[0]).toMatchObject({ name: 'Plan', hash: '#/coats/plan-1/plan' });
    expect(places.map(({ name }) => name)).toContain('Settings');
    expect(placesByName('', null, named).some(({ detail }) => detail === 'this coat')).toBe(false);
  });

  test('rooms by any part of their names, whatever the capitals', () => {
    expect(placesByName('MEAS draft', null, named).map(({ name }) => name)).toEqual([
      'Draft a coat from measures',
    ]);
    expect(placesByName('nothing of the kind', 'plan-1', named)).toEqual([]);
  });

  test('an offer leads to its item, and says whose it is', () => {
    const place = placeOfFind({ kind: 'offer', itemId: 'i 1', name: 'Fen nylon', supplier: 'Marl & Wick' });
    expect(place).toMatchObject({ hash: '#/stash/i%201', detail: 'offer by Marl & Wick' });
  });

  test('two finds never share a place in the list', () => {
    const item = {
      kind: 'item',
      itemId: 'i1',
      name: 'Fen',
      itemKind: 'cloth',
      colour: '',
      isPutAway: true,
    } as const;
    const offer = { kind: 'offer', itemId: 'i1', name: 'Fen', supplier: 'Marl' } as const;
    expect(placeOfFind(item).id).not.toBe(placeOfFind(offer).id);
    expect(placeOfFind(item).detail).toBe('cloth, put away');
  });
});
