/** What stands in the form of a binding or a rib, and the band that it makes. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { ribRatios } from '../../../shared-core/plan/edits/bands.ts';
import type { Band } from '../../../shared-core/plan/model/coat-plan.ts';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import { quantityText, readNow, type Shown, type Units } from '../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../parts/forms/typed-form.ts';

export const bandKinds: readonly {
  readonly value: Band['kind'];
  readonly label: string;
  readonly name: string;
}[] = [
  {
    value: 'straight binding',
    label: say('typed-band.binding-on-the-straight'),
    name: say('typed-band.binding'),
  },
  {
    value: 'bias binding',
    label: say('typed-band.binding-on-the-bias'),
    name: say('typed-band.bias-binding'),
  },
  { value: 'rib', label: say('typed-band.rib-stretched-on'), name: say('typed-band.rib') },
];

/** What a band begins with: a binding folded to 1 cm on both sides, a rib of 6 cm with its seams. Common practice, no source. */
const usual = {
  binding: { cutWidthMm: 40, endsMm: 30 },
  rib: { cutWidthMm: 136, endsMm: 16 },
} as const;

/** What an open width of cloth is taken for until its item says one. */
const unknownWidthMm = 1000;

export interface TypedBand {
  kind: Band['kind'];
  name: string;
  slotId: string;
  edges: { pieceId: string; edge: string }[];
  isEach: boolean;
  width: string;
  ends: string;
  ratio: string;
  strip: string;
}

export type ReadBand = Omit<TypedBand, 'width' | 'ends' | 'ratio' | 'strip'> &
  Readonly<Record<'width' | 'ends' | 'ratio' | 'strip', number | null>>;

export function bandFields(kind: Band['kind']) {
  return {
    width: {
      label: say('typed-band.width-as-cut'),
      quantity: 'length',
      min: 0,
      hint:
        kind === 'rib'
          ? say('typed-band.twice-what-shows-and-two-seams')
          : say('typed-band.four-times-what-shows-on-one'),
    },
    ends: {
      label: say('typed-band.for-seam-or-ends'),
      quantity: 'length',
      min: 0,
      hint: say('typed-band.added-to-the-length-of-each'),
    },
    ratio: {
      label: say('typed-band.length-over-that-of-the-edges'),
      quantity: 'ratio',
      min: 0.3,
      max: 1.5,
      hint: say('typed-band.75-to-85-for-most-ribs'),
    },
    strip: {
      label: say('typed-band.longest-strip'),
      quantity: 'length',
      min: 0,
      hint: say('typed-band.across-the-cloth-its-usable-width'),
    },
  } as const satisfies Record<string, QuantityAsked>;
}

/** What the fields of a kind begin with. stripMm: usable width of what the band is cut from; null where it is not known. */
export function bandBegins(kind: Band['kind'], stripMm: number | null, { system }: Units) {
  const length = (mm: number): Shown => ({ value: mm, text: showQuantity('length', mm, { system }) });
  const { cutWidthMm, endsMm } = kind === 'rib' ? usual.rib : usual.binding;
  return {
    width: length(cutWidthMm),
    ends: length(endsMm),
    ratio: { value: ribRatios.usual, text: showQuantity('ratio', ribRatios.usual, { system }) },
    strip: length(stripMm ?? unknownWidthMm),
  };
}

/** stripOf: usable width of what fills a slot. */
export function bandForm(
  slotId: string,
  stripOf: (slotId: string) => number | null,
  units: Units,
): FormShape<TypedBand, ReadBand> {
  const begins = bandBegins('straight binding', stripOf(slotId), units);
  return {
    start: {
      kind: 'straight binding',
      name: say('typed-band.binding'),
      slotId,
      edges: [],
      isEach: false,
      width: begins.width.text,
      ends: begins.ends.text,
      ratio: begins.ratio.text,
      strip: begins.strip.text,
    },
    schema: ({ kind, slotId: chosen }) => {
      const fields = bandFields(kind);
      const known = bandBegins(kind, stripOf(chosen), units);
      return z.object({
        kind: z.enum(['straight binding', 'bias binding', 'rib']),
        name: z.string(),
        slotId: z.string(),
        edges: z.array(z.object({ pieceId: z.string(), edge: z.string() })),
        isEach: z.boolean(),
        width: quantityText(fields.width, units, known.width),
        ends: quantityText(fields.ends, units, known.ends),
        ratio: quantityText(fields.ratio, units, known.ratio),
        strip: quantityText(fields.strip, units, known.strip),
      });
    },
  };
}

/** The band as it stands while it is typed; a measure that cannot be read is NaN, and then it is none. */
export function bandNow(typed: TypedBand, stripMm: number | null, units: Units): Band {
  const fields = bandFields(typed.kind);
  const known = bandBegins(typed.kind, stripMm, units);
  const now = (name: keyof typeof fields) => readNow(fields[name], units, typed[name], known[name]);
  return bandOf({
    ...typed,
    width: now('width'),
    ends: now('ends'),
    ratio: now('ratio'),
    strip: now('strip'),
  });
}

export function bandOf({ kind, edges, isEach, width, ends, ratio, strip }: ReadBand): Band {
  return {
    kind,
    edges,
    isEach,
    cutWidthMm: width ?? Number.NaN,
    lengthRatio: kind === 'rib' ? (ratio ?? Number.NaN) : 1,
    endsMm: ends ?? 0,
    stripMm: kind === 'straight binding' ? strip : null,
  };
}
