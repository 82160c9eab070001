import { generateKeyPairSync, sign } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { releaseSource } from '../../../../main/services/workshop/release-source.ts';
import { isLater, readNews } from '../../../../main/services/workshop/release-news.ts';
import { root } from '../../../../main/launch/install.mjs';
import { openAsking } from '../../asking.ts';

const pair = generateKeyPairSync('ed25519');
const publicKey = pair.publicKey.export({ type: 'spki', format: 'pem' }).toString();
const privateKey = pair.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString();
const source = { address: 'https://news.boltandbaffle.example/news.txt', publicKey };
const program = { version: '1.4.9', runsOn: [{ name: 'Node', version: '24.0.0' }] };
const news = {
  program: 'bolt-and-baffle',
  version: '1.5.0',
  date: '2027-02-13',
  words: 'Hoods with three panels.',
};

function signedBy(key: string, body: string): Buffer {
  return Buffer.from(`${sign(null, Buffer.from(body), key).toString('base64')}\n${body}`);
}

const said = (bytes: Uint8Array) => readNews(bytes, source, program.version);
const good = () => signedBy(privateKey, JSON.stringify(news));

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('news of a later version', () => {
  test('are told when the makers have signed them', () => {
    const { program: _, ...told } = news;
    expect(said(good())).toEqual({ ok: true, value: { news: told } });
  });

  test('are none where the version is this one or an earlier', () => {
    for (const version of ['1.4.9', '1.4.8', '0.99.99', '1.3.12']) {
      expect(said(signedBy(privateKey, JSON.stringify({ ...news, version })))).toEqual({
        ok: true,
        value: { news: null },
      });
    }
    expect([isLater('1.10.0', '1.9.9'), isLater('2.0.0', '10.0.0'), isLater('1.4.10', '1.4.9')]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('are refused with one byte changed, wherever it is', () => {
    const bytes = good();
    for (let at = 0; at < bytes.length; at += 7) {
      const changed = Buffer.from(bytes);
      changed[at] = changed[at]! ^ 4;
      expect(said(changed).ok, `byte ${at}`).toBe(false);
    }
  });

  test('are refused from anybody else, unsigned, and for another program', () => {
    const stranger = generateKeyPairSync('ed25519')
      .privateKey.export({ type: 'pkcs8', format: 'pem' })
      .toString();
    const others = [
      signedBy(stranger, JSON.stringify(news)),
      Buffer.from(JSON.stringify(news)),
      Buffer.from(`\n${JSON.stringify(news)}`),
      Buffer.alloc(0),
      signedBy(privateKey, JSON.stringify({ ...news, program: 'another' })),
      signedBy(privateKey, JSON.stringify({ ...news, version: '2' })),
      signedBy(privateKey, '{'),
    ];
    expect(others.map((bytes) => said(bytes).ok)).toEqual(others.map(() => false));
  });

  test('can be signed as the contributor docs say', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-news-'));
    const file = join(folder, 'news.json');
    writeFileSync(file, JSON.stringify(news));
    const script = join(root, 'main/launch/sign-news.mjs');
    const made = spawnSync(process.execPath, [script, file], {
      env: { ...process.env, BOLT_NEWS_KEY: privateKey },
    });
    expect(said(made.stdout)).toMatchObject({ ok: true, value: { news: { version: '1.5.0' } } });
    expect(spawnSync(process.execPath, [script, file], { env: {} }).status).toBe(2);
    rmSync(folder, { recursive: true, force: true });
  });
});

describe('the network', () => {
  test('is asked when the maker asks, once, and by https alone', async () => {
    const fetched = vi.fn(async () => new Response(new Uint8Array(good())));
    vi.stubGlobal('fetch', fetched);
    const { get, ask } = openAsking({ program, releaseSource: source });
    expect(await get('programFacts', {})).toMatchObject({ version: '1.4.9', newsAddress: source.address });
    await get('workshopFacts', {});
    expect(fetched).not.toHaveBeenCalled();
    expect(await get('askForNews', {})).toMatchObject({ news: { version: '1.5.0' } });
    expect(fetched).toHaveBeenCalledOnce();
    expect(fetched.mock.calls[0]).toEqual([
      source.address,
      expect.objectContaining({ redirect: 'error', credentials: 'omit' }),
    ]);
    const plain = openAsking({ program, releaseSource: { ...source, address: 'http://news.example/' } });
    expect(await plain.ask('askForNews', {})).toMatchObject({ ok: false });
    expect(fetched).toHaveBeenCalledOnce();
    fetched.mockImplementation(async () => new Response(new Uint8Array(70_000)));
    expect(await ask('askForNews', {})).toMatchObject({
      problems: [{ what: expect.stringContaining('too large') }],
    });
    fetched.mockImplementation(async () => Promise.reject(new Error('no route')));
    expect(await ask('askForNews', {})).toMatchObject({
      problems: [{ what: expect.stringContaining('no route') }],
    });
  });

  test('is never asked by a build that knows no place for news, as this one', async () => {
    const fetched = vi.fn();
    vi.stubGlobal('fetch', fetched);
    expect(releaseSource).toBeNull();
    const { ask } = openAsking({ program });
    expect(await ask('askForNews', {})).toMatchObject({
      ok: false,
      problems: [{ where: 'News of later versions' }],
    });
    expect(fetched).not.toHaveBeenCalled();
  });

  test('version and change log say the same', () => {
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    expect(/^## (\S+)/m.exec(readFileSync(join(root, 'CHANGELOG.md'), 'utf8'))?.[1]).toBe(version);
  });
});
