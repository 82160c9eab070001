import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { draftCoat } from '../../../shared-core/draft/draft.ts';
import type { DraftInput } from '../../../shared-core/draft/draft-input.ts';
import { addShape, type Shape } from '../../../shared-core/plan/edits/pieces/shapes.ts';
import { hemEdge, setHemDepth } from '../../../shared-core/plan/edits/pieces/allowance.ts';
import { foldPiece, openPiece } from '../../../shared-core/plan/edits/pieces/fold.ts';
import { lengthenPieces, piecesSewnAcross } from '../../../shared-core/plan/edits/pieces/lengthen.ts';
import { defaultSplitNames, splitPiece } from '../../../shared-core/plan/edits/pieces/split.ts';
import { addBand, withBandsRenewed } from '../../../shared-core/plan/edits/bands.ts';
import { withEdgesRenamed } from '../../../shared-core/plan/edits/edge-names.ts';
import type { Edited } from '../../../shared-core/plan/edits/edited.ts';
import { liningSeams } from '../../../shared-core/plan/edits/stitches.ts';
import { seamWalk } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { type CoatPlan, pieceById } from '../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { addSize } from '../../../shared-core/plan/model/sizes.ts';
import { fillSlots, setStuffed } from '../../../shared-core/plan/model/stuffing.ts';
import { planProblems } from '../../../shared-core/plan/validation/plan-problems.ts';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { fillingList } from '../../../shared-core/requirement/fill/fill.ts';
import { cautions } from '../../../shared-core/requirement/law/cautions.ts';
import { fibreLabel, labelSection } from '../../../shared-core/requirement/law/label.ts';
import type { SlotItems } from '../../../shared-core/requirement/need.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { messageIds, say, speak, type Language } from '../../../shared-core/wording/say.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { body, coat, coats } from './bodies.ts';

afterEach(() => speak('en'));

const nothingChosen: SlotItems = new Map();
const languages = ['en', 'de'] as const;

/** What is made while a language is spoken. */
function speaking<Made>(language: Language, make: () => Made): Made {
  speak(language);
  try {
    return make();
  } finally {
    speak('en');
  }
}

function value<Made>(outcome: Result<Made>): Made {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function drafted(language: Language, input: DraftInput): CoatPlan {
  return speaking(language, () => value(draftCoat(input)).plan);
}

/** The plan with ids in the place of names, and edges by their place in the outline. Throws for an edge that its piece does not have. */
function nameless(plan: CoatPlan): CoatPlan {
  const numbered = withEdgesRenamed(plan, (edge, pieceId) => {
    const at = pieceById(plan, pieceId).outline.edges.findIndex(({ name }) => name === edge);
    if (at < 0) throw new Error(`${pieceId} has no edge ${edge}`);
    return `${at}`;
  });
  return {
    ...numbered,
    notes: '',
    slots: numbered.slots.map((slot) => ({ ...slot, name: slot.id })),
    pieces: numbered.pieces.map((piece) => ({ ...piece, name: piece.id })),
    seams: numbered.seams.map((seam) => ({ ...seam, label: seam.id })),
  };
}

/** All figures and signs of a result, without its words. */
function figures(result: unknown): unknown[] {
  if (typeof result === 'number' || typeof result === 'boolean' || result === null) return [result];
  if (ArrayBuffer.isView(result)) return [...(result as Float64Array)];
  if (typeof result !== 'object') return [];
  return Object.values(result).flatMap(figures);
}

function reckoned(plan: CoatPlan) {
  const filled = fillSlots(plan).map((slot) => figures(fillingList(plan, slot, nothingChosen)));
  return {
    needs: figures(requirement(plan, nothingChosen)),
    lines: figures(quiltingMap(plan)),
    filled,
    cautions: cautions(plan, nothingChosen).map(({ kind, slotIds }) => [kind, slotIds]),
    label: fibreLabel(plan, nothingChosen, new Map()).problems.length,
    sections: plan.slots.map((slot) => [slot.id, labelSection(slot)]),
    liningSeams: liningSeams(plan).map(({ id }) => id),
    hems: plan.pieces.map((piece) => piece.outline.edges.findIndex(({ name }) => name === hemEdge(piece))),
  };
}

const wardrobe: readonly [string, DraftInput][] = [
  ['a woman’s with a stand collar and a zip', coat('women', { hood: 'none', hasCollar: true, lapMm: 0 })],
  [
    'a woman’s with snaps, strips under the arms and interfacing',
    coat('women', { lapMm: 45, sideStripMm: 28, hasInterfacing: true, sleeve: 'one part' }),
  ],
  ['a man’s with a hood alone', coat('men', { hood: 'three panels', hasCollar: false, pleatMm: 24 })],
  ['a man’s with both', coat('men', { hood: 'two panels', hasCollar: true, sleeve: 'two part', lapMm: 80 })],
  ['a child’s with a hood', coat('children', { hood: 'two panels', hasCollar: false, sleeve: 'one part' })],
  ['a child’s with both', coat('children', { hood: 'three panels', hasCollar: true, pleatMm: 0 })],
];

describe('a coat drafted in German', () => {
  it('is the coat drafted in English under other names, for any body', () => {
    fc.assert(
      fc.property(coats, (input) => {
        const german = drafted('de', input);
        const english = drafted('en', input);
        expect(planProblems(german)).toEqual([]);
        expect(nameless(german)).toEqual(nameless(english));
        expect(seamWalk(german).map(({ seamId, fits, sides }) => [seamId, fits, sides])).toEqual(
          seamWalk(english).map(({ seamId, fits, sides }) => [seamId, fits, sides]),
        );
        const names = (plan: CoatPlan) => [
          ...plan.slots.map(({ name }) => name),
          ...plan.seams.map(({ label }) => label),
          ...plan.pieces.flatMap(({ name, outline }) => [name, ...outline.edges.map((edge) => edge.name)]),
        ];
        const inEnglish = new Set(names(english));
        expect(names(german).filter((name) => inEnglish.has(name))).toEqual([]);
      }),
      { numRuns: 20, seed: 1889 },
    );
  });

  it.each(wardrobe)(
    'asks the same cloth, lines, fill and cautions, whatever is spoken later: %s',
    (_, input) => {
      const stuffed = (plan: CoatPlan) => value(setStuffed(plan, 'back', true)).plan;
      for (const change of [(plan: CoatPlan) => plan, stuffed]) {
        const expected = reckoned(change(drafted('en', input)));
        for (const drawn of languages) {
          const plan = drafted(drawn, input);
          for (const spoken of languages) {
            expect(
              speaking(spoken, () => reckoned(change(plan))),
              `${drawn}, then ${spoken}`,
            ).toEqual(expected);
          }
        }
      }
    },
  );

  it.each(wardrobe)('is lengthened, split, opened, folded and hemmed as the other: %s', (_, input) => {
    const edits: readonly ((plan: CoatPlan) => Result<Edited>)[] = [
      (plan) => lengthenPieces(plan, ['back', ...piecesSewnAcross(plan, 'back', 150)], 60, 150),
      (plan) =>
        splitPiece(plan, 'back', {
          direction: 'across',
          distanceMm: 180,
          allowanceMm: 12,
          names: defaultSplitNames(pieceById(plan, 'back'), 'across'),
        }),
      (plan) => openPiece(plan, 'back-lining'),
      (plan) => foldPiece(value(openPiece(plan, 'back')).plan, 'back'),
      (plan) => setHemDepth(plan, 'front', 55),
    ];
    const plans = { en: drafted('en', input), de: drafted('de', input) };
    for (const edit of edits) {
      const expected = value(edit(plans.en)).plan;
      for (const drawn of languages) {
        for (const spoken of languages) {
          const edited = speaking(spoken, () => value(edit(plans[drawn])).plan);
          expect(planProblems(edited)).toEqual([]);
          expect(figures(nameless(edited)), `${drawn}, then ${spoken}`).toEqual(figures(nameless(expected)));
          expect(seamWalk(edited).map(({ fits, sides }) => [fits, sides])).toEqual(
            seamWalk(expected).map(({ fits, sides }) => [fits, sides]),
          );
        }
      }
    }
  });

  it('takes a size that was drafted in another language, under the names it has', () => {
    const [, input] = wardrobe[2]!;
    const larger = { ...input, size: '52', body: body('men', { bustMm: 1040, waistMm: 920 }) };
    for (const drawn of languages) {
      const plan = drafted(drawn, input);
      const others = languages.map(
        (language) => value(addSize(plan, drafted(language, larger), 1)).plan.sizes,
      );
      expect(others[0]).toEqual(others[1]);
    }
  });

  it('has no name that the catalogue lacks, and the catalogue none that nothing is called by', () => {
    const given = new Set<string>();
    const slug = (named: string, name: string) =>
      given.add(`${named}-name.${name.replace(/[^A-Za-z0-9]+/g, '-').toLowerCase()}`);
    const note = (plan: CoatPlan) => {
      for (const { name } of plan.slots) slug('slot', name);
      for (const { label } of plan.seams) slug('seam', label);
    };
    const noteWhole = (plan: CoatPlan) => {
      note(plan);
      for (const { name, outline } of plan.pieces) {
        slug('piece', name);
        for (const edge of outline.edges) slug('edge', edge.name);
      }
    };
    for (const hood of ['none', 'two panels', 'three panels'] as const)
      for (const sleeve of ['one part', 'two part'] as const)
        for (const lapMm of [0, 45])
          for (const sideStripMm of [0, 28])
            for (const pleatMm of [0, 24])
              noteWhole(
                drafted(
                  'en',
                  coat('women', {
                    hood,
                    sleeve,
                    lapMm,
                    sideStripMm,
                    pleatMm,
                    hasCollar: true,
                    hasInterfacing: true,
                    sleeveLining: 'own',
                  }),
                ),
              );
    const plan = newPlan('plan-2' as CoatPlan['id'], 'Sorrel', '40');
    note(plan);
    const shapes: readonly Shape[] = [
      { kind: 'strip', lengthMm: 300, widthMm: 40 },
      { kind: 'rectangle', lengthMm: 300, widthMm: 200 },
      { kind: 'taper', lengthMm: 300, fromMm: 90, toMm: 0 },
      { kind: 'triangle', baseMm: 90, heightMm: 120 },
      { kind: 'circle', diameterMm: 80 },
    ];
    for (const shape of shapes) {
      const added = value(
        addShape(plan, {
          name: 'Patch',
          shape,
          count: 1,
          isMirrored: false,
          isOnFold: shape.kind === 'rectangle',
          grainTurnDeg: 0,
          turns: 'grain',
          slotIds: ['shell'],
        }),
      );
      for (const edge of added.plan.pieces[0]!.outline.edges) slug('edge', edge.name);
    }
    const backed = value(setStuffed(drafted('en', coat('women')), 'back', true)).plan;
    note(backed);
    const taken = {
      ...drafted('en', coat('women')),
      slots: [
        ...drafted('en', coat('women')).slots,
        { ...plan.slots[1]!, id: 'own', name: 'Backing', isQuilted: false },
      ],
    };
    note(value(setStuffed(taken, 'back', true)).plan);
    slug('edge', 'split');
    const known = messageIds.filter((id) => /^(piece|edge|seam|slot)-name\./.test(id));
    expect([...given].sort()).toEqual([...known].sort());
    for (const id of known)
      expect(id.split('.')[1]).toBe(
        say(id)
          .replace(/[^A-Za-z0-9]+/g, '-')
          .toLowerCase(),
      );
  });
});

it('a binding keeps the names of its edges when its coat is opened in another language', () => {
  const plan = drafted('en', coat('women'));
  const bound = value(
    addBand(plan, {
      name: 'Binding',
      slotId: 'shell',
      band: {
        kind: 'straight binding',
        edges: [{ pieceId: 'cuff', edge: 'end' }],
        isEach: true,
        cutWidthMm: 40,
        lengthRatio: 1,
        endsMm: 20,
        stripMm: null,
      },
    }),
  ).plan;
  const longer = speaking('de', () => withBandsRenewed(value(lengthenPieces(bound, ['cuff'], 20)).plan));
  expect(pieceById(longer, 'binding').outline.edges.map(({ name }) => name)).toEqual(
    pieceById(bound, 'binding').outline.edges.map(({ name }) => name),
  );
  expect(figures(pieceById(longer, 'binding').outline)).not.toEqual(
    figures(pieceById(bound, 'binding').outline),
  );
});
