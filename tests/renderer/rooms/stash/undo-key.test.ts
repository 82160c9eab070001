import { expect, test } from 'vitest';
import { isUndoKey } from '../../../../renderer/rooms/stash/undo-key.ts';

const pressed = {
  key: 'z',
  ctrlKey: true,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  defaultPrevented: false,
};
const page = (isField: boolean, isSheetOpen: boolean) => ({
  activeElement: { matches: () => isField } as unknown as Element,
  querySelector: () => (isSheetOpen ? ({} as Element) : null),
});

test('Ctrl Z and Cmd Z undo what was done in the stash', () => {
  expect(isUndoKey(pressed, page(false, false))).toBe(true);
  expect(isUndoKey({ ...pressed, ctrlKey: false, metaKey: true }, page(false, false))).toBe(true);
});

test('in a field they undo what was typed, and over an open sheet they do nothing to the room', () => {
  expect(isUndoKey(pressed, page(true, false))).toBe(false);
  expect(isUndoKey(pressed, page(false, true))).toBe(false);
});

test('Z alone, with Shift or with Alt is no undo, nor one that was taken already', () => {
  for (const other of [
    { ctrlKey: false },
    { shiftKey: true },
    { altKey: true },
    { defaultPrevented: true },
    { key: 'y' },
  ])
    expect(isUndoKey({ ...pressed, ...other }, page(false, false))).toBe(false);
});
