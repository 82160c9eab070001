import { describe, expect, it } from 'vitest';
import {
  amountWords,
  coverHeadline,
  coverSentences,
  type WordsContext,
} from '../../../shared-core/cover/cover-words.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import type { CoverState, SlotCover } from '../../../shared-core/cover/slot-cover.ts';
import { clothLot, item, lot, onShelf, plan, slot } from '../../fixtures/small-workshop.ts';

const context: WordsContext = {
  plan: plan({
    slots: [
      slot('shell', 'cloth'),
      slot('snaps', 'fastening'),
      slot('front zip', 'fastening'),
      slot('sewing thread', 'thread'),
      slot('down', 'fill'),
      slot('cross', 'cloth', { itemId: null }),
    ],
  }),
  shelf: [
    onShelf(
      { ...item('cloth', 'shell item'), name: 'Peatwater nylon' },
      clothLot('shell item', 'autumn', 1473, [4300], 7000, { dyeLot: 'P-2207' }),
      { ...clothLot('shell item', 'spring', 1473, [910], 900, { receivedOn: '2026-04-14' }), dyeLot: '' },
    ),
    onShelf(
      { ...item('fastening', 'snaps item'), name: 'Tarnish snap' },
      lot('snaps item', 'tin', 40, 31, 300),
    ),
    onShelf({ ...item('fastening', 'front zip item'), name: 'Clasper zip' }),
    onShelf({ ...item('thread', 'sewing thread item'), name: 'Ropewalk' }),
    onShelf({ ...item('fill', 'down item'), name: 'Eiderdown' }),
  ],
  system: 'metric',
};

function covered(more: Partial<SlotCover>): SlotCover {
  const slotId = more.slotId ?? 'shell';
  return {
    slotId,
    itemId: `${slotId} item` as SlotCover['itemId'],
    state: 'covered',
    uses: [],
    shortage: null,
    lay: null,
    warnings: [],
    remnants: [],
    substitutes: [],
    ...more,
  };
}

function use(lotId: string, amount: number, free: number): SlotCover['uses'][number] {
  return {
    lotId: lotId as SlotCover['uses'][number]['lotId'],
    lengthId: null,
    amount,
    free,
    layLength: null,
  };
}

const shortage = { amount: 1520, widthMm: 1473, wantedLengthMm: null, missingPieceCount: 7 };

describe('how a slot stands, in sentences', () => {
  it('a covered slot says what is taken of what is free, and from where', () => {
    expect(
      coverSentences(covered({ uses: [use('autumn', 3200, 4300), use('spring', 750, 910)] }), context),
    ).toEqual([
      'The shell is covered by Peatwater nylon: 3.2 m of the 4.3 m free in dye lot P-2207 and 0.75 m of the 0.91 m free in the lot of 14 Apr 2026.',
    ]);
  });

  it('a short cloth says by how much, in which width, and how many pieces have no room', () => {
    expect(coverSentences(covered({ state: 'short', shortage }), context)).toEqual([
      'The shell is short by 1.52 m of 1.47 m cloth (Peatwater nylon): 7 pieces have no room.',
    ]);
    const one = { ...shortage, missingPieceCount: 1 };
    expect(coverSentences(covered({ state: 'short', shortage: one }), context)[0]).toMatch(
      /: 1 piece has no room\.$/,
    );
  });

  it('speaks of yards and inches to a maker who measures in them', () => {
    expect(
      coverSentences(covered({ state: 'short', shortage }), { ...context, system: 'imperial' })[0],
    ).toContain('short by 1.66 yd of 58 in cloth');
  });

  it('snaps are, a zip is, and a zip says how long it must be', () => {
    const missing = { amount: 9, widthMm: null, wantedLengthMm: null, missingPieceCount: 9 };
    expect(coverSentences(covered({ slotId: 'snaps', state: 'short', shortage: missing }), context)).toEqual([
      'The snaps are short by 9 pieces (Tarnish snap).',
    ]);
    const zip = { amount: 2, widthMm: null, wantedLengthMm: 650, missingPieceCount: 2 };
    expect(coverSentences(covered({ slotId: 'front zip', state: 'short', shortage: zip }), context)).toEqual([
      'The front zip is short by 2 pieces of at least 650 mm (Clasper zip).',
    ]);
  });

  it('a cross is one thing, though it ends in s', () => {
    expect(coverSentences(covered({ slotId: 'cross', state: 'short', shortage }), context)[0]).toMatch(
      /^The cross is short by 1\.52 m/,
    );
  });

  it('an open slot says that nothing is chosen, and nothing else', () => {
    expect(coverSentences(covered({ slotId: 'cross', state: 'open', itemId: null }), context)).toEqual([
      'Nothing is chosen for the cross yet.',
    ]);
  });

  it('a slot that no piece is cut from is not called covered', () => {
    expect(coverSentences(covered({}), context)).toEqual(['Nothing is cut from the shell yet.']);
  });

  it('names what a remnant can carry, then what asks for care', () => {
    const sentences = coverSentences(
      covered({
        state: 'covered with care',
        uses: [use('autumn', 3200, 4300)],
        remnants: [
          {
            lengthId: 'r' as SlotCover['remnants'][number]['lengthId'],
            lengthMm: 910,
            pieceNames: ['Cuff', 'Hood side', 'Patch pocket'],
          },
        ],
        warnings: ['cut from 2 dye lots: compare them in daylight first'],
      }),
      context,
    );
    expect(sentences.slice(1)).toEqual([
      'The remnant of 0.91 m can carry the cuff, the hood side and the patch pocket.',
      'Cut from 2 dye lots: compare them in daylight first.',
    ]);
  });
});

describe('an amount in the words of its kind', () => {
  it.each([
    ['shell', 1520, '1.52 m'],
    ['sewing thread', 1092.2, '1093 m'],
    ['down', 340, '340 g'],
    ['snaps', 5.2, '6 pieces'],
    ['snaps', 1, '1 piece'],
    // A sum of tenths that stands a hair above two is two snaps, not three.
    ['snaps', 2 + 1e-12, '2 pieces'],
  ])('%s: %s', (slotId, amount, words) => {
    expect(amountWords({ slotId }, amount, context)).toBe(words);
  });
});

describe('the headline', () => {
  const covers = (states: readonly CoverState[]) => states.map((state) => covered({ state }));

  it.each<[readonly CoverState[], string]>([
    [[], 'The plan has no slots yet.'],
    [['covered', 'covered with care'], 'The stash covers the whole plan.'],
    [['covered', 'short', 'covered'], 'One of three slots is short.'],
    [['short', 'short', 'covered', 'open'], 'Two of four slots are short, one still to be chosen.'],
    [['open', 'open', 'covered'], 'Two of three slots still to be chosen.'],
  ])('%j', (states, words) => {
    expect(coverHeadline(covers(states))).toBe(words);
  });

  it('never mixes words and figures', () => {
    const many = Array.from({ length: 23 }, (_, index) => (index < 4 ? 'short' : 'covered') as CoverState);
    expect(coverHeadline(covers(many))).toBe('4 of 23 slots are short.');
  });
});

describe('a list in a sentence', () => {
  it.each([
    [[], ''],
    [['cuff'], 'cuff'],
    [['cuff', 'hood'], 'cuff and hood'],
    [['cuff', 'hood', 'hem'], 'cuff, hood and hem'],
  ])('%j', (words, sentence) => {
    expect(listed(words)).toBe(sentence);
  });
});
