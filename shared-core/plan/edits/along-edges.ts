/** Where a fastening runs: the edges that a zip, cord or elastic goes along, and how it ends. */
import { say } from '../../wording/say.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { type Edited, notInPlan } from './edited.ts';
import type { EdgePlace } from '../model/outline.ts';

export interface Along {
  readonly edges: readonly EdgePlace[];
  /** True: on each copy of the pieces, as a cord through the whole hem; false: on one, as a zip. */
  readonly isEveryCopy: boolean;
  /** How much shorter than the edges; below 0 for ends that stick out. */
  readonly shorterByMm: number;
  /** Length over that of the edges: less than 1 for elastic, which is stretched on. */
  readonly lengthRatio: number;
}

/** Elastic is cut to 70 to 90 % of what it gathers; 80 % to begin with. Common practice, no source. */
export const elasticRatios = { min: 0.7, usual: 0.8, max: 0.9 } as const;

/** What a fastening of the plan runs along; no edges: its length does not matter. */
export function setAlong(plan: CoatPlan, slotId: string, along: Along): Result<Edited> {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) return err(notInPlan('slot', slotId));
  if (slot.kind !== 'fastening') {
    return err({
      where: slot.name,
      what: say('along-edges.is-no-fastening'),
      fix: say('along-edges.choose-a-zip-cord-elastic-or'),
    });
  }
  const unknown = along.edges.find(
    ({ pieceId, edge }) =>
      !plan.pieces.some(
        (piece) => piece.id === pieceId && piece.outline.edges.some(({ name }) => name === edge),
      ),
  );
  if (unknown) {
    return err({
      where: slot.name,
      what: say('along-edges.would-run-along-which-is-no', { edge: unknown.edge }),
      fix: say('along-edges.choose-another-edge'),
    });
  }
  if (!(Math.abs(along.shorterByMm) <= 5000)) {
    return err({
      where: say('along-edges.what-is-shorter-by', { slotName: slot.name }),
      what: say('along-edges.is-no-length-that-fits-a'),
      fix: say('along-edges.type-up-to-5-m-either'),
    });
  }
  if (!(along.lengthRatio >= 0.3 && along.lengthRatio <= 1.5)) {
    return err({
      where: say('along-edges.length-of-over-that-of-its', { slotName: slot.name }),
      what: say('along-edges.is-no-share-that-can-be'),
      fix: say('along-edges.type-100-for-a-zip-or'),
    });
  }
  const { alongEveryCopy: _, lengthRatio: __, ...own } = slot;
  const changed = {
    ...own,
    alongEdges: along.edges.map(({ pieceId, edge }) => ({ pieceId, edge })),
    shorterByMm: along.edges.length === 0 ? 0 : along.shorterByMm,
    ...(along.isEveryCopy && along.edges.length > 0 && { alongEveryCopy: true as const }),
    ...(along.lengthRatio !== 1 && along.edges.length > 0 && { lengthRatio: along.lengthRatio }),
  };
  return ok({
    plan: { ...plan, slots: plan.slots.map((each) => (each === slot ? changed : each)) },
    said:
      along.edges.length === 0
        ? say('along-edges.the-length-of-does-not-matter', { slotName: slot.name })
        : say('along-edges.runs-along-the-edges-that-you', {
            slotName: slot.name[0]?.toUpperCase() ?? '',
            slotName2: slot.name.slice(1),
          }),
  });
}
