import { describe, expect, test } from 'vitest';
import {
  cuttingCall,
  emptyCutting,
  isSameProposal,
  keptRests,
  lineDraft,
  ownAmounts,
  withLine,
  withRest,
} from '../../../../renderer/rooms/cutting/cutting-drafts.ts';
import type { ProposedLine, ProposedSlot } from '../../../../shared-core/cover/cutting-proposal.ts';
import type { LayRect } from '../../../../shared-core/lay/job.ts';

const collar: LayRect = { x: 40, y: 900, widthX: 310, widthY: 220 };
const strip: LayRect = { x: 1100, y: 0, widthX: 700, widthY: 150 };
const patch: LayRect = { x: 55, y: 905, widthX: 305, widthY: 210 };

function line(amount: number, rests: readonly LayRect[], lengthId = 'first length'): ProposedLine {
  return {
    lotId: 'a lot',
    lengthId,
    amount,
    free: 4200,
    pieceAreaMm2: 900_000,
    rests,
    placed: [],
  } as unknown as ProposedLine;
}

function slots(...lines: readonly ProposedLine[]): ProposedSlot[] {
  return [
    {
      slotId: 'shell',
      itemId: 'cloth',
      met: { kind: 'shapes', shapes: [] },
      lines,
      isShort: false,
    } as unknown as ProposedSlot,
  ];
}

const quick = line(2400, [collar, strip]);

describe('a rest that the maker puts into the bin', () => {
  const own = withRest(lineDraft(emptyCutting, 'shell', quick), collar, false);
  const draft = withLine(emptyCutting, 'shell', quick, own);

  test('is binned, and the other one kept', () => {
    expect(keptRests(quick, lineDraft(draft, 'shell', quick))).toEqual([strip]);
  });

  test('is that very rest when the same rests come in another order', () => {
    const turned = { ...quick, rests: [strip, collar] };
    expect(keptRests(turned, own)).toEqual([strip]);
  });

  test('bins no rest of a better lay', () => {
    const better = line(2310, [strip, patch]);
    expect(keptRests(better, lineDraft(draft, 'shell', better))).toEqual([strip, patch]);
  });

  test('bins no rest of another length or another slot', () => {
    const other = line(2400, [collar, strip], 'second length');
    expect(keptRests(other, lineDraft(draft, 'shell', other))).toEqual([collar, strip]);
    expect(keptRests(quick, lineDraft(draft, 'lining', quick))).toEqual([collar, strip]);
  });

  test('comes back to the shelf when the maker says so', () => {
    expect(keptRests(quick, withRest(own, collar, true))).toEqual([collar, strip]);
  });
});

describe('an amount that the maker typed', () => {
  const typed = { value: 2500, text: '2.5 m', misread: null };
  const draft = withLine(emptyCutting, 'shell', quick, { amount: typed, dropped: [] });

  test('is booked for the lay that it was typed beside', () => {
    expect(booked(quick)).toBe(2500);
  });

  test('is not booked for a better lay on the same length', () => {
    expect(booked(line(2310, [strip]))).toBe(2310);
  });

  test('keeps nothing from being booked once it belongs to another lay, and cannot be read', () => {
    const unread = { value: 2400, text: '2.5 mm m', misread: 'It cannot be read.' };
    const spoiled = withLine(emptyCutting, 'shell', quick, { amount: unread, dropped: [] });
    expect(ownAmounts(spoiled, slots(quick))).toEqual([unread]);
    expect(ownAmounts(spoiled, slots(line(2310, [strip])))).toEqual([]);
    expect(ownAmounts({ ...spoiled, leftOut: ['shell'] }, slots(quick))).toEqual([]);
  });

  function booked(shown: ProposedLine): number | undefined {
    const input = { plan: { id: 'a plan' }, revision: 3, cuttings: [] } as unknown as Parameters<
      typeof cuttingCall
    >[0];
    return cuttingCall(input, [], slots(shown), draft, true).slots[0]?.lines[0]?.amount;
  }
});

test('the coats that are booked are those of this cutting, not those cut before it', () => {
  const cuttings = [{ coats: [{ size: '40', coatCount: 2 }] }, { coats: [{ size: '42', coatCount: 1 }] }];
  const input = { plan: { id: 'a plan' }, revision: 3, cuttings } as unknown as Parameters<
    typeof cuttingCall
  >[0];
  const inAll = [
    { size: '40', coatCount: 5 },
    { size: '42', coatCount: 1 },
    { size: '44', coatCount: 4 },
  ];
  expect(cuttingCall(input, inAll, slots(quick), emptyCutting, true).coats).toEqual([
    { size: '40', coatCount: 3 },
    { size: '42', coatCount: 0 },
    { size: '44', coatCount: 4 },
  ]);
});

test('a lay is a better one only where it cuts other amounts or leaves other rests', () => {
  expect(isSameProposal(slots(quick), slots({ ...quick }))).toBe(true);
  expect(isSameProposal(slots(quick), slots(line(2310, [collar, strip])))).toBe(false);
  expect(isSameProposal(slots(quick), slots(line(2400, [collar, patch])))).toBe(false);
});
