import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { bindSlot, setCoatCount } from '../../../../shared-core/plan/edits/edit.ts';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { type Asking, openAsking, receivedCloth } from '../../asking.ts';

async function plan(asking: Asking, name: string): Promise<string> {
  const saved = await asking.get('savePlan', { plan: newPlan('any', name, '40'), basedOn: null, said: '' });
  return saved.planId;
}

describe('the season', () => {
  test('keeps its plans in the order they were put in, with how many of each', async () => {
    const asking = openAsking();
    const [lapwing, plover, curlew] = [
      await plan(asking, 'Lapwing'),
      await plan(asking, 'Plover'),
      await plan(asking, 'Curlew'),
    ];
    await asking.get('saveSeason', {
      entries: [
        { planId: plover, coatCount: 3 },
        { planId: curlew, coatCount: null },
        { planId: lapwing, coatCount: 11 },
      ],
    });
    const read = async () =>
      (await asking.get('readSeason', {})).entries.map(({ plan: { name }, coatCount }) => [name, coatCount]);
    expect(await read()).toEqual([
      ['Plover', 3],
      ['Curlew', null],
      ['Lapwing', 11],
    ]);
    await asking.get('saveSeason', {
      entries: [
        { planId: lapwing, coatCount: null },
        { planId: plover, coatCount: 3 },
      ],
    });
    expect(await read()).toEqual([
      ['Lapwing', null],
      ['Plover', 3],
    ]);
  });

  test('brings the newest plan, and the stash of the kinds that its plans use', async () => {
    const asking = openAsking();
    const planId = await plan(asking, 'Lapwing');
    const { itemId } = await receivedCloth(asking);
    await asking.get('saveSeason', { entries: [{ planId, coatCount: null }] });
    const { plan: before, revision } = await asking.get('readPlan', { planId });
    const bound = bindSlot(before, 'shell', itemId);
    const edited = bound.ok ? setCoatCount(bound.value.plan, 4) : undefined;
    if (!edited?.ok) throw new Error('the edit was refused');
    await asking.get('savePlan', { plan: edited.value.plan, basedOn: revision, said: 'bound' });
    const { entries, shelf, settings } = await asking.get('readSeason', {});
    expect(entries[0]?.plan.coatCount).toBe(4);
    expect(shelf.map(({ item }) => item.id)).toEqual([itemId]);
    expect(settings.currency).toBe('EUR');
  });

  test('a season without a plan reads as empty', async () => {
    expect(await openAsking().get('readSeason', {})).toMatchObject({ entries: [], shelf: [] });
  });

  test('a plan twice, a plan that is not there and half a coat are refused, and the old season stays', async () => {
    const asking = openAsking();
    const planId = await plan(asking, 'Lapwing');
    await asking.get('saveSeason', { entries: [{ planId, coatCount: 2 }] });
    const said = async (...entries: { planId: string; coatCount: number | null }[]) =>
      (await asking.refusal('saveSeason', { entries })).map(problemSentence).join('\n');
    expect(await said({ planId, coatCount: 1 }, { planId, coatCount: 2 })).toContain('names a plan twice');
    expect(await said({ planId: 'nowhere', coatCount: 1 })).toContain('The plan is not there');
    expect(await said({ planId, coatCount: 1.5 })).toBe(
      'Plan 1, number of coats is not a whole number. Type a whole number.',
    );
  });
});
