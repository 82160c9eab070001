// @vitest-environment happy-dom
/** How often rooms of an open coat are drawn while its lays improve: at figures that they show, and at nothing else. */
import { act, type ComponentType, createElement, Profiler } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import { CoatContext } from '../../../../renderer/client/coat/coat-context.ts';
import { queryClient } from '../../../../renderer/client/queries/query-client.ts';
import { type OpenWorkshop, WorkshopContext } from '../../../../renderer/client/workshop.ts';
import { CoverRoom } from '../../../../renderer/rooms/cover/CoverRoom.tsx';
import { LayRoom } from '../../../../renderer/rooms/lay/LayRoom.tsx';
import { ToBuyRoom } from '../../../../renderer/rooms/to-buy/ToBuyRoom.tsx';
import type { Estimate } from '../../../../shared-core/flow/estimate.ts';
import type { SlotLay } from '../../../../shared-core/lay/plan-lay.ts';
import { job, laid, rectangle, shape } from '../../../core/lay/jobs.ts';
import { coatByHand, estimated, quiet } from './coat-by-hand.ts';

const workshop = {
  workshop: 'own',
  facts: { settings: { workshopName: '', system: 'metric', currency: 'EUR' } },
} as unknown as OpenWorkshop;

let root: Root | undefined;

beforeAll(() => {
  vi.stubGlobal('IS_REACT_ACT_ENVIRONMENT', true);
  // No file behind this window: ticks of the shopping list are asked for and refused.
  vi.stubGlobal('fetch', async () => Response.json({ ok: false, problems: [] }));
});

afterEach(() => act(() => root?.unmount()));

/** A room of a coat whose first figures stand, while lays are looked for in earnest. drawn: what is drawn anew, by name. */
async function roomWhileLaying(name: string, Room: ComponentType) {
  const coat = coatByHand();
  coat.store.getState().open();
  await quiet();
  await coat.last().end(await estimated(coat.last()));
  const pass = coat.last();
  const figures = coat.store.getState().estimate!;
  let count = 0;
  const place = document.body.appendChild(document.createElement('div'));
  root = createRoot(place);
  await act(async () =>
    root?.render(
      createElement(
        WorkshopContext,
        { value: workshop },
        createElement(
          CoatContext,
          { value: coat.store },
          createElement(Profiler, { id: name, onRender: () => count++ }, createElement(Room)),
        ),
      ),
    ),
  );
  await act(readsSettled);
  expect(place.querySelector('h1')?.textContent).toBe(name);
  /** How often the room is drawn by what happens in between. */
  const drawnBy = async (happens: () => void | Promise<void>): Promise<number> => {
    const before = count;
    await act(async () => happens());
    return count - before;
  };
  return { coat, pass, figures, place, drawnBy };
}

/** What the room reads of the file has been answered and shown. */
async function readsSettled(): Promise<void> {
  await expect.poll(() => queryClient.isFetching()).toBe(0);
  await new Promise((resolve) => setTimeout(resolve));
}

/** The lay of a slot, shorter by so much: only the figures matter here. */
function shorter({ job, result }: SlotLay, byMm: number) {
  const usedLengthMm = result.usedLengthMm.map((usedMm) => usedMm - byMm);
  return [job, { ...result, usedLengthMm }] as const;
}

function layOf({ lays }: Estimate, slotId: string): SlotLay {
  return lays.find((slotLay) => slotLay.slotId === slotId)!;
}

test.each([
  ['Cover', CoverRoom],
  ['To buy', ToBuyRoom],
])('%s is not drawn anew while lays improve, and once when their figures come', async (name, Room) => {
  const { pass, figures, drawnBy } = await roomWhileLaying(name, Room);
  for (const [index, slotId] of ['shell', 'lining', 'shell', 'lining'].entries()) {
    expect(await drawnBy(() => pass.onBegin(slotId))).toBe(0);
    expect(await drawnBy(() => pass.onBetter(...shorter(layOf(figures, slotId), index + 1)))).toBe(0);
    expect(await drawnBy(() => pass.onEnd(slotId))).toBe(0);
  }
  const next = await estimated(pass);
  expect(await drawnBy(() => pass.end(next))).toBe(1);
});

test('Lay is drawn anew at each better lay that it shows, and not at the clock of the search', async () => {
  const { pass, figures, place, drawnBy } = await roomWhileLaying('Lay', LayRoom);
  const shownMm = () => place.querySelector('[role=tab]')?.textContent;
  const before = shownMm();
  expect(await drawnBy(() => pass.onBegin('shell'))).toBe(0);
  expect(await drawnBy(() => pass.onEnd('shell'))).toBe(0);
  expect(await drawnBy(() => pass.onBetter(...shorter(layOf(figures, 'shell'), 20)))).toBe(1);
  expect(shownMm()).not.toBe(before);
  // Nothing here shows this lay, which may be one on other cloth.
  const elsewhere = job([shape('strip', rectangle(700, 90), { count: 2 })], { seed: 3 });
  expect(await drawnBy(() => pass.onBetter(elsewhere, laid(elsewhere, 20)))).toBe(0);
});
