/** A strip let into a coat: the added piece of a change in the middle of the work. */
import { found, type Outcome, type Problem, refused } from '../measure/problem.ts';
import type { CoatPlan, Piece } from './coat-plan.ts';
import { type Edited, inMm, notInPlan } from './edited.ts';
import { pieceProblems } from './outline-problems.ts';

export interface Strip {
  readonly name: string;
  /** Along the grain and across it, at the seam line. */
  readonly lengthMm: number;
  readonly widthMm: number;
  /** How many one coat needs. */
  readonly count: number;
  /** One ply is cut from each. */
  readonly slotIds: readonly string[];
  /** On all four edges; absent: the plan's usual one. */
  readonly allowanceMm?: number;
}

/** A rectangular piece more, sewn in no seam yet. Its long edges are called so whichever way they run. */
export function addStrip(plan: CoatPlan, strip: Strip, text = inMm): Outcome<Edited> {
  const name = strip.name.trim();
  const problems: Problem[] = [];
  if (name === '') problems.push({ where: 'Name of the strip', what: 'is missing', mend: 'Type a name.' });
  if (plan.pieces.some((piece) => piece.name.toLowerCase() === name.toLowerCase())) {
    problems.push({
      where: `The piece ${name}`,
      what: 'is in the plan already',
      mend: 'Choose another name.',
    });
  }
  for (const [word, mm] of [
    ['Length', strip.lengthMm],
    ['Width', strip.widthMm],
  ] as const) {
    if (!(Number.isFinite(mm) && mm > 0))
      problems.push({ where: `${word} of ${name}`, what: `is ${mm} mm`, mend: 'Type a length above 0.' });
  }
  problems.push(
    ...strip.slotIds
      .filter((id) => !plan.slots.some((slot) => slot.id === id))
      .map((id) => notInPlan('slot', id)),
  );
  if (problems.length > 0) return refused(...problems);
  const allowanceMm = strip.allowanceMm ?? usualAllowanceMm(plan);
  const { lengthMm, widthMm } = strip;
  const corners = [
    { x: lengthMm, y: 0 },
    { x: lengthMm, y: widthMm },
    { x: 0, y: widthMm },
    { x: 0, y: 0 },
  ];
  const names = ['long edge', 'end', 'other long edge', 'other end'];
  const [side, end, otherSide, otherEnd] =
    lengthMm >= widthMm ? names : [names[1], names[0], names[3], names[2]];
  const piece: Piece = {
    id: freeId(plan, name),
    name,
    outline: {
      start: { x: 0, y: 0 },
      edges: [side, end, otherSide, otherEnd].map((edgeName, index) => ({
        name: edgeName!,
        segments: [{ kind: 'line', to: corners[index]! }],
        allowanceMm,
        seam: null,
      })),
    },
    cutCount: strip.count,
    isMirrored: false,
    foldEdge: null,
    turns: 'grain',
    notches: [],
    cutFrom: [...new Set(strip.slotIds)].map((slotId) => ({ slotId, plyCount: 1 })),
    quilted: null,
  };
  const wrong = pieceProblems(piece);
  if (wrong.length > 0) return refused(...wrong);
  const times = strip.count === 1 ? '' : `${strip.count} of `;
  return found({
    plan: { ...plan, pieces: [...plan.pieces, piece] },
    said: `${times}${name} added, ${text(lengthMm)} by ${text(widthMm)} and ${text(allowanceMm)} of allowance all round.`,
  });
}

/** The allowance that most edges of the plan have; 0 for a plan without edges. */
function usualAllowanceMm(plan: CoatPlan): number {
  const counts = new Map<number, number>();
  for (const piece of plan.pieces) {
    for (const edge of piece.outline.edges)
      counts.set(edge.allowanceMm, (counts.get(edge.allowanceMm) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? 0;
}

function freeId(plan: CoatPlan, name: string): string {
  const stem =
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'strip';
  const taken = new Set(plan.pieces.map((piece) => piece.id));
  for (let number = 1; ; number++) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
}
