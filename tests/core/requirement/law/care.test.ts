import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { care } from '../../../../shared-core/requirement/law/care.ts';
import { beforeWashMm } from '../../../../shared-core/stash/shrinkage.ts';
import { type careProcesses, careSteps } from '../../../../shared-core/requirement/law/care-limits.ts';
import { careLimitWords } from '../../../../shared-core/requirement/finished/finished-words.ts';
import { ironLimitC } from '../../../../shared-core/requirement/law/iron.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { filled, nothingChosen, smallCoat } from '../small-coat.ts';

const coat = smallCoat({
  slots: [
    slot('shell', 'cloth'),
    slot('lining', 'cloth'),
    slot('batting', 'batting'),
    slot('thread', 'thread'),
  ],
});
const kinds = (items: ReturnType<typeof filled>) => care(coat, items).conflicts.map(({ kind }) => kind);
const shell = item('cloth', 'taffeta', {
  fibre: '100 % nylon',
  careWash: 'wash at 30',
  shrinkageAlongRatio: 0,
});

describe('shrinkage', () => {
  it('300 mm that shrink 5 % must be 315.8 mm before the wash, not 315', () => {
    expect(beforeWashMm(300, 0.05)).toBeCloseTo(315.789, 3);
    expect(() => beforeWashMm(300, 1)).toThrow(RangeError);
  });
  it('what was cut larger is right after the wash', () => {
    const share = fc.double({ min: 0, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 1, max: 9000, noNaN: true }), (p, mm) => {
        expect(beforeWashMm(mm, p) * (1 - p)).toBeCloseTo(mm, 6);
      }),
    );
  });
  it('a flannel lining that shrinks is to be washed first, and warns beside a shell that does not', () => {
    const flannel = item('cloth', 'flannel', {
      careWash: 'wash at 30',
      shrinkageAlongRatio: 0.06,
      shrinkageAcrossRatio: 0.03,
    });
    const found = care(coat, filled({ shell, lining: flannel }));
    expect(found.prewash).toEqual([
      {
        slotId: 'lining',
        slotName: 'lining',
        alongRatio: 0.06,
        acrossRatio: 0.03,
        assumed: null,
        isBeforeCutting: true,
      },
    ]);
    expect(found.conflicts.map(({ kind }) => kind)).toEqual(['mixed shrinkage']);
    expect(found.conflicts[0]?.slotIds).toEqual(['lining', 'shell']);
    expect(found.conflicts[0]?.says).toContain('lining shrinks 6 % and shell 0 %');
  });
  it('two that shrink alike are no conflict, nor is one whose shrinkage nobody knows', () => {
    const alike = item('cloth', 'poplin', { careWash: 'wash at 30', shrinkageAlongRatio: 0.015 });
    expect(kinds(filled({ shell, lining: alike }))).toEqual([]);
    expect(kinds(filled({ shell, lining: item('cloth', 'poplin', { careWash: 'wash at 30' }) }))).toEqual([]);
  });
});

describe('care of the whole coat', () => {
  const limit = (items: ReturnType<typeof filled>, process: (typeof careProcesses)[number]) =>
    care(coat, items).limits.find((one) => one.process === process)!;
  const label = (items: ReturnType<typeof filled>) => care(coat, items).label.lines.map(({ text }) => text);
  it('a warm-wash lining in a cold-wash shell is washed cold', () => {
    const items = filled({ shell, lining: item('cloth', 'poplin', { careWash: 'wash at 60' }) });
    expect(limit(items, 'careWash')).toMatchObject({ limit: 'wash at 30', slotIds: ['shell'] });
    expect(label(items)[0]).toBe('Machine wash cold (30 °C, 86 °F).');
  });
  it('the processes are independent: a lining for dry cleaning forbids the wash, and a shell that bears no solvent the dry cleaning', () => {
    const items = filled({
      shell: item('cloth', 'taffeta', { careWash: 'wash at 30', careProfessional: 'do not dry clean' }),
      lining: item('cloth', 'melton', { careWash: 'do not wash', careProfessional: 'dry clean P' }),
    });
    expect([limit(items, 'careWash').limit, limit(items, 'careProfessional').limit]).toEqual([
      'do not wash',
      'do not dry clean',
    ]);
    const found = care(coat, items).conflicts.find(({ kind }) => kind === 'no cleaning');
    expect(found?.says).toBe(
      'Not to be washed: lining. Not to be dry cleaned: shell. The coat cannot be cleaned in any usual way.',
    );
    expect(label(items).slice(0, 1)).toEqual(['Do not wash.']);
  });
  it('a shell that can be washed does not make dry cleaning harmless', () => {
    const items = filled({
      shell: item('cloth', 'taffeta', { careWash: 'wash at 40' }),
      lining: item('cloth', 'melton', { careWash: 'do not wash', careProfessional: 'dry clean P' }),
      batting: item('batting', 'fleece', { careProfessional: 'dry clean F' }),
    });
    // Of the shell it is not known, so it is forbidden and said.
    expect(limit(items, 'careProfessional')).toMatchObject({
      limit: 'dry clean F',
      slotIds: ['batting'],
      unknownSlotIds: ['shell'],
    });
    expect(label(items).at(-1)).toBe('Do not dry clean.');
    expect(care(coat, items).label.asides.join(' ')).toContain(
      'forbidden while they are not known of a part',
    );
    expect(careLimitWords(coat, limit(items, 'careProfessional'))).toBe(
      'dry clean F, because of batting; not written down yet of shell',
    );
  });
  it('the coat bears in each process no more than any of its parts', () => {
    const choice = (process: (typeof careProcesses)[number]) =>
      fc.option(fc.constantFrom(...careSteps(process)));
    const facts = fc.record({
      careWash: choice('careWash'),
      careBleach: choice('careBleach'),
      careDry: choice('careDry'),
      careIron: choice('careIron'),
      careProfessional: choice('careProfessional'),
    });
    fc.assert(
      fc.property(facts, facts, facts, (a, b, c) => {
        const all = [a, b, c];
        const { limits } = care(
          coat,
          filled({
            shell: item('cloth', 'shell', a as object),
            lining: item('cloth', 'lining', b as object),
            batting: item('batting', 'batting', c as object),
          }),
        );
        for (const { process, limit: found } of limits) {
          const steps = careSteps(process);
          const said = all.flatMap((part) => part[process] ?? []);
          expect(found).toBe(
            said.length > 0 ? steps[Math.min(...said.map((one) => steps.indexOf(one)))] : null,
          );
        }
      }),
    );
  });
  it('down is tumbled dry, and a lining that bears no dryer conflicts with it', () => {
    const stuffed = smallCoat({ slots: [slot('shell', 'cloth'), slot('fill', 'fill')] });
    const down = item('fill', 'plumage', {
      fibre: '90 % duck down, 10 % duck feather',
      careWash: 'wash at 30, gentle',
      careDry: 'tumble dry low',
    });
    const dried = (careDry: 'line dry' | 'tumble dry low') =>
      care(
        stuffed,
        filled({ shell: item('cloth', 'taffeta', { careWash: 'wash at 30', careDry }), fill: down }),
      );
    expect(dried('tumble dry low').conflicts).toEqual([]);
    expect(dried('tumble dry low').label.lines.map(({ text }) => text)).toContain(
      'Tumble dry low with clean balls until the filling is dry and full again.',
    );
    expect(dried('line dry').conflicts.map(({ kind }) => kind)).toEqual(['drying of down']);
    expect(dried('line dry').conflicts[0]?.says).toContain('shell bears no tumble dryer (line dry)');
  });
  it('an elastic counts as a part of the coat, a snap only where something is said of it', () => {
    const trimmed = smallCoat({
      slots: [slot('shell', 'cloth'), slot('cord', 'fastening'), slot('snaps', 'fastening')],
    });
    const found = care(
      trimmed,
      filled({
        shell: item('cloth', 'drill', { careWash: 'wash at 60', careProfessional: 'dry clean P' }),
        cord: item('fastening', 'cord', { form: 'elastic', careWash: 'wash at 40' }),
        snaps: item('fastening', 'snap', { form: 'snap' }),
      }),
    );
    const of = (process: string) => found.limits.find((one) => one.process === process);
    expect(of('careWash')).toMatchObject({ limit: 'wash at 40', slotIds: ['cord'], unknownSlotIds: [] });
    expect(of('careProfessional')?.unknownSlotIds).toEqual(['cord']);
  });
  it('materials whose care is not written down are named, process by process', () => {
    const items = filled({ shell, batting: item('batting', 'fleece') });
    expect(limit(items, 'careWash').unknownSlotIds).toEqual(['lining', 'batting']);
    // The shell's iron follows from its fibre.
    expect(limit(items, 'careIron')).toMatchObject({
      limit: 'iron at 110',
      unknownSlotIds: ['lining', 'batting'],
    });
    expect(care(coat, nothingChosen).limits.map((one) => one.limit)).toEqual([null, null, null, null, null]);
    expect(care(coat, nothingChosen).label.lines.map(({ text }) => text)).toEqual([
      'Do not bleach.',
      'Do not dry clean.',
    ]);
  });
  it('the draft of a label says on what basis it must stand, and which edition was not read', () => {
    const asides = care(coat, nothingChosen).label.asides.join(' ');
    expect(asides).toContain('reasonable basis');
    expect(asides).toContain('edition of 2023 has replaced that of 2012');
  });
  it('a cotton lining wants a hotter iron than a nylon shell bears', () => {
    const cotton = item('cloth', 'poplin', { fibre: '100 % cotton', careWash: 'wash at 30' });
    expect(kinds(filled({ shell, lining: cotton }))).toEqual(['iron heat']);
    const polyester = item('cloth', 'satin', { fibre: '100 % polyester', careWash: 'wash at 30' });
    expect(kinds(filled({ shell, lining: polyester }))).toEqual([]);
  });
  it('a mix bears no more heat than its tenderest fibre', () => {
    expect(ironLimitC(item('cloth', 'mix', { fibre: '90 % cotton, 10 % nylon' }))).toBe(110);
    expect(ironLimitC(item('cloth', 'pure', { fibre: '100 % cotton' }))).toBe(200);
    expect(ironLimitC(item('cloth', 'unknown'))).toBeNull();
  });
});
