import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fenwalkCoat } from '../../../shared-core/demo/coat.ts';
import { type Asking, dump, openAsking, receivedCloth, receivedFill, tempFolder } from '../asking.ts';
import { jpeg } from '../../fixtures/pictures.ts';

const photoBase64 = Buffer.from(jpeg(31, 640)).toString('base64');

/** What a maker would look for on the new computer. */
async function seen(asking: Asking, itemId: string, planId: string) {
  return {
    settings: (await asking.get('workshopFacts', {})).settings,
    item: await asking.get('readItem', { itemId }),
    photo: await asking.get('readPhoto', { itemId }),
    plan: await asking.get('readPlan', { planId }),
    coat: await asking.get('flowInput', { planId }),
  };
}

test('a workshop’s file that is copied to another computer, under any name, has everything in it', async () => {
  const here = openAsking();
  const { itemId } = await receivedCloth(here);
  await receivedFill(here, 1_234);
  await here.get('savePhoto', { itemId, photoBase64 });
  const { settings } = await here.get('workshopFacts', {});
  await here.get('saveSettings', { ...settings, workshopName: 'Thrush & Bramble', currency: 'GBP' });
  const { planId } = await here.get('savePlan', {
    plan: fenwalkCoat({ shell: itemId }),
    basedOn: null,
    said: 'Drafted',
  });
  const before = await seen(here, itemId, planId);
  here.services.close();

  const moved = join(tempFolder(), 'Thrush & Bramble 2027.baffle');
  copyFileSync(here.dataFile, moved);
  const rows = dump(here.dataFile);
  const there = openAsking({ dataFile: moved, demoFile: join(tempFolder(), 'demo.sqlite') });
  expect(await there.get('workshopFacts', {})).toMatchObject({ dataFile: moved, fileProblems: [] });
  expect(await seen(there, itemId, planId)).toEqual(before);
  expect(before.settings).toMatchObject({ workshopName: 'Thrush & Bramble', currency: 'GBP' });
  there.services.close();
  expect(dump(moved)).toBe(rows);
});
