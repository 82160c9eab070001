import { describe, expect, test } from 'vitest';
import { historyOf, redone, stepped, undone } from '../../../renderer/rooms/lay/hand/hand-history.ts';
import { handKey } from '../../../renderer/rooms/lay/hand/hand-keys.ts';
import {
  fittingView,
  revealing,
  startingView,
  zoomedAt,
} from '../../../renderer/rooms/lay/hand/hand-view.ts';
import { lengthAt, tablePlaces, tableSize } from '../../../renderer/rooms/lay/hand/table-places.ts';
import type { HandLay } from '../../../shared-core/lay/by-hand.ts';
import { job, length, rectangle, shape } from '../../core/lay/jobs.ts';

const lay = (): HandLay => ({ placements: [], pinned: new Set(), aside: [] });

describe('steps on the cutting table', () => {
  test('go back and forth, and a new step forgets what was undone', () => {
    const [a, b, c] = [lay(), lay(), lay()];
    const there = stepped(stepped(historyOf(a), b), c);
    expect(undone(undone(there)).now).toBe(a);
    expect(redone(undone(there)).now).toBe(c);
    expect(stepped(undone(there), lay()).future).toEqual([]);
    expect(undone(historyOf(a)).now).toBe(a);
  });

  test('that change nothing are none', () => {
    const begun = historyOf(lay());
    expect(stepped(begun, begun.now)).toBe(begun);
  });
});

describe('what is in sight', () => {
  const room = { width: 1000, height: 400 };

  test('stays under the pointer while I zoom', () => {
    const view = { x: 30, y: -12, scale: 0.3 };
    const after = zoomedAt(view, 1.7, 500, 200);
    const mmAt = (one: typeof view) => [(500 - one.x) / one.scale, (200 - one.y) / one.scale];
    expect(mmAt(after)[0]).toBeCloseTo(mmAt(view)[0]!, 9);
    expect(mmAt(after)[1]).toBeCloseTo(mmAt(view)[1]!, 9);
  });

  test('is the whole table when I ask for it, and at first its start at a good height', () => {
    const table = { width: 16_000, height: 1450 };
    const whole = fittingView(room, table);
    expect(whole.x + table.width * whole.scale).toBeLessThanOrEqual(room.width);
    const first = startingView(room, table);
    expect(first.y + table.height * first.scale).toBeLessThanOrEqual(room.height);
    expect(first.scale).toBeGreaterThan(3 * whole.scale);
  });

  test('is the piece that I chose, moved no further than needed', () => {
    const view = { x: 0, y: 0, scale: 1 };
    const box = { x: 1500, y: 100, width: 200, height: 100 };
    const after = revealing(view, room, box);
    expect(after.x + 1700).toBe(room.width - 16);
    expect(after.y).toBe(0);
    expect(revealing(after, room, box)).toEqual(after);
  });
});

describe('lengths on the table', () => {
  const asked = job([shape('square', rectangle(50, 50), {})], {
    lengths: [length('remnant', 400, 900), length('roll', 1400, null)],
  });
  const places = tablePlaces(asked, [300, 2000]);

  test('lie one below the other, the endless one longer than what is used of it', () => {
    expect(places[1]!.topMm).toBeGreaterThan(400);
    expect(places[0]!.drawnMm).toBe(900);
    expect(places[1]!.drawnMm).toBeGreaterThanOrEqual(2600);
    expect(tableSize(places).height).toBe(places[1]!.topMm + 1400);
  });

  test('take the piece that is dropped on them', () => {
    expect(lengthAt(places, 100)).toEqual({ length: 0, y: 300 });
    expect(lengthAt(places, places[1]!.topMm + 10)).toEqual({ length: 1, y: 1390 });
    expect(lengthAt(places, -500).length).toBe(0);
  });
});

test('letters mean the same in either case, and other commands are left to the window', () => {
  const pressed = { ctrlKey: false, metaKey: false, shiftKey: false };
  expect(handKey({ ...pressed, key: 'R' })).toEqual({ does: 'turn' });
  expect(handKey({ ...pressed, key: 'z', ctrlKey: true })).toEqual({ does: 'undo' });
  expect(handKey({ ...pressed, key: 'Z', metaKey: true, shiftKey: true })).toEqual({ does: 'redo' });
  expect(handKey({ ...pressed, key: 'p', ctrlKey: true })).toBeNull();
  expect(handKey({ ...pressed, key: 'Tab' })).toBeNull();
});
