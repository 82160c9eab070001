import { describe, expect, test } from 'vitest';
import { bandForm, bandNow, bandOf } from '../../../../renderer/rooms/plan/typed-band.ts';
import { newShape, shapeForm, shapeNow } from '../../../../renderer/rooms/plan/typed-shape.ts';

const metric = { system: 'metric', currency: 'EUR' } as const;
const begins = { allowanceMm: 15, slotIds: ['shell'], lengthText: (mm: number) => `${mm} mm` };

describe('a shape by typed measures', () => {
  const form = shapeForm(begins, metric);

  test('is drawn once all its measures can be read, and not before', () => {
    const { start } = form;
    const typed = { ...start, measures: { ...start.measures, length: '4 1/2 in' } };
    expect(shapeNow(typed, metric)).toBeNull();
    const whole = { ...typed, measures: { ...typed.measures, width: '6 cm' } };
    expect(shapeNow(whole, metric)).toEqual({ kind: 'strip', lengthMm: 114.3, widthMm: 60 });
    expect(shapeNow({ ...whole, measures: { ...whole.measures, width: '6 c' } }, metric)).toBeNull();
  });

  test('is asked for its own measures alone, and the missing one is named as it stands in the form', () => {
    const { start, schema } = form;
    const typed = { ...start, kind: 'circle' as const, measures: { ...start.measures, length: 'long' } };
    const read = schema(typed).parse(typed);
    const refused = newShape(read);
    expect(refused.ok ? [] : refused.problems.map(({ where }) => where)).toEqual(['Diameter']);
    const round = { ...typed, measures: { ...typed.measures, width: '8 cm' } };
    expect(newShape(schema(round).parse(round))).toMatchObject({
      ok: true,
      value: { shape: { kind: 'circle', diameterMm: 80 }, count: 2, allowanceMm: 15, slotIds: ['shell'] },
    });
  });

  test('is never mirrored where it is cut on the fold', () => {
    const typed = {
      ...form.start,
      isMirrored: true,
      isOnFold: true,
      measures: { ...form.start.measures, length: '10', width: '20' },
    };
    expect(newShape(form.schema(typed).parse(typed))).toMatchObject({
      ok: true,
      value: { isMirrored: false, isOnFold: true },
    });
  });
});

describe('a binding or a rib', () => {
  const stripOf = (slotId: string) => (slotId === 'shell' ? 1424.6 : null);
  const form = bandForm('shell', stripOf, metric);

  test('a straight binding is cut across the whole usable width of its cloth', () => {
    const band = bandOf(form.schema(form.start).parse(form.start));
    expect(band).toMatchObject({ kind: 'straight binding', cutWidthMm: 40, endsMm: 30, lengthRatio: 1 });
    // To the last digit, though the field shows it rounded.
    expect(band.stripMm).toBe(1424.6);
    expect(bandNow(form.start, stripOf('shell'), metric)).toEqual(band);
  });

  test('a rib is shorter than its edges, and knows no strips', () => {
    const typed = { ...form.start, kind: 'rib' as const, width: '13 cm', ratio: '78 %' };
    expect(bandOf(form.schema(typed).parse(typed))).toMatchObject({
      cutWidthMm: 130,
      lengthRatio: 0.78,
      stripMm: null,
    });
  });

  test('a width that cannot be read yet makes no band', () => {
    expect(bandNow({ ...form.start, width: '4 c' }, null, metric).cutWidthMm).toBeNaN();
  });
});
