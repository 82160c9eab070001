/** What the maker may still change of a proposed cutting: which slots, the true amounts, and which rests are kept. */
import type { CallInput, FlowInput } from '../../../shared-core/contract/contract.ts';
import type { ProposedLine, ProposedSlot } from '../../../shared-core/cover/cutting-proposal.ts';
import type { LayRect } from '../../../shared-core/lay/job.ts';
import { coatsCut, type CutCoats } from '../../../shared-core/stash/cutting.ts';
import { type Cut, cutCost } from '../../../shared-core/stash/cut-cost.ts';
import type { QuantityDraft } from '../../parts/forms/DraftField.tsx';

export interface LineDraft {
  /** Null: as proposed. */
  readonly amount: QuantityDraft | null;
  /** Rests that go to the bin, each by its rectangle. */
  readonly dropped: readonly string[];
}

export interface CuttingDraft {
  readonly leftOut: readonly string[];
  /** By what the line proposed: a change made on one lay says nothing of another lay on the same length. */
  readonly lines: Readonly<Record<string, LineDraft>>;
  readonly note: string;
}

export const emptyCutting: CuttingDraft = { leftOut: [], lines: {}, note: '' };

/** A rest by what it is: where it lies and how large it is, to the tenth of a millimetre. */
export function restKey({ x, y, widthX, widthY }: LayRect): string {
  return [x, y, widthX, widthY].map((mm) => mm.toFixed(1)).join(' ');
}

function lineKey(slotId: string, line: ProposedLine): string {
  const { lotId, lengthId, amount, rests } = line;
  return [slotId, lotId, lengthId ?? '', amount, ...rests.map(restKey)].join('|');
}

const untouched: LineDraft = { amount: null, dropped: [] };

export function lineDraft(draft: CuttingDraft, slotId: string, line: ProposedLine): LineDraft {
  return draft.lines[lineKey(slotId, line)] ?? untouched;
}

export function withLine(
  draft: CuttingDraft,
  slotId: string,
  line: ProposedLine,
  own: LineDraft,
): CuttingDraft {
  return { ...draft, lines: { ...draft.lines, [lineKey(slotId, line)]: own } };
}

/** A rest that goes back to the shelf, or to the bin. */
export function withRest(draft: LineDraft, rest: LayRect, isKept: boolean): LineDraft {
  const others = draft.dropped.filter((key) => key !== restKey(rest));
  return { ...draft, dropped: isKept ? others : [...others, restKey(rest)] };
}

export function isDropped(draft: LineDraft, rest: LayRect): boolean {
  return draft.dropped.includes(restKey(rest));
}

/** Amounts that the maker typed for what is cut. */
export function ownAmounts(draft: CuttingDraft, proposal: readonly ProposedSlot[]): QuantityDraft[] {
  return proposal
    .filter(({ slotId }) => !draft.leftOut.includes(slotId))
    .flatMap(({ slotId, lines }) => lines.flatMap((line) => lineDraft(draft, slotId, line).amount ?? []));
}

/** Whether two proposals cut the same amounts of the same lengths and lots and leave the same rests. */
export function isSameProposal(a: readonly ProposedSlot[], b: readonly ProposedSlot[]): boolean {
  const keys = (proposal: readonly ProposedSlot[]) =>
    proposal.flatMap(({ slotId, lines }) => lines.map((line) => lineKey(slotId, line))).join('\n');
  return keys(a) === keys(b);
}

export function amountOf(line: ProposedLine, draft: LineDraft): number {
  return draft.amount?.value ?? line.amount;
}

/** Rests that are kept and still have room in what is cut. */
export function keptRests(line: ProposedLine, draft: LineDraft): LayRect[] {
  const laidMm = amountOf(line, draft) * (1 - (line.washed?.alongRatio ?? 0));
  return line.rests.filter((rest) => !isDropped(draft, rest) && rest.x + rest.widthX <= laidMm + 1e-6);
}

/** What a line costs and wastes as it stands, or null where its lot is not on the shelf. */
export function lineCost(input: FlowInput, line: ProposedLine, draft: LineDraft) {
  const shelf = input.shelf.find(({ lots }) => lots.some((lot) => lot.id === line.lotId));
  const lot = shelf?.lots.find((each) => each.id === line.lotId);
  if (!shelf || !lot) return null;
  const length = lot.lengths.find((each) => each.id === line.lengthId);
  const cut: Cut = {
    item: shelf.item,
    lot,
    widthMm: length?.widthMm ?? null,
    worthRatio: length?.worthRatio ?? 1,
    amount: amountOf(line, draft),
    pieceMm2: line.pieceAreaMm2,
    trimmedMm2: line.trimmedMm2,
    kept: keptRests(line, draft).map(restOf),
    ...(line.washed && { washed: line.washed }),
  };
  return cutCost(cut);
}

function restOf({ x, y, widthX, widthY }: LayRect) {
  return { x, y, lengthMm: widthX, widthMm: widthY };
}

/** asked: coats cut in all, once it is booked; what was cut before is taken off. */
export function cuttingCall(
  input: FlowInput,
  asked: readonly CutCoats[],
  proposal: readonly ProposedSlot[],
  draft: CuttingDraft,
  releasesRest: boolean,
): CallInput<'recordCutting'> {
  const before = new Map(coatsCut(input.cuttings).map(({ size, coatCount }) => [size, coatCount]));
  return {
    planId: input.plan.id,
    basedOn: input.revision,
    coats: asked.map(({ size, coatCount }) => ({
      size,
      coatCount: Math.max(0, coatCount - (before.get(size) ?? 0)),
    })),
    note: draft.note.trim(),
    releasesRest,
    slots: proposal
      .filter(({ slotId }) => !draft.leftOut.includes(slotId))
      .map(({ slotId, met, lines }) => ({
        slotId,
        met,
        lines: lines.map((line) => {
          const own = lineDraft(draft, slotId, line);
          return {
            lotId: line.lotId,
            lengthId: line.lengthId,
            amount: amountOf(line, own),
            pieceAreaMm2: line.pieceAreaMm2,
            ...(line.trimmedMm2 > 0 && { trimmedMm2: line.trimmedMm2 }),
            kept: keptRests(line, own).map(restOf),
          };
        }),
      })),
  };
}
