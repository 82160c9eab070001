import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MenuItemConstructorOptions } from 'electron';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openedFile, startOn } from '../../../main/doors/opened-file.ts';
import type { BoltAndBaffleApi } from '../../../shared-core/contract/contract.ts';

let folder: string;
let standIn: typeof import('./electron-stand-in.ts');
const argv = process.argv;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-opened-'));
  mkdirSync(join(folder, 'shop'));
  vi.stubEnv('XDG_DATA_HOME', folder);
  vi.stubEnv('APPDATA', folder);
  vi.resetModules();
  standIn = await import('./electron-stand-in.ts');
  Object.assign(standIn.scene, { appPath: folder, home: folder, isPackaged: true });
});

afterEach(() => {
  standIn.app.emit('will-quit');
  process.argv = argv;
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

async function start(...words: string[]): Promise<BoltAndBaffleApi> {
  process.argv = ['bolt-and-baffle', ...words];
  await import('../../../main/doors/electron.ts');
  await vi.waitUntil(() => standIn.scene.windows.length > 0);
  await import('../../../main/doors/preload.ts');
  return standIn.scene.exposed.get('boltAndBaffle') as BoltAndBaffleApi;
}

const shop = () => join(folder, 'shop', 'Thrush & Bramble.baffle');

test('a workshop that is double clicked is the one that opens, and Settings names the versions', async () => {
  const api = await start('--some-switch', shop());
  expect(await api.workshopFacts('own', {})).toMatchObject({ value: { dataFile: shop() } });
  expect(await api.programFacts('own', {})).toMatchObject({
    value: { version: '7.8.9', folder: join(folder, 'shop'), newsAddress: null },
  });
});

test('nothing but a workshop’s file is taken for one', () => {
  expect(openedFile(['prog', '--x', '-y.baffle', 'notes.txt'])).toBeUndefined();
  expect(openedFile(['prog.baffle'])).toBeUndefined();
  expect(openedFile(['prog', 'C:\\Shop\\OURS.BAFFLE'])).toBe('C:\\Shop\\OURS.BAFFLE');
  expect(startOn('/a b.baffle', false, '/app')).toEqual(['/app', '--data', '/a b.baffle']);
});

test('another workshop that is opened ends this one, which has kept everything, and starts anew on that', async () => {
  await start();
  const event = { preventDefault: vi.fn() };
  standIn.app.emit('open-file', event, shop());
  expect(event.preventDefault).toHaveBeenCalledOnce();
  expect([standIn.scene.restarts, standIn.scene.endings]).toEqual([[['--data', shop()]], ['quit']]);
});

test('the workshop that is open already is only shown', async () => {
  await start(shop());
  standIn.app.emit('open-file', { preventDefault: vi.fn() }, shop());
  expect([standIn.scene.restarts, standIn.scene.endings]).toEqual([[], []]);
});

test('the menu opens a workshop that is chosen, and nothing where none is', async () => {
  await start();
  const { submenu } = standIn.scene.menu.find(({ label }) => label === 'File')!;
  const item = (submenu as MenuItemConstructorOptions[]).find(({ label }) => label === 'Open a workshop…')!;
  const press = item.click as () => void;
  press();
  await new Promise((later) => setTimeout(later, 20));
  expect(standIn.scene.restarts).toEqual([]);
  standIn.scene.chosenFiles = [shop()];
  press();
  await vi.waitUntil(() => standIn.scene.restarts.length > 0);
  expect(standIn.scene.restarts).toEqual([['--data', shop()]]);
});
