/** The calls that draw on the stash for a coat: setting aside, recording a cutting and taking it back. */
import { z } from 'zod';
import type { CutCoats, Cutting, CutShape, KeptRest, Met, SetAside } from '../stash/cutting.ts';
import { amount, id, name, positiveAmount, shortText } from './schemas.ts';

const mm = z.number().min(0).max(1e6);
const wholeCount = z.number().int().min(0).max(1e6);

const keptRest: z.ZodType<KeptRest> = z.strictObject({
  x: mm,
  y: mm,
  lengthMm: z.number().positive().max(1e6),
  widthMm: z.number().positive().max(1e5),
});

const cutShape: z.ZodType<CutShape> = z.strictObject({
  pieceId: id,
  size: z.string().max(80),
  name,
  ring: z.array(z.number().min(-1e6).max(1e6)).min(6).max(20_000),
  count: wholeCount,
  mirroredCount: wholeCount,
  isWashed: z.literal(true).exactOptional(),
});

const met: z.ZodType<Met> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('shapes'), shapes: z.array(cutShape).max(4000) }),
  z.strictObject({ kind: z.literal('amount'), amount }),
]);

const cutCoats: z.ZodType<CutCoats> = z.strictObject({
  size: z.string().max(80),
  coatCount: z.number().int().min(0).max(1000),
});

export const cuttingCalls = {
  /**
   * What a plan keeps others from using, as a whole: what it had set aside beyond this is released. An empty list
   * releases everything.
   */
  setAside: {
    changes: true,
    input: z.strictObject({
      planId: id,
      uses: z.array(z.strictObject({ lotId: id, lengthId: id.nullable(), amount: positiveAmount })).max(2000),
    }),
  },
  /**
   * Books a cutting: what is taken of each length or lot, and the remnants that come back. Uses what the plan had
   * set aside there; with releasesRest what it had set aside of these items beyond that is released.
   */
  recordCutting: {
    changes: true,
    input: z.strictObject({
      planId: id,
      /** The revision of the plan that was cut. */
      basedOn: z.number().int().min(1),
      /** Coats whose last piece is cut by it, size by size; earlier cuttings are not counted in. */
      coats: z.array(cutCoats).min(1).max(40),
      note: shortText,
      releasesRest: z.boolean(),
      slots: z
        .array(
          z.strictObject({
            slotId: id,
            met,
            lines: z
              .array(
                z.strictObject({
                  lotId: id,
                  lengthId: id.nullable(),
                  amount: positiveAmount,
                  /** Of the pieces; null for what is used up by amount. */
                  pieceAreaMm2: z.number().min(0).max(1e12).nullable(),
                  /** Of that: what is trimmed off quilted pieces. */
                  trimmedMm2: z.number().min(0).max(1e12).exactOptional(),
                  kept: z.array(keptRest).max(200),
                }),
              )
              .max(500),
          }),
        )
        .min(1)
        .max(100),
    }),
  },
  /** Takes a cutting back by an entry that reverses it: account and balances are then as if it had never been. */
  undoCutting: { changes: true, input: z.strictObject({ cuttingId: id }) },
  /** Cuttings of a plan, or of all plans, newest first. */
  listCuttings: { changes: false, input: z.strictObject({ planId: id.nullable() }) },
  readCutting: { changes: false, input: z.strictObject({ cuttingId: id }) },
} as const;

export interface CuttingOutputs {
  setAside: { readonly setAside: readonly SetAside[] };
  recordCutting: Cutting;
  undoCutting: Cutting;
  listCuttings: { readonly rows: readonly Cutting[] };
  readCutting: Cutting;
}
