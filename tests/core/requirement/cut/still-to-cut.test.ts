import { describe, expect, test } from 'vitest';
import { stillToCut } from '../../../../shared-core/requirement/cut/still-to-cut.ts';
import type { Need, ShapesNeed } from '../../../../shared-core/requirement/need.ts';
import type { Cutting, Met } from '../../../../shared-core/stash/cutting.ts';
import { plan } from '../../../fixtures/small-workshop.ts';

const panel = (length: number) => [0, 0, length, 0, length, 480, 0, 480];

function shell(length: number, count: number, mirroredCount = 0, size = '40'): ShapesNeed {
  const areaMm2 = length * 480;
  return {
    kind: 'shapes',
    slotId: 'shell',
    shapes: [
      {
        shapeId: 'back',
        pieceId: 'back',
        size,
        name: 'Back',
        ring: Float64Array.from(panel(length)),
        areaMm2,
        count,
        mirroredCount,
        turnsDeg: [0, 180],
      },
    ],
    areaMm2: areaMm2 * (count + mirroredCount),
    basis: [],
  };
}

const coat = { ...plan({ size: '40', sizes: [{ size: '42', coatCount: 2, pieces: [] }] }) };

const thread: Need = {
  kind: 'amount',
  slotId: 'thread',
  counted: 'thread',
  amount: 900,
  parts: [],
  wantedLengthMm: null,
  basis: [],
};

function cut(slotId: string, met: Met): Cutting {
  return {
    id: `cutting of ${slotId}`,
    planId: 'plan',
    revision: 1,
    at: '2026-11-25T10:00:00.000Z',
    coats: [],
    note: '',
    undoes: null,
    undoneBy: null,
    movements: [],
    slots: [{ slotId, slotName: slotId, kind: 'cloth', met, lines: [] }],
  };
}

const backs = (length: number, count: number, mirroredCount = 0, size = '40') =>
  cut('shell', {
    kind: 'shapes',
    shapes: [{ pieceId: 'back', size, name: 'Back', ring: panel(length), count, mirroredCount }],
  });

describe('what is still to cut', () => {
  test('is everything before the first cutting', () => {
    const needs = [shell(900, 6), thread];
    expect(stillToCut(coat, needs, [])).toBe(needs);
  });

  test('is the pieces of the coats that are left, and their share of the thread', () => {
    const [rest, restThread] = stillToCut(
      coat,
      [shell(900, 6, 5), thread],
      [backs(900, 2, 1), backs(900, 1, 1), cut('thread', { kind: 'amount', amount: 310.5 })],
    );
    expect(rest).toMatchObject({ shapes: [{ count: 3, mirroredCount: 3 }], areaMm2: 900 * 480 * 6 });
    expect(restThread).toMatchObject({ amount: 589.5 });
  });

  test('is all backs anew when the coat was lengthened after they were cut', () => {
    expect(stillToCut(coat, [shell(940, 6)], [backs(900, 2)])[0]).toMatchObject({ shapes: [{ count: 6 }] });
  });

  test('is no back that was cut longer than it is now: it is trimmed', () => {
    expect(stillToCut(coat, [shell(860, 6)], [backs(900, 4)])[0]).toMatchObject({ shapes: [{ count: 2 }] });
  });

  test('is nothing where more was cut than the plan now asks for', () => {
    expect(stillToCut(coat, [shell(900, 2)], [backs(900, 4)])).toEqual([
      { ...shell(900, 2), shapes: [], areaMm2: 0 },
    ]);
    expect(
      stillToCut(coat, [{ ...thread, amount: 5 }], [cut('thread', { kind: 'amount', amount: 9 })])[0],
    ).toMatchObject({
      amount: 0,
    });
  });

  test('is the same whichever size is at hand', () => {
    const cut42 = backs(900, 2, 0, '42');
    const of = (size: string) => shell(900, 2, 0, size);
    expect(stillToCut(coat, [of('42')], [cut42])[0]).toMatchObject({ shapes: [] });
    expect(stillToCut(coat, [of('40')], [cut42])[0]).toMatchObject({ shapes: [{ count: 2 }] });
    const other = { ...coat, size: '42', sizes: [{ size: '40', coatCount: 2, pieces: [] }] };
    expect(stillToCut(other, [of('42')], [cut42])[0]).toMatchObject({ shapes: [] });
    expect(stillToCut(other, [of('40')], [cut42])[0]).toMatchObject({ shapes: [{ count: 2 }] });
  });

  test('is no piece that was cut before its size was called something else', () => {
    expect(stillToCut(coat, [shell(900, 3)], [backs(900, 2, 0, 'EU 40')])[0]).toMatchObject({
      shapes: [{ count: 1 }],
    });
  });

  test('never counts a cut piece twice, for its own size and for another', () => {
    const needs = [shell(900, 2, 0, '40'), { ...shell(900, 2, 0, '42'), slotId: 'shell' }];
    const both = { ...needs[0]!, shapes: needs.flatMap(({ shapes }) => shapes) };
    expect(stillToCut(coat, [both], [backs(900, 3, 0, 'EU 38')])[0]).toMatchObject({
      shapes: [{ size: '42', count: 1 }],
    });
  });
});
