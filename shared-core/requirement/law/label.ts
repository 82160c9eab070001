/**
 * The fibre label: every part of the coat whose fibres differ on a line of its own, never mixed with another; whole
 * percents that add up to 100, falling order. What it gives is the arithmetic; the rules of the place of sale decide
 * what must be printed.
 *
 * Sources: EU 1007/2011 art. 9, 11, 12 and 20, from memory; 16 CFR 303.3, 303.22 and 303.25 and 15 USC 70j, read; the
 * Wool Act (15 USC 68b), by the summary in 79 FR 32157.
 */
import { listed } from '../../wording/listed.ts';
import { speaksOf } from '../../wording/words-in-names.ts';
import { codeWords } from '../../wording/code-words.ts';
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { Problem } from '../../measure/problem.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import type { CoatPlan, Slot } from '../../plan/model/coat-plan.ts';
import { type FibreShare, readFibre } from './fibre.ts';
import { fibres } from './fibre-names.ts';
import { euText, labelToleranceRatio, usText } from './label-text.ts';
import type { SlotItems } from '../need.ts';

export type LabelSection = 'shell' | 'lining' | 'filling' | 'trim' | 'hidden';

/** One line of the label as printed: a part, or several of one section and the same fibres. */
export interface LabelLine {
  readonly section: LabelSection;
  /** "Shell", "Body lining", "Body lining and hood lining". */
  readonly component: string;
  readonly slotNames: readonly string[];
  /** Of one coat; null where it is not known. */
  readonly massG: number | null;
  readonly shares: readonly FibreShare[];
  /** "Shell: 72% cotton, 28% nylon": fibres under 5 % as other fiber, last; wool always by name. */
  readonly us: string;
  /** The same with EU names, all fibres named. */
  readonly eu: string;
  /** Trimmings and facings: the US asks for none of their fibres. */
  readonly isVoluntaryInUs: boolean;
  /** Under 30 % of the coat and no main lining: the EU lets it be left out. Never the shell or a filling, which say what the coat is. Null: masses are missing. */
  readonly mayBeLeftOutInEu: boolean | null;
}

export interface FibreLabel {
  /** Lines in the order shell, lining, filling, trim. */
  readonly lines: readonly LabelLine[];
  /** What must be printed beside them for the EU; empty where nothing must. */
  readonly euNotes: readonly string[];
  /** What the maker should know of these lines and need not print. */
  readonly asides: readonly string[];
  /** What a stated share may differ from the true one, of all fibres; a line that states one fibre alone has none. */
  readonly toleranceRatio: number;
  readonly problems: readonly Problem[];
  readonly basis: readonly Basis[];
}

/** A part below this share of the coat may be left out in the EU unless it is a main lining: EU 1007/2011 art. 11 (2), from memory. */
export const leftOutBelowRatio = 0.3;

/** What EU 1007/2011 art. 12 asks to print of down and feathers, which are no textile fibre; from memory. */
const animalPartsNote = () => say('label.contains-non-textile-parts-of-animal');

const sectionOrder = ['shell', 'lining', 'filling', 'trim'] as const;

/**
 * Where a slot is named on the label: filling by kind; lining, trim and facing by its name; seen cloth is shell; other
 * cloth (pocketing, backing, interfacing) holds the coat in shape and is not printed. Null for what is no textile of
 * the label.
 */
export function labelSection(slot: Slot): LabelSection | null {
  switch (slot.kind) {
    case 'batting':
    case 'fill':
      return 'filling';
    case 'cloth':
      if (speaksOf('interfacing', slot.name)) return 'hidden';
      if (speaksOf('lining', slot.name)) return 'lining';
      if (speaksOf('trim', slot.name)) return 'trim';
      return slot.isSeen ? 'shell' : 'hidden';
    case 'thread':
    case 'needle':
    case 'fastening':
      return null;
    default:
      return slot.kind satisfies never;
  }
}

/** Linings of body and sleeves; those of a hood, collar or pocket are not what the coat is lined with. */
function isMainLining(slot: Slot): boolean {
  return labelSection(slot) === 'lining' && !speaksOf('small part', slot.name);
}

interface Part {
  readonly slot: Slot;
  readonly massG: number | null;
  readonly shares: readonly FibreShare[];
}

/**
 * Label of one coat. massG: mass of each slot in one coat; null where it is not known, 0 where nothing is cut of it.
 * A part whose fibres are not known is left out and said as a problem.
 */
export function fibreLabel(
  plan: CoatPlan,
  items: SlotItems,
  massG: ReadonlyMap<string, number | null>,
): FibreLabel {
  const problems: Problem[] = [];
  const textiles = plan.slots.filter((slot) => labelSection(slot) !== null && massG.get(slot.id) !== 0);
  const masses = textiles.map((slot) => massG.get(slot.id) ?? null);
  const coatG = masses.includes(null) ? null : masses.reduce<number>((sum, each) => sum + (each ?? 0), 0);
  const lines = sectionOrder.flatMap((section) => {
    const parts = textiles
      .filter((slot) => labelSection(slot) === section)
      .flatMap((slot): Part[] => {
        const read = slotFibres(slot, items);
        if ('problems' in read) problems.push(...read.problems);
        return 'problems' in read ? [] : [{ slot, massG: massG.get(slot.id) ?? null, shares: read.shares }];
      });
    return sectionLines(section, parts, coatG);
  });
  const printed = lines.flatMap((line) => line.shares);
  return {
    lines,
    euNotes: printed.some(({ fibre }) => fibres[fibre].isPlumage) ? [animalPartsNote()] : [],
    asides: asides(lines),
    toleranceRatio: labelToleranceRatio,
    problems,
    basis: [
      {
        kind: 'computed',
        how: say('label.fibres-as-written-down-at-each'),
        source: say('label.16-cfr-303-and-eu-1007'),
      },
    ],
  };
}

/** One line for each composition of a section. */
function sectionLines(
  section: (typeof sectionOrder)[number],
  parts: readonly Part[],
  coatG: number | null,
): LabelLine[] {
  const alike = new Map<string, Part[]>();
  for (const part of parts) {
    const text = euText(part.shares) + usText(part.shares);
    alike.set(text, [...(alike.get(text) ?? []), part]);
  }
  const heaviestG = Math.max(...parts.map((part) => part.massG ?? Number.POSITIVE_INFINITY));
  return [...alike.values()].map((group) => {
    const { shares } = group[0]!;
    const slots = group.map((part) => part.slot);
    const component =
      alike.size === 1 && section !== 'trim' ? sentenceCase(codeWords(section)) : partsName(section, slots);
    const massG = group.some((part) => part.massG === null)
      ? null
      : group.reduce((sum, part) => sum + (part.massG ?? 0), 0);
    const isMain =
      section === 'filling' ||
      slots.some(isMainLining) ||
      (section === 'shell' && group.some((part) => (part.massG ?? Number.POSITIVE_INFINITY) === heaviestG));
    return {
      section,
      component,
      slotNames: slots.map((slot) => slot.name),
      massG,
      shares,
      us: `${component}: ${usText(shares)}`,
      eu: `${component}: ${euText(shares)}`,
      isVoluntaryInUs: section === 'trim',
      mayBeLeftOutInEu: isMain
        ? false
        : massG === null || coatG === null
          ? null
          : massG < leftOutBelowRatio * coatG,
    };
  });
}

/** "Body lining and sleeve lining"; a part whose name does not say its section has it before: "Filling, cluster". */
function partsName(section: LabelSection, slots: readonly Slot[]): string {
  const names = listed(slots.map((slot) => slot.name));
  const says = section === 'trim' || section === 'hidden' || speaksOf(section, names);
  return sentenceCase(says ? names : `${codeWords(section)}, ${names}`);
}

function asides(lines: readonly LabelLine[]): string[] {
  const named = (which: (line: LabelLine) => boolean) =>
    lines.flatMap((line) => (which(line) ? [line.component] : [])).join('; ');
  const voluntary = named((line) => line.isVoluntaryInUs);
  const leftOut = named((line) => line.mayBeLeftOutInEu === true);
  const isUnknown = lines.some((line) => line.mayBeLeftOutInEu === null);
  const hasWool = lines.some((line) => line.shares.some(({ fibre }) => fibres[fibre].isWool));
  return [
    ...(voluntary === '' ? [] : [say('label.us-trimmings-facings-and-interfacings-need', { voluntary })]),
    ...(lines.some((line) => line.section === 'lining') ? [say('label.us-a-lining-or-filling-must')] : []),
    ...(hasWool ? [say('label.us-wool-and-recycled-wool-are')] : []),
    ...(leftOut === '' ? [] : [say('label.eu-a-part-under-30-of', { leftOut })]),
    ...(isUnknown ? [say('label.eu-what-is-under-30-of')] : []),
  ];
}

function slotFibres(
  slot: Slot,
  items: SlotItems,
): { shares: readonly FibreShare[] } | { problems: readonly Problem[] } {
  const item = items.get(slot.id);
  if (!item) {
    return {
      problems: [
        {
          where: say('label.slot', { slotName: slot.name }),
          what: say('label.has-no-material-yet'),
          fix: say('label.choose-one-from-the-stash'),
        },
      ],
    };
  }
  const text = 'fibre' in item.facts ? (item.facts.fibre ?? '') : '';
  const read = readFibre(text, say('label.fibre-of', { itemName: item.name }));
  return read.ok ? { shares: read.value } : { problems: read.problems };
}
