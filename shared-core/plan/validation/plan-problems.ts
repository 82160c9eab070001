/** What is wrong with a coat plan, said so that a maker can mend it. Run before a plan is saved or reckoned with. */
import type { Problem } from '../../measure/problem.ts';
import { itemKinds } from '../../stash/kinds.ts';
import type { CoatPlan, Piece, Slot } from '../model/coat-plan.ts';
import type { EdgePlace, Seam } from '../model/outline.ts';
import { pieceProblems } from './outline-problems.ts';
import { outside, present } from './number-problem.ts';
import { ownSpacingProblems, quiltingProblems, threadProblems } from './quilting-problems.ts';
import { stitchProblems } from '../edits/stitches.ts';
import { stuffingProblem } from '../model/stuffing.ts';

export const maxCoats = 1000;
const maxPlies = 20;

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
      : threadProblems(plan, plan.bastingThreadSlotId, 'Thread for basting')),
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
      where: `Size ${size}`,
      what: 'is in the plan twice',
      fix: 'Name each size once.',
    })),
    ...sizes.flatMap(({ size, pieces }) =>
      [
        ...repeated('piece', pieces),
        ...pieces.flatMap((piece) => [
          ...pieceProblems(piece),
          ...cutFromProblems(plan, piece),
          ...ownSpacingProblems(piece),
        ]),
      ].map((problem) => ({ ...problem, where: `Size ${size}: ${problem.where}` })),
    ),
  ];
}

/** How many coats a plan may make: null when `count` is well. */
export function coatCountProblem(count: number): Problem | null {
  if (Number.isInteger(count) && count >= 1 && count <= maxCoats) return null;
  return {
    where: 'Number of coats',
    what: `is ${count}`,
    fix: `Type a whole number from 1 to ${maxCoats}.`,
  };
}

/** How many plies a piece may be cut in: null when `count` is well; 0 is. */
export function plyCountProblem(pieceName: string, slotName: string, count: number): Problem | null {
  if (Number.isInteger(count) && count >= 0 && count <= maxPlies) return null;
  return {
    where: `Plies of ${pieceName} in ${slotName}`,
    what: `are ${count}`,
    fix: `Type a whole number from 0 to ${maxPlies}.`,
  };
}

function headProblems(plan: CoatPlan): Problem[] {
  const problems: Problem[] = [];
  if (plan.name.trim() === '')
    problems.push({ where: 'Name of the plan', what: 'is missing', fix: 'Type a name.' });
  const count = coatCountProblem(plan.coatCount);
  if (count) problems.push(count);
  return problems.concat(
    present([
      outside('Distance between pieces', plan.clearanceMm, 0, 100, 'mm'),
      outside('Wastage of thread', plan.threadWastageRatio, 0, 2, '(1 is 100 %)'),
      outside('Sewing time of one coat', plan.sewingMinutesPerCoat, 0, 100_000, 'minutes'),
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
    const where = `The ${word} ${name}`;
    if (key === '') problems.push({ where: `A ${word} of the plan`, what: 'has no name', fix: 'Name it.' });
    else if (names.has(key))
      problems.push({ where, what: 'has the name of another', fix: 'Rename one of them.' });
    if (ids.has(id))
      problems.push({
        where,
        what: `has the mark ${id} of another ${word}`,
        fix: 'Remove it and make it anew.',
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
      where: `Kind of ${slot.name}`,
      what: `is not known: ${slot.kind}`,
      fix: `Choose one of: ${itemKinds.join(', ')}.`,
    });
  }
  for (const [word, ratio] of [
    ['along', slot.takeUpAlongRatio],
    ['across', slot.takeUpAcrossRatio],
  ] as const) {
    if (ratio !== null)
      problems.push(...present([outside(`Take-up ${word} of ${slot.name}`, ratio, 0, 1, '(1 is 100 %)')]));
  }
  if (slot.amountPerCoat !== null) {
    problems.push(
      ...present([outside(`Amount of ${slot.name} for one coat`, slot.amountPerCoat, 0, 1_000_000, '')]),
    );
  }
  problems.push(
    ...present([outside(`What ${slot.name} is shorter by`, slot.shorterByMm, -5000, 5000, 'mm')]),
  );
  return problems.concat(
    slot.alongEdges.flatMap((place) => placeProblems(plan, place, `${slot.name} runs along`)),
  );
}

function placeProblems(plan: CoatPlan, place: EdgePlace, word: string): Problem[] {
  const piece = plan.pieces.find((candidate) => candidate.id === place.pieceId);
  if (piece?.outline.edges.some((edge) => edge.name === place.edge)) return [];
  const what = piece
    ? `${place.edge}, which is no edge of ${piece.name}`
    : `a piece that is not in the plan: ${place.pieceId}`;
  return [{ where: 'The plan:', what: `${word} ${what}`, fix: 'Choose another edge, or none.' }];
}

function cutFromProblems(plan: CoatPlan, piece: Piece): Problem[] {
  const seen = new Set<string>();
  return piece.cutFrom.flatMap((from): Problem[] => {
    const slot = plan.slots.find((candidate) => candidate.id === from.slotId);
    const where = `What ${piece.name} is cut from`;
    if (!slot)
      return [
        { where, what: `is a slot that is not in the plan: ${from.slotId}`, fix: 'Choose another slot.' },
      ];
    const problems: Problem[] = [];
    if (slot.kind === 'fill') {
      if (from.plyCount > 1)
        problems.push({ where, what: `is ${slot.name} in plies`, fix: 'Stuff it once, or not at all.' });
    } else if (slot.kind !== 'cloth' && slot.kind !== 'batting') {
      problems.push({
        where,
        what: `is ${slot.name}, which is neither cloth, batting nor fill`,
        fix: 'Choose another slot.',
      });
    }
    if (seen.has(slot.id))
      problems.push({ where, what: `names ${slot.name} twice`, fix: 'Add the plies up in one.' });
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
            where: `Edge ${edge.name} of ${piece.name}`,
            what: `is sewn in a seam that is not in the plan: ${edge.seam}`,
            fix: 'Choose another seam, or none.',
          },
        ],
  );
}

function seamProblems(plan: CoatPlan, seam: Seam): Problem[] {
  const problems = [
    ...threadProblems(plan, seam.threadSlotId, `Thread of ${seam.label}`),
    ...stitchProblems(seam),
  ];
  if (
    seam.ease &&
    !(seam.ease.leastMm <= seam.ease.maxMm && Number.isFinite(seam.ease.maxMm - seam.ease.leastMm))
  ) {
    problems.push({
      where: `Ease of ${seam.label}`,
      what: 'has no least below its most',
      fix: 'Type the smaller number first.',
    });
  }
  for (const place of seam.firstSide ?? []) {
    const missing = placeProblems(plan, place, `${seam.label} joins`);
    const edge = plan.pieces
      .find((piece) => piece.id === place.pieceId)
      ?.outline.edges.find(({ name }) => name === place.edge);
    if (missing.length > 0) problems.push(...missing);
    else if (edge?.seam !== seam.id) {
      problems.push({
        where: `First side of ${seam.label}`,
        what: `names ${place.edge}, which is not sewn in it`,
        fix: 'Name only edges of this seam.',
      });
    }
  }
  return problems;
}
