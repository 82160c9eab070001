// @vitest-environment happy-dom
/** The address is followed wherever it is changed: by a press, by hand, by going back. */
import { act, createElement } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { goTo, type Route, routeHash, slotInAddress, useRoute } from '../../../renderer/client/route.ts';

vi.stubGlobal('IS_REACT_ACT_ENVIRONMENT', true);
let root: Root | undefined;
let here: Route | undefined;

function Place() {
  here = useRoute();
  return null;
}

beforeEach(async () => {
  window.location.hash = '';
  root = createRoot(document.body.appendChild(document.createElement('div')));
  await act(async () => root?.render(createElement(Place)));
});

afterEach(() => act(() => root?.unmount()));

test('a room is gone to, and its address names it', async () => {
  expect(here).toEqual({ kind: 'welcome' });
  await act(async () => goTo({ kind: 'coat', planId: 'p 1/2', step: 'cover', slotId: 'shell' }));
  expect(here).toEqual({ kind: 'coat', planId: 'p 1/2', step: 'cover', slotId: 'shell' });
  expect(window.location.hash).toBe('#/coats/p%201%2F2/cover/shell');
  expect(slotInAddress()).toBe('shell');
});

test('an address that is typed or damaged is followed as well', async () => {
  await act(async () => {
    window.location.hash = '#/stash/%E0%A4';
    window.dispatchEvent(new Event('hashchange'));
  });
  expect(here).toEqual({ kind: 'stash', itemId: '%E0%A4' });
});

test('each room is a step to go back, and walking along a list is none', async () => {
  const before = window.history.length;
  await act(async () => goTo({ kind: 'stash', itemId: null }));
  const arrived = window.history.length;
  expect(arrived).toBe(before + 1);
  for (const itemId of ['a', 'b', 'c']) {
    await act(async () => goTo({ kind: 'stash', itemId }, { leavesNoTrail: true }));
  }
  expect(here).toEqual({ kind: 'stash', itemId: 'c' });
  expect(window.history.length).toBe(arrived);
});

test('going to where one is already leaves no trail either', async () => {
  await act(async () => goTo({ kind: 'coats' }));
  const before = window.history.length;
  await act(async () => goTo({ kind: 'coats' }));
  expect(window.history.length).toBe(before);
  expect(window.location.hash).toBe(routeHash({ kind: 'coats' }));
});
