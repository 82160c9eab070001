/** A coat drafted from measures: a whole plan, ready to be laid and costed, and a report of how it fits. */
import { say } from '../wording/say.ts';
import { ok, type Result, err } from '../measure/problem.ts';
import { type CoatPlan, emptySlot, type Slot } from '../plan/model/coat-plan.ts';
import { defaultOrder } from '../plan/model/new-plan.ts';
import { planProblems } from '../plan/validation/plan-problems.ts';
import type { Body } from './body.ts';
import { type DraftInput, draftProblems } from './draft-input.ts';
import { draftPieces } from './pieces.ts';
import { type DraftReport, draftReport } from './report.ts';
import { draftSeams } from './seams.ts';
import { armholeAndSleeve } from './sleeve.ts';
import { inSpokenNames } from './spoken-names.ts';

export interface DraftedCoat {
  readonly plan: CoatPlan;
  readonly report: DraftReport;
}

/**
 * What a drafted coat begins with. Lines about 3 in apart, on a child's small pieces 2 in; a child's coat has shorter
 * seams and is sewn in seven tenths of the time. Common practice, no source.
 */
const usual = {
  women: { spacingMm: 76.2, sewingMinutes: 600 },
  men: { spacingMm: 76.2, sewingMinutes: 600 },
  children: { spacingMm: 50.8, sewingMinutes: 420 },
} as const;

/** The coat, its names in the language spoken now, or why these measures make none. */
export function draftCoat(input: DraftInput): Result<DraftedCoat> {
  const problems = draftProblems(input);
  if (problems.length > 0) return err(...problems);
  const armhole = armholeAndSleeve(input);
  if (!armhole) {
    return err({
      where: say('draft.the-upper-arm'),
      what: say('draft.is-too-large-for-any-armhole'),
      fix: say('draft.check-it-or-change-the-ease'),
    });
  }
  const plan = inSpokenNames({
    id: input.id,
    name: input.name,
    size: input.size,
    coatCount: 1,
    slots: draftSlots(input),
    pieces: draftPieces(input, armhole),
    seams: draftSeams(input),
    quilting: {
      spacingMm: usual[input.body.kind].spacingMm,
      stitch: '301',
      stitchLengthMm: 3,
      threadSlotId: 'quilting-thread',
      order: defaultOrder,
    },
    clearanceMm: 2,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: usual[input.body.kind].sewingMinutes,
    notes: notesOf(input),
    isForChild: input.body.kind === 'children',
  });
  const flaws = planProblems(plan);
  return flaws.length > 0 ? err(...flaws) : ok({ plan, report: draftReport(plan, input, armhole) });
}

/** One size of a style and the body that wears it. */
export interface SizeToDraft {
  readonly size: string;
  readonly body: Body;
}

/**
 * One plan that holds the coat of `input` at hand and, beside it, each further size with the same choices, none of
 * them made until the maker says how many. The coat's length keeps its distance from the waist, in proportion to
 * height. Any size that cannot be drafted refuses them all, its problems under its own name.
 */
export function draftStyle(input: DraftInput, sizes: readonly SizeToDraft[]): Result<DraftedCoat> {
  const own = draftCoat(input);
  if (!own.ok) return own;
  const others = sizes.map(({ size, body }) => {
    const grownMm = input.coatLengthMm * (body.heightMm / input.body.heightMm);
    return { size, outcome: draftCoat({ ...input, size, body, coatLengthMm: grownMm }) };
  });
  const problems = others.flatMap(({ size, outcome }) =>
    outcome.ok
      ? []
      : outcome.problems.map((problem) => ({
          ...problem,
          where: say('draft.size', { size, where: problem.where }),
        })),
  );
  if (problems.length > 0) return err(...problems);
  const plan: CoatPlan = {
    ...own.value.plan,
    sizes: others.flatMap(({ size, outcome }) =>
      outcome.ok ? [{ size, coatCount: 0, pieces: outcome.value.plan.pieces }] : [],
    ),
  };
  const flaws = planProblems(plan);
  return flaws.length > 0 ? err(...flaws) : ok({ ...own.value, plan });
}

function draftSlots(input: DraftInput): Slot[] {
  const along = [
    { pieceId: 'front', edge: 'front edge' },
    ...(input.hasCollar ? [{ pieceId: 'collar', edge: 'front end' }] : []),
  ];
  return [
    { ...emptySlot('shell', 'shell', 'cloth'), isQuilted: true },
    emptySlot('body-lining', 'body lining', 'cloth'),
    ...(input.sleeveLining === 'own' ? [emptySlot('sleeve-lining', 'sleeve lining', 'cloth')] : []),
    emptySlot('batting', 'batting', 'batting'),
    { ...emptySlot('pocketing', 'pocketing', 'cloth'), isSeen: false },
    ...(input.hasInterfacing ? [{ ...emptySlot('interfacing', 'interfacing', 'cloth'), isSeen: false }] : []),
    { ...emptySlot('sewing-thread', 'sewing thread', 'thread'), isSeen: true },
    { ...emptySlot('quilting-thread', 'quilting thread', 'thread'), isSeen: true },
    emptySlot('needles', 'needles', 'needle'),
    input.lapMm === 0
      ? { ...emptySlot('zip', 'front zip', 'fastening'), isSeen: true, alongEdges: along }
      : { ...emptySlot('snaps', 'front snaps', 'fastening'), isSeen: true, amountPerCoat: 8 },
  ];
}

function notesOf(input: DraftInput): string {
  return [
    say('draft.drafted-from-measures-without-bust-darts'),
    ...(input.pleatMm > 0
      ? [say('draft.the-back-lining-has-a-pleat', { pleatMm: input.pleatMm.toFixed(0) })]
      : []),
    ...(input.body.kind === 'children' ? [say('draft.distance-of-the-lines-and-sewing')] : []),
  ].join(' ');
}
