/** Shapes of what comes in through a door. Each is bound to the type it must give, so the two cannot part. */
import { z } from 'zod';
import { type MessageId, say } from '../wording/say.ts';
import type { PriceRules } from '../cost/price.ts';
import type { LayResult } from '../lay/job.ts';
import { isCalendarDate } from '../measure/calendar-date.ts';
import { oneLine, withoutControls } from '../measure/text/plain-signs.ts';
import type {
  CoatPlan,
  CutFrom,
  FillAim,
  Margin,
  MeasuredCoat,
  Notch,
  Piece,
  QuiltedMeasure,
  Quilting,
  QuiltingOrder,
  Slot,
} from '../plan/model/coat-plan.ts';
import type { Edge, Outline, Seam, Segment } from '../plan/model/outline.ts';
import { itemKinds, type ItemKind } from '../stash/kinds.ts';
import type { PriceBreak, SellingUnit } from '../stash/offer.ts';
import type { Flaw } from '../stash/stash.ts';

/** What is wrong, said in the language spoken when it is. */
const said = (id: MessageId) => ({ error: () => say(id) });

/** No piece, length or coordinate of this trade is larger: 1 km of cloth. */
const mm = z.number().min(-1e6).max(1e6);
const [positiveMm, distanceMm] = [z.number().positive().max(1e6), z.number().min(0).max(1e6)];
export const id = z.string().min(1).max(80);
export const name = z
  .string()
  .overwrite(oneLine)
  .min(1, said('common.is-empty'))
  .max(120, said('schemas.is-longer-than-120-letters'));
export const shortText = z.string().overwrite(withoutControls).max(500);
export const longText = z.string().overwrite(withoutControls).max(20_000);
export const isoDate = z.stringFormat('date', isCalendarDate);
export const priceMinor = z.number().int().min(0).max(1e11);
export const [amount, positiveAmount] = [z.number().min(0).max(1e9), z.number().positive().max(1e9)];
export const itemKind: z.ZodType<ItemKind> = z.enum(itemKinds as [ItemKind, ...ItemKind[]]);

export const flaw: z.ZodType<Flaw> = z.strictObject({
  x: distanceMm,
  y: distanceMm,
  widthX: positiveMm,
  widthY: positiveMm,
});

export const sellingUnit: z.ZodType<SellingUnit> = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('by length'),
    stepMm: positiveMm,
    widthMm: positiveMm,
    leastMm: distanceMm,
  }),
  z.strictObject({ kind: z.literal('sheet'), widthMm: positiveMm, lengthMm: positiveMm }),
  z.strictObject({ kind: z.literal('spool'), threadM: z.number().positive().max(1e6) }),
  z.strictObject({
    kind: z.literal('by mass'),
    stepG: z.number().positive().max(1e6),
    leastG: z.number().min(0).max(1e6),
  }),
  z.strictObject({ kind: z.literal('pack'), pieceCount: z.number().int().positive().max(1e6) }),
  z.strictObject({ kind: z.literal('each'), lengthMm: positiveMm.nullable() }),
]);

export const unitCount = z.number().int().min(1).max(1e6);
export const priceBreak: z.ZodType<PriceBreak> = z.strictObject({ fromCount: unitCount, priceMinor });

const point = z.strictObject({ x: mm, y: mm });
const segment: z.ZodType<Segment> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), to: point }),
  z.strictObject({ kind: z.literal('cubic'), control1: point, control2: point, to: point }),
]);
const stitch = z.enum(['301', '304', '401', '503', '504', '516', '605', 'hand']);
const edge: z.ZodType<Edge> = z.strictObject({
  name,
  segments: z.array(segment).min(1).max(2000),
  allowanceMm: z.number().min(0).max(500),
  seam: id.nullable(),
});
const outline: z.ZodType<Outline> = z.strictObject({ start: point, edges: z.array(edge).min(1).max(400) });
const notch: z.ZodType<Notch> = z.strictObject({ edge: name, atMm: distanceMm });
const quiltingOrder: z.ZodType<QuiltingOrder> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('outline') }),
  z.strictObject({ kind: z.literal('rough'), marginMm: z.number().positive().max(500) }),
  z.strictObject({
    kind: z.literal('panel'),
    marginMm: z.number().min(0).max(500),
    widthMm: z.number().positive().max(5000).nullable(),
    coats: z.enum(['each', 'all']),
  }),
]);
const cutFrom: z.ZodType<CutFrom> = z.strictObject({ slotId: id, plyCount: z.number().int().min(0).max(20) });
const piece: z.ZodType<Piece> = z.strictObject({
  id,
  name,
  outline,
  cutCount: z.number().int().min(1).max(1000),
  isMirrored: z.boolean(),
  foldEdge: name.nullable(),
  turns: z.enum(['grain', 'one way', 'free']),
  notches: z.array(notch).max(500),
  cutFrom: z.array(cutFrom).max(50),
  quilted: z.enum(['across', 'along']).nullable(),
  band: z
    .strictObject({
      kind: z.enum(['straight binding', 'bias binding', 'rib']),
      edges: z.array(z.strictObject({ pieceId: id, edge: name })).max(50),
      isEach: z.boolean(),
      cutWidthMm: z.number().min(1).max(1000),
      lengthRatio: z.number().min(0.3).max(1.5),
      endsMm: z.number().min(0).max(1000),
      stripMm: positiveMm.nullable(),
    })
    .exactOptional(),
  quiltingSpacingMm: z.number().positive().max(2000).exactOptional(),
  quiltingOrder: quiltingOrder.exactOptional(),
});
const seam: z.ZodType<Seam> = z.strictObject({
  id,
  label: name,
  stitch,
  threadSlotId: id,
  overcast: z.enum(['503', '504']).nullable(),
  topstitchRowCount: z.number().int().min(0).max(20),
  stitchLengthMm: z.number().positive().max(50).exactOptional(),
  firstSide: z
    .array(z.strictObject({ pieceId: id, edge: name }))
    .max(100)
    .optional(),
  ease: z.strictObject({ leastMm: mm, maxMm: mm }).optional(),
});
const margin: z.ZodType<Margin> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('share'), ratio: z.number().min(0).max(1) }),
  z.strictObject({ kind: z.literal('length'), lengthMm: z.number().min(0).max(10_000) }),
]);
const slot: z.ZodType<Slot> = z.strictObject({
  id,
  name,
  kind: itemKind,
  itemId: id.nullable(),
  isSeen: z.boolean(),
  isQuilted: z.boolean(),
  takeUpAlongRatio: z.number().min(0).max(2).nullable(),
  takeUpAcrossRatio: z.number().min(0).max(2).nullable(),
  amountPerCoat: amount.nullable(),
  alongEdges: z.array(z.strictObject({ pieceId: id, edge: name })).max(50),
  shorterByMm: mm,
  alongEveryCopy: z.boolean().exactOptional(),
  lengthRatio: z.number().min(0.3).max(1.5).exactOptional(),
  margin: margin.exactOptional(),
  quiltingOrder: quiltingOrder.exactOptional(),
  isCutUnwashed: z.literal(true).exactOptional(),
});
const quiltedMeasure: z.ZodType<QuiltedMeasure> = z.strictObject({
  battingPlyCount: z.number().int().min(0).max(20),
  spacingMm: z.number().positive().max(2000),
  riseMm: z.number().min(0).max(500).nullable(),
  overLinesRatio: z.number().min(0).max(2).nullable(),
  alongLinesRatio: z.number().min(0).max(2).nullable(),
});
const quilting: z.ZodType<Quilting> = z.strictObject({
  spacingMm: z.number().positive().max(2000),
  stitch,
  stitchLengthMm: z.number().positive().max(50),
  threadSlotId: id,
  order: quiltingOrder.exactOptional(),
  measures: z.array(quiltedMeasure).max(21).exactOptional(),
});

const measuredCoat: z.ZodType<MeasuredCoat> = z.strictObject({
  massG: z.number().positive().max(1e5).nullable(),
  packedCm3: z.number().positive().max(1e6).nullable(),
  clo: z.number().positive().max(20).nullable(),
});

const fillAim: z.ZodType<FillAim> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('loft'), loftMm: z.number().positive().max(500) }),
  z.strictObject({ kind: z.literal('weight'), gPerM2: z.number().positive().max(5000) }),
]);

export const coatPlan: z.ZodType<CoatPlan> = z.strictObject({
  id,
  name,
  size: z.string().overwrite(oneLine).max(80),
  coatCount: z.number().int().min(1, said('schemas.is-below-1')).max(1000, said('schemas.is-above-1-000')),
  slots: z.array(slot).max(100),
  pieces: z.array(piece).max(400),
  seams: z.array(seam).max(400),
  quilting: quilting.nullable(),
  clearanceMm: z.number().min(0).max(200),
  threadWastageRatio: z.number().min(0).max(2),
  sewingMinutesPerCoat: z.number().min(0).max(100_000),
  labourMinutesPerCoat: z.number().min(0).max(100_000).exactOptional(),
  notes: longText,
  bastingThreadSlotId: id.exactOptional(),
  fillAim: fillAim.exactOptional(),
  overfillFactor: z.number().positive().max(5).exactOptional(),
  spareFillRatio: z.number().min(0).max(1).exactOptional(),
  footLiftMm: z.number().positive().max(100).exactOptional(),
  isForChild: z.boolean().exactOptional(),
  measured: measuredCoat.exactOptional(),
  sizes: z
    .array(
      z.strictObject({
        size: z.string().overwrite(oneLine).min(1).max(80),
        coatCount: z.number().int().min(0).max(1000),
        pieces: z.array(piece).max(400),
        measured: measuredCoat.exactOptional(),
      }),
    )
    .max(40)
    .exactOptional(),
});

const wholeCount = z.number().int().min(0).max(1e9);
export const layResult: z.ZodType<LayResult> = z.strictObject({
  placements: z
    .array(
      z.strictObject({
        shape: wholeCount,
        length: wholeCount,
        x: mm,
        y: mm,
        turnDeg: z.number().min(-360).max(360),
        mirrored: z.boolean(),
        onFold: z.boolean(),
      }),
    )
    .max(50_000),
  unplaced: z
    .array(z.strictObject({ shape: wholeCount, mirrored: z.boolean(), count: wholeCount }))
    .max(50_000),
  usedLengthMm: z.array(distanceMm).max(10_000),
  utilisation: z.number().min(0).max(1.000001),
  floorMm: z.number().min(0).max(1e9),
  seed: z.number(),
  iterations: z.number().min(0),
  seconds: z.number().min(0),
  stoppedBy: z.enum(['under way', 'floor', 'time', 'iterations', 'maker', 'nothing left to try', 'by hand']),
});

const addition = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('margin'), ratio: z.number().min(0).max(0.95) }),
  z.strictObject({ kind: z.literal('mark-up'), ratio: z.number().min(0).max(20) }),
]);
const priceRules: z.ZodType<PriceRules> = z.strictObject({
  hourlyRateMinor: priceMinor.nullable(),
  isWorkLeftOut: z.boolean().exactOptional(),
  overhead: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('share'), ratio: z.number().min(0).max(10) }),
      z.strictObject({ kind: z.literal('per coat'), amountMinor: priceMinor }),
    ])
    .nullable(),
  wholesale: addition,
  retail: addition,
});

export const settings = z.strictObject({
  workshopName: z.string().overwrite(oneLine).max(120),
  system: z.enum(['metric', 'imperial']),
  /** ISO 4217 code of the workshop's one currency. */
  currency: z.string().regex(/^[A-Z]{3}$/, said('schemas.is-not-three-capital-letters-as')),
  /** How a coat's price is made; absent until the maker has said so. */
  pricing: priceRules.exactOptional(),
  /** Where system and currency come from: the locale of the window that first opened the workshop, or the maker. */
  unitsFrom: z.enum(['locale', 'maker']).exactOptional(),
  /** The list of first steps is not to be shown any more. */
  isFirstStepsPutAway: z.literal(true).exactOptional(),
});
export type Settings = z.infer<typeof settings>;

/** What came in of one item: kinds that lie as lengths name each length (mm), others an amount in their unit. */
export const receivedLot = z.strictObject({
  itemId: id,
  receivedOn: isoDate,
  supplier: shortText,
  dyeLot: shortText,
  priceMinor,
  amount: positiveAmount.nullable(),
  lengths: z
    .array(
      z.strictObject({
        widthMm: z.number().positive().max(1e5),
        lengthMm: z.number().positive().max(1e6),
        form: z.enum(['roll', 'cut', 'remnant', 'sheet']),
        flaws: z.array(flaw).max(200),
        count: z.number().int().min(1).max(500),
        /** It was washed before it came to the shelf. */
        isWashed: z.literal(true).exactOptional(),
      }),
    )
    .max(500),
});
