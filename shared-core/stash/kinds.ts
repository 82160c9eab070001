/**
 * The kinds of thing a stash holds, each with its facts, how it is counted and how it is drawn in a form.
 * A new kind is one member of `kindRecords`: the types, the form and the compiler's questions follow from it.
 * Facts live in one validated JSON column; what is searched or summed has a column of its own.
 */
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

const shrinkageAlongRatio = quantity('ratio', 'Shrinkage along', 'loss of length in the first wash', 0, 0.5);
const shrinkageAcrossRatio = quantity('ratio', 'Shrinkage across', 'loss of width in the first wash', 0, 0.5);
const fibre = text('Fibre', 'generic names and shares: 100 % nylon; 65 % cotton, 35 % polyester');

/**
 * `counted` says in what an amount of the kind is kept: length in mm, mass in g, thread in m, pieces one by one.
 * Kinds with `hasLengths` lie on the shelf as physical lengths with a width of their own.
 */
export const kindRecords = {
  cloth: {
    label: 'Cloth',
    plural: 'Cloths',
    counted: 'length',
    hasLengths: true,
    fields: {
      widthMm: quantity('length', 'Width', 'selvage to selvage', 50, 5000, true),
      selvageMm: quantity('length', 'Selvage', 'one edge, not to be cut from', 0, 100),
      arealMassGPerM2: quantity('arealMass', 'Weight', 'per area', 5, 2000),
      fibre,
      finish: text('Finish', 'coating, calendering, brushing'),
      hasNap: flag('Nap or one-way', 'all pieces must lie the same way up'),
      isDownProof: flag('Down-proof', 'tight enough to hold down'),
      repeatAlongMm: quantity('length', 'Repeat along', 'length of the pattern repeat', 0, 2000),
      repeatAcrossMm: quantity('length', 'Repeat across', 'width of the pattern repeat', 0, 2000),
      shrinkageAlongRatio,
      shrinkageAcrossRatio,
      thicknessMm: quantity('length', 'Thickness', 'of one ply', 0.01, 20),
      ...careFields,
    },
  },
  batting: {
    label: 'Batting',
    plural: 'Battings',
    counted: 'length',
    hasLengths: true,
    fields: {
      widthMm: quantity('length', 'Width', 'of the roll or sheet', 50, 5000, true),
      sheetLengthMm: quantity('length', 'Sheet length', 'only for packaged sheets', 50, 10000),
      arealMassGPerM2: quantity('arealMass', 'Weight', 'per area', 5, 2000),
      loftMm: quantity('length', 'Loft', 'thickness before quilting', 0.5, 200),
      lineLimitMm: quantity(
        'length',
        'Lines apart at most',
        'longest distance of quilting, as printed on it',
        5,
        2000,
      ),
      heldBy: choice('Held together by', 'what keeps its fibres in place', [
        'nothing',
        'bonding',
        'needling',
        'scrim',
      ] as const),
      needsBacking: flag('Needs a backing', 'drags or beards when its bare side is sewn over'),
      fibre,
      shrinkageAlongRatio,
      shrinkageAcrossRatio,
      ...careFields,
    },
  },
  fill: {
    label: 'Loose fill',
    plural: 'Loose fills',
    counted: 'mass',
    hasLengths: false,
    fields: {
      fillPowerCm3PerG: quantity(
        'fillPower',
        'Fill power',
        '650 in3/oz, 375 cm3/g, or a height: 120 mm/20 g (EN 12130)',
        10,
        1000,
      ),
      fillMethod: text('Method', 'how the fill power was measured, if known'),
      fibre,
      ...careFields,
    },
  },
  thread: {
    label: 'Thread',
    plural: 'Threads',
    counted: 'thread',
    hasLengths: false,
    fields: {
      sizeTex: quantity('threadSize', 'Size', 'tex, ticket or weight number', 5, 400),
      spoolM: quantity('threadLength', 'Spool', 'thread on a full spool', 1, 20000),
      fibre,
    },
  },
  needle: {
    label: 'Needles',
    plural: 'Needles',
    counted: 'pieces',
    hasLengths: false,
    fields: {
      sizeNm: quantity('needleSize', 'Size', 'NM, US or both (80/12)', 50, 200),
      point: choice('Point', 'shape of the tip', ['sharp', 'universal', 'ball point', 'leather'] as const),
    },
  },
  fastening: {
    label: 'Fastening or notion',
    plural: 'Fastenings and notions',
    counted: 'pieces',
    hasLengths: false,
    fields: {
      form: choice('Form', 'what it is', [
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
      lengthMm: quantity('length', 'Length', 'of one piece as sold', 1, 100000),
      widthMm: quantity('length', 'Width', 'of a cord, tape or zip', 0.5, 500),
      opening: choice(
        'How a zip opens',
        'separating: comes wholly apart at the bottom; two-way: a second slider',
        [
          'closed at the bottom',
          'separating',
          'two-way, separating',
          'two-way, closed at the bottom',
        ] as const,
      ),
      massG: quantity('mass', 'Mass', 'of one piece', 0.01, 5000),
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
        where: `${given} of ${name}`,
        what: `is not a fact of ${kindRecords[kind].label.toLowerCase()}`,
        fix: 'Leave it out.',
      });
    }
  }
  for (const [factName, field] of fields) {
    const value = facts[factName] ?? null;
    const where = `${field.label} of ${name}`;
    if (value === null) {
      if (field.required) problems.push({ where, what: 'is missing', fix: `Type it: ${field.hint}.` });
      continue;
    }
    const problem = factProblem(field, value, where);
    if (problem) problems.push(problem);
  }
  return problems;
}
