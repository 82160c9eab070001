import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTickCode, tickCode } from '../../../../shared-core/to-buy/phone/tick-code.ts';
import { readTicksFile, ticksFileKind } from '../../../../shared-core/to-buy/phone/ticks-file.ts';

const offers = ['cloth offer', 'zip offer', 'thread offer', 'fill offer', 'snap offer', 'label offer'];
const code = tickCode('plan-1', offers, new Set(['zip offer', 'label offer']));

function refusal(text: string, planId = 'plan-1', lists: readonly (readonly string[])[] = [offers]): string {
  const read = readTickCode(text, planId, lists);
  return read.ok ? 'taken' : read.problems.map(({ where, what }) => `${where} ${what}`).join();
}

describe('the code of the ticks', () => {
  test('comes back as it went, however many lines there are and however they are walked', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string({ minLength: 1 }), { minLength: 1, maxLength: 60 }),
        fc.infiniteStream(fc.boolean()),
        (offerIds, coins) => {
          const ticked = new Set(offerIds.filter(() => coins.next().value === true));
          const text = tickCode('a plan', offerIds, ticked);
          const read = readTickCode(text, 'a plan', [['another'], [...offerIds].reverse()]);
          expect(read.ok && new Set(read.value.ticked)).toEqual(ticked);
          expect(read.ok && read.value.ticked.length + read.value.open.length).toBe(offerIds.length);
        },
      ),
      { seed: 77, numRuns: 200 },
    );
  });

  test('is short, in groups, and is read in small letters and with signs that look alike', () => {
    expect(code).toMatch(/^([0-9A-HJKMNP-TV-Z]{4}-)+[0-9A-HJKMNP-TV-Z]{1,4}$/);
    expect(code.length).toBeLessThan(15);
    const typed = ` ${code.toLowerCase().replaceAll('0', 'o').replaceAll('1', 'l').replaceAll('-', ' ')} `;
    const read = readTickCode(typed, 'plan-1', [offers]);
    expect(read.ok && read.value.ticked).toEqual(['label offer', 'zip offer']);
  });

  test('tells why it is refused', () => {
    expect(refusal('')).toBe('The code is too short');
    expect(refusal('hello, world')).toContain('has a “,”, which no code has');
    const slip = code.replace(/.$/, code.endsWith('7') ? '8' : '7');
    expect(refusal(slip)).toBe('The code is mistyped: its signs do not fit each other');
    expect(refusal(code, 'plan-2')).toBe('The code is of the list of another coat');
    expect(refusal(code, 'plan-1', [offers.slice(1)])).toContain('is of an older list');
    expect(refusal(code)).toBe('taken');
  });

  test('shows nearly every slip of one sign', () => {
    const plain = code.replaceAll('-', '');
    const slips = [...plain].flatMap((sign, at) =>
      [...'0123456789ABCDEFGHJKMNPQRSTVWXYZ']
        .filter((other) => other !== sign)
        .map((other) => plain.slice(0, at) + other + plain.slice(at + 1)),
    );
    const passed = slips.filter((text) => refusal(text) === 'taken');
    // Two signs let one slip in a thousand through.
    expect(passed.length).toBeLessThanOrEqual(1);
  });
});

describe('the file of the ticks', () => {
  const line = (offerId: string, isTicked: boolean) => ({ offerId, name: `the ${offerId}`, isTicked });
  const file = (more: object = {}) =>
    JSON.stringify({
      kind: ticksFileKind,
      version: 1,
      planId: 'plan-1',
      lines: [line('zip offer', true), line('fill offer', false), line('gone offer', true)],
      ...more,
    });
  const why = (text: string) => {
    const read = readTicksFile(text, 'plan-1', offers);
    return read.ok ? 'taken' : read.problems[0]!.what;
  };

  test('ticks what is still on the list, and names what is not', () => {
    expect(readTicksFile(file(), 'plan-1', offers)).toEqual({
      ok: true,
      value: { ticked: ['zip offer'], open: ['fill offer'], goneNames: ['the gone offer'] },
    });
  });

  test('whatever stands in it, nothing but offers of the list comes out of it', () => {
    const kinds = fc.constantFrom<unknown>(ticksFileKind, 'other', null);
    const lines = fc.oneof(
      fc.jsonValue(),
      fc.array(
        fc.record({
          offerId: fc.constantFrom<unknown>('zip offer', 'x', 1),
          name: fc.string(),
          isTicked: fc.boolean(),
        }),
      ),
    );
    fc.assert(
      fc.property(kinds, lines, (kind, given) => {
        const read = readTicksFile(file({ kind, lines: given }), 'plan-1', offers);
        const taken = read.ok ? [...read.value.ticked, ...read.value.open] : [];
        expect(taken.every((offerId) => offers.includes(offerId))).toBe(true);
      }),
      { seed: 5, numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(readTicksFile(text, 'plan-1', offers).ok).toBe(false);
        expect(readTickCode(text, 'plan-1', [offers]).ok).toBe(false);
      }),
      { seed: 6, numRuns: 300 },
    );
  });

  test('is refused where it is something else, of another coat, or spoiled', () => {
    expect(why(file({ planId: 'plan-2' }))).toBe('holds the ticks of another coat');
    expect(why(file({ version: 2 }))).toBe('is of a later version of this program');
    for (const text of [
      '',
      '{',
      'null',
      '[]',
      '{"kind":"other"}',
      file({ lines: [{}] }),
      file({ lines: 'x' }),
    ])
      expect(why(text)).toBe('holds no ticks of a shopping list');
    expect(why(`${file()}${' '.repeat(300_000)}`)).toBe('holds no ticks of a shopping list');
  });
});
