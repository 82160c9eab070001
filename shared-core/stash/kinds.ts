/**
 * The kinds of thing a stash holds, each with its facts, how it is counted and how it is drawn in a form.
 * A new kind is one member of `kindRecords`: the types, the form and the compiler's questions follow from it.
 * Facts live in one validated JSON column; what is searched or summed has a column of its own.
 */
import { nounInSentence } from '../wording/in-sentence.ts';
import { say } from '../wording/say.ts';
import type { Problem } from '../measure/problem.ts';
import { careFields } from './care-fields.ts';
import { choice, type FactField, factProblem, flag, quantity, text } from './fact-field.ts';

type ValueOf<Field> = Field extends { kind: 'quantity' }
  ? number | null
  : Field extends { kind: 'choice'; options: readonly (infer Option)[] }
    ? Option | null
    : Field extends { kind: 'flag' }
      ? boolean | null
      : string | null;

type FactsFrom<Fields> = { readonly [Name in keyof Fields]: ValueOf<Fields[Name]> };

const shrinkageAlongRatio = quantity(
  'ratio',
  'kinds.shrinkage-along',
  'kinds.loss-of-length-in-the-first',
  0,
  0.5,
);
const shrinkageAcrossRatio = quantity(
  'ratio',
  'kinds.shrinkage-across',
  'kinds.loss-of-width-in-the-first',
  0,
  0.5,
);
const fibre = text('kinds.fibre', 'kinds.generic-names-and-shares-100-nylon');

/**
 * `counted` says in what an amount of the kind is kept: length in mm, mass in g, thread in m, pieces one by one.
 * Kinds with `hasLengths` lie on the shelf as physical lengths with a width of their own.
 */
export const kindRecords = {
  cloth: {
    get label() {
      return say('kinds.cloth');
    },
    get plural() {
      return say('kinds.cloths');
    },
    counted: 'length',
    hasLengths: true,
    fields: {
      widthMm: quantity('length', 'common.width', 'kinds.selvage-to-selvage', 50, 5000, true),
      selvageMm: quantity('length', 'kinds.selvage', 'kinds.one-edge-not-to-be-cut', 0, 100),
      arealMassGPerM2: quantity('arealMass', 'kinds.weight', 'kinds.per-area', 5, 2000),
      fibre,
      finish: text('kinds.finish', 'kinds.coating-calendering-brushing'),
      hasNap: flag('kinds.nap-or-one-way', 'kinds.all-pieces-must-lie-the-same'),
      isDownProof: flag('kinds.down-proof', 'kinds.tight-enough-to-hold-down'),
      repeatAlongMm: quantity('length', 'kinds.repeat-along', 'kinds.length-of-the-pattern-repeat', 0, 2000),
      repeatAcrossMm: quantity('length', 'kinds.repeat-across', 'kinds.width-of-the-pattern-repeat', 0, 2000),
      shrinkageAlongRatio,
      shrinkageAcrossRatio,
      thicknessMm: quantity('length', 'kinds.thickness', 'kinds.of-one-ply', 0.01, 20),
      ...careFields,
    },
  },
  batting: {
    get label() {
      return say('kinds.batting');
    },
    get plural() {
      return say('kinds.battings');
    },
    counted: 'length',
    hasLengths: true,
    fields: {
      widthMm: quantity('length', 'common.width', 'kinds.of-the-roll-or-sheet', 50, 5000, true),
      sheetLengthMm: quantity('length', 'kinds.sheet-length', 'kinds.only-for-packaged-sheets', 50, 10000),
      arealMassGPerM2: quantity('arealMass', 'kinds.weight', 'kinds.per-area', 5, 2000),
      loftMm: quantity('length', 'kinds.loft', 'kinds.thickness-before-quilting', 0.5, 200),
      lineLimitMm: quantity(
        'length',
        'kinds.lines-apart-at-most',
        'kinds.longest-distance-of-quilting-as-printed',
        5,
        2000,
      ),
      heldBy: choice('kinds.held-together-by', 'kinds.what-keeps-its-fibres-in-place', [
        'nothing',
        'bonding',
        'needling',
        'scrim',
      ] as const),
      needsBacking: flag('kinds.needs-a-backing', 'kinds.drags-or-beards-when-its-bare'),
      fibre,
      shrinkageAlongRatio,
      shrinkageAcrossRatio,
      ...careFields,
    },
  },
  fill: {
    get label() {
      return say('kinds.loose-fill');
    },
    get plural() {
      return say('kinds.loose-fills');
    },
    counted: 'mass',
    hasLengths: false,
    fields: {
      fillPowerCm3PerG: quantity('fillPower', 'kinds.fill-power', 'kinds.650-in3-oz-375-cm3-g', 10, 1000),
      fillMethod: text('kinds.method', 'kinds.how-the-fill-power-was-measured'),
      fibre,
      ...careFields,
    },
  },
  thread: {
    get label() {
      return say('common.thread');
    },
    get plural() {
      return say('kinds.threads');
    },
    counted: 'thread',
    hasLengths: false,
    fields: {
      sizeTex: quantity('threadSize', 'common.size', 'kinds.tex-ticket-or-weight-number', 5, 400),
      spoolM: quantity('threadLength', 'kinds.spool', 'kinds.thread-on-a-full-spool', 1, 20000),
      fibre,
    },
  },
  needle: {
    get label() {
      return say('kinds.needles');
    },
    get plural() {
      return say('kinds.needles');
    },
    counted: 'pieces',
    hasLengths: false,
    fields: {
      sizeNm: quantity('needleSize', 'common.size', 'kinds.nm-us-or-both-80-12', 50, 200),
      point: choice('kinds.point', 'kinds.shape-of-the-tip', [
        'sharp',
        'universal',
        'ball point',
        'leather',
      ] as const),
    },
  },
  fastening: {
    get label() {
      return say('kinds.fastening-or-notion');
    },
    get plural() {
      return say('kinds.fastenings-and-notions');
    },
    counted: 'pieces',
    hasLengths: false,
    fields: {
      form: choice('kinds.form', 'kinds.what-it-is', [
        'zip',
        'snap',
        'button',
        'toggle',
        'eyelet',
        'cord',
        'elastic',
        'tape',
        'hook and loop',
        'label',
        'other',
      ] as const),
      lengthMm: quantity('length', 'common.length', 'kinds.of-one-piece-as-sold', 1, 100000),
      widthMm: quantity('length', 'common.width', 'kinds.of-a-cord-tape-or-zip', 0.5, 500),
      opening: choice('kinds.how-a-zip-opens', 'kinds.separating-comes-wholly-apart-at-the', [
        'closed at the bottom',
        'separating',
        'two-way, separating',
        'two-way, closed at the bottom',
      ] as const),
      massG: quantity('mass', 'kinds.mass', 'kinds.of-one-piece', 0.01, 5000),
      ...careFields,
    },
  },
} as const;

export type ItemKind = keyof typeof kindRecords;
export type FactsOf<Kind extends ItemKind> = FactsFrom<(typeof kindRecords)[Kind]['fields']>;
export type Counted = (typeof kindRecords)[ItemKind]['counted'];

export const itemKinds = Object.keys(kindRecords) as readonly ItemKind[];

/** Fields of a kind in the order a form shows them. */
export function factFields(kind: ItemKind): readonly (readonly [string, FactField])[] {
  return Object.entries(kindRecords[kind].fields) as [string, FactField][];
}

/** Facts of a kind with nothing known yet. */
export function emptyFacts<Kind extends ItemKind>(kind: Kind): FactsOf<Kind> {
  return Object.fromEntries(factFields(kind).map(([name]) => [name, null])) as FactsOf<Kind>;
}

/** "Width of Grey taffeta": where a problem of a fact stands. */
export function factPlace(field: FactField, name: string): string {
  return say('kinds.of-2', { fieldLabel: field.label, name });
}

/** What is wrong with the facts of an item called `name`; empty when all is well. Unknown names are a problem too. */
export function factProblems(
  kind: ItemKind,
  facts: Readonly<Record<string, unknown>>,
  name: string,
): Problem[] {
  const problems: Problem[] = [];
  const fields = new Map(factFields(kind));
  for (const given of Object.keys(facts)) {
    if (!fields.has(given)) {
      problems.push({
        where: say('kinds.of', { given, name }),
        what: say('kinds.is-not-a-fact-of', { kindRecordsLabel: nounInSentence(kindRecords[kind].label) }),
        fix: say('kinds.leave-it-out'),
      });
    }
  }
  for (const [factName, field] of fields) {
    const value = facts[factName] ?? null;
    const where = factPlace(field, name);
    if (value === null) {
      if (field.required)
        problems.push({
          where,
          what: say('common.is-missing'),
          fix: say('kinds.type-it', { hint: field.hint }),
        });
      continue;
    }
    const problem = factProblem(field, value, where);
    if (problem) problems.push(problem);
  }
  return problems;
}
