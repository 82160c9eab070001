import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { pageScript, pageScriptHash } from '../../../../shared-core/to-buy/phone/page-script.ts';
import { pageStyle, pageStyleHash } from '../../../../shared-core/to-buy/phone/page-style.ts';
import { phonePage } from '../../../../shared-core/to-buy/phone/phone-page.ts';
import { item, onShelf, plan, slot, toBuyList } from '../../../fixtures/small-workshop.ts';
import { line } from '../small-list.ts';

const hostile = `"><script>alert(1)</script><img src=x onerror=alert(1)>' & </title></style>`;

function page(name: string): string {
  const cloth = { ...item('cloth', 'shell item', { widthMm: 1400 }), name, colour: name };
  const of = plan({ name, slots: [slot('shell', 'cloth', { name })] });
  const list = toBuyList([line('shell item', name, { kind: 'each', lengthMm: null }, 2, 123_450)]);
  return phonePage(
    { plan: of, shelf: [onShelf(cloth)] },
    list,
    { system: 'metric', currency: 'EUR' },
    { arrangement: 'supplier', ticked: new Set() },
    '2026-11-29',
  );
}

describe('the page for the phone', () => {
  test('runs its own script and style alone: their hashes are those of their texts', () => {
    const hash = (text: string) => createHash('sha256').update(text).digest('base64');
    expect(pageScriptHash).toBe(hash(pageScript));
    expect(pageStyleHash).toBe(hash(pageStyle));
    const html = page('Taffeta');
    expect(html).toContain(`<script>${pageScript}</script>`);
    expect(html).toContain(`<style>${pageStyle}</style>`);
    const rules = /Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!;
    expect(rules.split('; ')).toEqual([
      "default-src 'none'",
      `script-src 'sha256-${pageScriptHash}'`,
      `style-src 'sha256-${pageStyleHash}'`,
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });

  test('names nothing outside itself', () => {
    const html = page('Taffeta');
    expect(html).not.toMatch(/https?:| src=| href=|@import|url\(|<link|<iframe|<form/);
  });

  test('has as many tags with a hostile name as with a tame one', () => {
    const tags = (html: string) => [...html.matchAll(/<[a-z!/][^\s>]*/gi)].map(([tag]) => tag);
    expect(tags(page(hostile))).toEqual(tags(page('Taffeta')));
    expect(page(hostile)).toContain('&quot;&gt;&lt;script&gt;alert(1)');
  });
});
