import { describe, expect, test } from 'vitest';
import { askedDataFile, workshopFiles } from '../../../../main/database/file/data-file.ts';

describe('the workshop lies where the platform keeps a person’s data', () => {
  test.each([
    ['linux', {}, '/home/ada', '/home/ada/.local/share/bolt-and-baffle/workshop.sqlite'],
    ['linux', { XDG_DATA_HOME: '/srv/ada' }, '/home/ada', '/srv/ada/bolt-and-baffle/workshop.sqlite'],
    [
      'linux',
      { XDG_DATA_HOME: 'relative' },
      '/home/ada',
      '/home/ada/.local/share/bolt-and-baffle/workshop.sqlite',
    ],
    ['darwin', {}, '/Users/ada', '/Users/ada/Library/Application Support/bolt-and-baffle/workshop.sqlite'],
    ['win32', { APPDATA: 'D:\\Roaming' }, 'C:\\Users\\ada', 'D:\\Roaming\\bolt-and-baffle\\workshop.sqlite'],
    ['win32', {}, 'C:\\Users\\ada', 'C:\\Users\\ada\\AppData\\Roaming\\bolt-and-baffle\\workshop.sqlite'],
  ])('%s %j', (platform, env, home, dataFile) => {
    expect(workshopFiles(platform, env, home, undefined).dataFile).toBe(dataFile);
  });
});

test('a file that the maker names is taken, and the demo stands beside it', () => {
  expect(workshopFiles('linux', {}, '/home/ada', '/srv/coats.sqlite')).toEqual({
    folder: '/srv',
    dataFile: '/srv/coats.sqlite',
    localFile: '/srv/coats.sqlite',
    demoFile: '/srv/demo-coats.sqlite',
  });
});

test('--data is read in both spellings, and needs a file', () => {
  expect(askedDataFile(['node', 'host', '--data', '/a b/c.sqlite', '--attached'])).toBe('/a b/c.sqlite');
  expect(askedDataFile(['node', 'host', '--data=/d.sqlite'])).toBe('/d.sqlite');
  expect(askedDataFile(['node', 'host'])).toBeUndefined();
  expect(() => askedDataFile(['node', '--data'])).toThrow('needs a file');
  expect(() => askedDataFile(['node', '--data='])).toThrow('needs a file');
});
