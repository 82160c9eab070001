/** What is wrong with a coat plan, said so that a maker can mend it. Run before a plan is saved or reckoned with. */
import { codeWords } from '../../wording/code-words.ts';
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import { itemKinds } from '../../stash/kinds.ts';
import type { CoatPlan, Piece, Slot } from '../model/coat-plan.ts';
import type { EdgePlace, Seam } from '../model/outline.ts';
import { coatCountProblem, plyCountProblem } from './count-problems.ts';
import { pieceProblems } from './outline-problems.ts';
import { outside, present } from './number-problem.ts';
import { ownSpacingProblems, quiltingProblems, threadProblems } from './quilting-problems.ts';
import { stitchProblems } from '../edits/stitches.ts';
import { stuffingProblem } from '../model/stuffing.ts';

/** Every problem of the plan, in the order of its parts; empty when all is well. */
export function planProblems(plan: CoatPlan): Problem[] {
  return [
    ...headProblems(plan),
    ...repeated('slot', plan.slots),
    ...plan.slots.flatMap((slot) => slotProblems(plan, slot)),
    ...repeated('piece', plan.pieces),
    ...plan.pieces.flatMap((piece) => [
      ...pieceProblems(piece),
      ...cutFromProblems(plan, piece),
      ...present([stuffingProblem(plan, piece)]),
      ...edgeSeamProblems(plan, piece),
      ...ownSpacingProblems(piece),
    ]),
    ...repeated(
      'seam',
      plan.seams.map((seam) => ({ id: seam.id, name: seam.label })),
    ),
    ...plan.seams.flatMap((seam) => seamProblems(plan, seam)),
    ...quiltingProblems(plan),
    ...(plan.bastingThreadSlotId === undefined
      ? []
      : threadProblems(plan, plan.bastingThreadSlotId, say('plan-problems.thread-for-basting'))),
    ...sizeProblems(plan),
  ];
}

/** The sizes beside the one at hand: named once each, their pieces as sound as its own. */
function sizeProblems(plan: CoatPlan): Problem[] {
  const sizes = plan.sizes ?? [];
  const twice = sizes.filter(
    ({ size }, index) => size === plan.size || sizes.findIndex((each) => each.size === size) !== index,
  );
  return [
    ...twice.map(({ size }) => ({
      where: say('plan-problems.size', { size }),
      what: say('plan-problems.is-in-the-plan-twice'),
      fix: say('plan-problems.name-each-size-once'),
    })),
    ...sizes.flatMap(({ size, pieces }) =>
      [
        ...repeated('piece', pieces),
        ...pieces.flatMap((piece) => [
          ...pieceProblems(piece),
          ...cutFromProblems(plan, piece),
          ...ownSpacingProblems(piece),
        ]),
      ].map((problem) => ({
        ...problem,
        where: say('plan-problems.size-2', { size, where: problem.where }),
      })),
    ),
  ];
}

function headProblems(plan: CoatPlan): Problem[] {
  const problems: Problem[] = [];
  if (plan.name.trim() === '')
    problems.push({
      where: say('plan-problems.name-of-the-plan'),
      what: say('common.is-missing'),
      fix: say('common.type-a-name'),
    });
  const count = coatCountProblem(plan.coatCount);
  if (count) problems.push(count);
  return problems.concat(
    present([
      outside(say('plan-problems.distance-between-pieces'), plan.clearanceMm, 0, 100, 'mm'),
      outside(say('common.wastage-of-thread'), plan.threadWastageRatio, 0, 2, say('plan-problems.1-is-100')),
      outside(
        say('common.sewing-time-of-one-coat'),
        plan.sewingMinutesPerCoat,
        0,
        100_000,
        say('plan-problems.minutes'),
      ),
    ]),
  );
}

/** Two of one id cannot be told apart by the plan, two of one name not by the maker. */
function repeated(
  word: string,
  things: readonly { readonly id: string; readonly name: string }[],
): Problem[] {
  const problems: Problem[] = [];
  const ids = new Set<string>();
  const names = new Set<string>();
  for (const { id, name } of things) {
    const key = name.trim().toLowerCase();
    const where = say('plan-problems.the', { word: codeWords(word), name });
    if (key === '')
      problems.push({
        where: say('plan-problems.a-of-the-plan', { word: codeWords(word) }),
        what: say('common.has-no-name'),
        fix: say('plan-problems.name-it'),
      });
    else if (names.has(key))
      problems.push({
        where,
        what: say('plan-problems.has-the-name-of-another'),
        fix: say('plan-problems.rename-one-of-them'),
      });
    if (ids.has(id))
      problems.push({
        where,
        what: say('plan-problems.has-the-mark-of-another', { id, word: codeWords(word) }),
        fix: say('plan-problems.remove-it-and-make-it-anew'),
      });
    names.add(key);
    ids.add(id);
  }
  return problems;
}

function slotProblems(plan: CoatPlan, slot: Slot): Problem[] {
  const problems: Problem[] = [];
  if (!itemKinds.includes(slot.kind)) {
    problems.push({
      where: say('plan-problems.kind-of', { slotName: slot.name }),
      what: say('plan-problems.is-not-known', { kind: slot.kind }),
      fix: say('plan-problems.choose-one-of', { itemKinds: itemKinds.join(', ') }),
    });
  }
  for (const [word, ratio] of [
    ['along', slot.takeUpAlongRatio],
    ['across', slot.takeUpAcrossRatio],
  ] as const) {
    if (ratio !== null)
      problems.push(
        ...present([
          outside(
            say('plan-problems.take-up-of', { word: codeWords(word), slotName: slot.name }),
            ratio,
            0,
            1,
            say('plan-problems.1-is-100'),
          ),
        ]),
      );
  }
  if (slot.amountPerCoat !== null) {
    problems.push(
      ...present([
        outside(
          say('plan-problems.amount-of-for-one-coat', { slotName: slot.name }),
          slot.amountPerCoat,
          0,
          1_000_000,
          '',
        ),
      ]),
    );
  }
  problems.push(
    ...present([
      outside(
        say('plan-problems.what-is-shorter-by', { slotName: slot.name }),
        slot.shorterByMm,
        -5000,
        5000,
        'mm',
      ),
    ]),
  );
  return problems.concat(
    slot.alongEdges.flatMap((place) =>
      placeProblems(plan, place, say('plan-problems.runs-along', { slotName: slot.name })),
    ),
  );
}

function placeProblems(plan: CoatPlan, place: EdgePlace, word: string): Problem[] {
  const piece = plan.pieces.find((candidate) => candidate.id === place.pieceId);
  if (piece?.outline.edges.some((edge) => edge.name === place.edge)) return [];
  const what = piece
    ? say('plan-problems.which-is-no-edge-of', { edge: place.edge, pieceName: piece.name })
    : say('plan-problems.a-piece-that-is-not-in', { pieceId: place.pieceId });
  return [
    {
      where: say('plan-problems.the-plan'),
      what: `${word} ${what}`,
      fix: say('plan-problems.choose-another-edge-or-none'),
    },
  ];
}

function cutFromProblems(plan: CoatPlan, piece: Piece): Problem[] {
  const seen = new Set<string>();
  return piece.cutFrom.flatMap((from): Problem[] => {
    const slot = plan.slots.find((candidate) => candidate.id === from.slotId);
    const where = say('plan-problems.what-is-cut-from', { pieceName: piece.name });
    if (!slot)
      return [
        {
          where,
          what: say('plan-problems.is-a-slot-that-is-not', { slotId: from.slotId }),
          fix: say('plan-problems.choose-another-slot'),
        },
      ];
    const problems: Problem[] = [];
    if (slot.kind === 'fill') {
      if (from.plyCount > 1)
        problems.push({
          where,
          what: say('plan-problems.is-in-plies', { slotName: slot.name }),
          fix: say('plan-problems.stuff-it-once-or-not-at'),
        });
    } else if (slot.kind !== 'cloth' && slot.kind !== 'batting') {
      problems.push({
        where,
        what: say('plan-problems.is-which-is-neither-cloth-batting', { slotName: slot.name }),
        fix: say('plan-problems.choose-another-slot'),
      });
    }
    if (seen.has(slot.id))
      problems.push({
        where,
        what: say('plan-problems.names-twice', { slotName: slot.name }),
        fix: say('plan-problems.add-the-plies-up-in-one'),
      });
    seen.add(slot.id);
    return problems.concat(present([plyCountProblem(piece.name, slot.name, from.plyCount)]));
  });
}

function edgeSeamProblems(plan: CoatPlan, piece: Piece): Problem[] {
  return piece.outline.edges.flatMap((edge) =>
    edge.seam === null || plan.seams.some((seam) => seam.id === edge.seam)
      ? []
      : [
          {
            where: say('plan-problems.edge-of', { edgeName: edge.name, pieceName: piece.name }),
            what: say('plan-problems.is-sewn-in-a-seam-that', { seam: edge.seam }),
            fix: say('plan-problems.choose-another-seam-or-none'),
          },
        ],
  );
}

function seamProblems(plan: CoatPlan, seam: Seam): Problem[] {
  const problems = [
    ...threadProblems(plan, seam.threadSlotId, say('plan-problems.thread-of', { seamLabel: seam.label })),
    ...stitchProblems(seam),
  ];
  if (
    seam.ease &&
    !(seam.ease.leastMm <= seam.ease.maxMm && Number.isFinite(seam.ease.maxMm - seam.ease.leastMm))
  ) {
    problems.push({
      where: say('plan-problems.ease-of', { seamLabel: seam.label }),
      what: say('plan-problems.has-no-least-below-its-most'),
      fix: say('plan-problems.type-the-smaller-number-first'),
    });
  }
  for (const place of seam.firstSide ?? []) {
    const missing = placeProblems(plan, place, say('plan-problems.joins', { seamLabel: seam.label }));
    const edge = plan.pieces
      .find((piece) => piece.id === place.pieceId)
      ?.outline.edges.find(({ name }) => name === place.edge);
    if (missing.length > 0) problems.push(...missing);
    else if (edge?.seam !== seam.id) {
      problems.push({
        where: say('plan-problems.first-side-of', { seamLabel: seam.label }),
        what: say('plan-problems.names-which-is-not-sewn-in', { edge: place.edge }),
        fix: say('plan-problems.name-only-edges-of-this-seam'),
      });
    }
  }
  return problems;
}
