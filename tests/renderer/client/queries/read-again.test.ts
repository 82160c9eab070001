// @vitest-environment happy-dom
/** What is read again after a change, and what becomes of a reading that is refused. */
import { QueryObserver } from '@tanstack/react-query';
import { act, createElement } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { CallName, Workshop } from '../../../../shared-core/contract/contract.ts';
import { ok, type Problem, type Result, err } from '../../../../shared-core/measure/problem.ts';

const busy: Problem = { where: 'The workshop file', what: 'was busy', fix: 'Wait a moment.' };

/** A door that counts what is asked of it. */
let asked: string[] = [];
let answer: (name: CallName, workshop: Workshop, input: unknown) => Result<unknown>;

vi.stubGlobal('IS_REACT_ACT_ENVIRONMENT', true);
const door = new Proxy(
  {},
  {
    get: (_, name: string) => async (workshop: Workshop, input: unknown) => {
      asked.push(`${workshop} ${name}`);
      return answer(name as CallName, workshop, input);
    },
  },
);
Object.assign(window, { boltAndBaffle: door });
const { onRefreshAll, queryClient, readOptions, refreshAll } = await import(
  '../../../../renderer/client/queries/query-client.ts'
);
const { ask, useReadIn } = await import('../../../../renderer/client/queries/reads.ts');
const { change } = await import('../../../../renderer/client/queries/changes.ts');
const { ReadProblems } = await import('../../../../renderer/parts/notes/ReadProblems.tsx');

let root: Root | undefined;

beforeEach(() => {
  queryClient.clear();
  asked = [];
  answer = (_, __, input) => ok({ echo: input });
});

afterEach(() => act(() => root?.unmount()));

/** Something on the screen that shows this read. */
function shown(workshop: Workshop, itemId: string) {
  const observer = new QueryObserver(queryClient, readOptions(workshop, 'readItem', { itemId }));
  return observer.subscribe(() => {});
}

const untilIdle = () => expect.poll(() => queryClient.isFetching()).toBe(0);

const offer = {
  offerId: null,
  itemId: 'i1',
  supplier: 'Marl & Wick',
  unit: { kind: 'pack', pieceCount: 10 },
  priceMinor: 250,
  pricedOn: '2026-11-02',
} as const;

test('a change has read again what shows it, in its own workshop alone, before it answers', async () => {
  const leave = [shown('own', 'i1'), shown('demo', 'i1')];
  await untilIdle();
  asked = [];
  await change('own', 'saveOffer', offer);
  expect(asked).toEqual(['own saveOffer', 'own readItem']);
  for (const each of leave) each();
});

test('what is not shown is forgotten and not read, so that nobody sees it old', async () => {
  const leave = shown('own', 'i1');
  await untilIdle();
  leave();
  await ask('own', 'readPhoto', { itemId: 'i1' });
  asked = [];
  await change('own', 'saveOffer', offer);
  expect(asked).toEqual(['own saveOffer']);
  expect(queryClient.getQueryData(readOptions('own', 'readItem', { itemId: 'i1' }).queryKey)).toBeUndefined();
  // The photo has nothing to do with it.
  expect(queryClient.getQueryData(readOptions('own', 'readPhoto', { itemId: 'i1' }).queryKey)).toBeDefined();
});

test('a change that is refused changed nothing, so nothing is read again', async () => {
  const leave = shown('own', 'i1');
  await untilIdle();
  asked = [];
  answer = () => err(busy);
  expect(await change('own', 'saveOffer', offer)).toEqual(err(busy));
  expect(asked).toEqual(['own saveOffer']);
  leave();
});

test('a refusal is an answer: it is asked once and told as it was said', async () => {
  answer = () => err(busy);
  expect(await ask('own', 'listPlans', {})).toEqual(err(busy));
  expect(asked).toEqual(['own listPlans']);
});

test('what fails without an answer is told in a sentence all the same', async () => {
  answer = (name) => {
    if (name === 'listPlans') throw new TypeError('the door is gone');
    return ok({});
  };
  const told = await ask('own', 'listPlans', {});
  expect(told.ok).toBe(false);
  if (!told.ok) expect(told.problems[0]?.what).toContain('the door is gone');
});

test('changes made elsewhere have all read again that is shown, in either workshop, and tell the open coat', async () => {
  const leave = [shown('own', 'i1'), shown('demo', 'i2')];
  await untilIdle();
  asked = [];
  let toldCount = 0;
  const end = onRefreshAll(() => toldCount++);
  await refreshAll();
  expect(asked.sort()).toEqual(['demo readItem', 'own readItem']);
  expect(toldCount).toBe(1);
  end();
  await refreshAll();
  expect(toldCount).toBe(1);
  for (const each of leave) each();
});

function Names() {
  const read = useReadIn('own', 'listPlans', {});
  return createElement(
    'div',
    null,
    createElement(ReadProblems, { read }),
    createElement('p', { id: 'names' }, (read.data?.rows ?? []).map(({ name }) => name).join()),
  );
}

test('a reading that is refused later keeps what stood there, says so, and can be tried again', async () => {
  const plans = (name: string) => ok({ rows: [{ id: 'p', name }] });
  answer = () => plans('Fenwalk');
  const place = document.body.appendChild(document.createElement('div'));
  root = createRoot(place);
  const settle = () =>
    act(async () => {
      await untilIdle();
      await new Promise((resolve) => setTimeout(resolve));
    });
  const names = () => place.querySelector('#names')?.textContent;
  await act(async () => root?.render(createElement(Names)));
  await settle();
  expect(names()).toBe('Fenwalk');
  expect(place.querySelector('[role=alert]')).toBeNull();

  answer = () => err(busy);
  await act(async () => refreshAll());
  await settle();
  expect(names()).toBe('Fenwalk');
  expect(place.querySelector('[role=alert]')?.textContent).toContain('The workshop file was busy.');
  expect(place.textContent).toContain('What is shown was read before that.');

  answer = () => plans('Tarn');
  await act(async () => place.querySelector('button')?.click());
  await settle();
  expect(names()).toBe('Tarn');
  expect(place.querySelector('[role=alert]')).toBeNull();
});
