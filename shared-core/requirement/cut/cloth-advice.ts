/** Cloth whose name or colour speaks of a pattern or of one way, and whose facts do not; and interfacing that is fused. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { CoatPlan, Slot } from '../../plan/model/coat-plan.ts';
import type { Item } from '../../stash/stash.ts';
import type { Advice } from '../advice.ts';
import { ironLimitC } from '../law/iron.ts';
import type { SlotItems } from '../need.ts';

type Cloth = Extract<Item, { kind: 'cloth' }>;

/** Patterns that a maker matches at the seams. */
const patterns =
  /(?<!\p{L})(checks?|checked|chequered|plaids?|tartans?|gingham|houndstooth|windowpane|argyle|striped?|stripes|pinstriped?|prints?|printed|florals?|toile|border)(?!\p{L})/iu;

/** Cloth that looks another colour, or stands on its head, when a piece is turned end for end. */
const oneWay =
  /(?<!\p{L})(velvets?|velveteen|velour|corduroy|cord cloth|needlecord|pile|plush|fleece|faux fur|moleskin|brushed|flannel|satin|sateen|one-way|one way|directional|border|ombré|ombre|dégradé|shot|iridescent|changeant)(?!\p{L})/iu;

/** What a fusible interfacing asks of the iron, C: two dots and more. Common practice, no source. */
const fusingC = 150;

const trade: Basis = {
  kind: 'rule of thumb',
  get how() {
    return say('cloth-advice.by-words-in-the-name-colour');
  },
  get source() {
    return say('cloth-advice.handbooks-of-home-sewing-oregon-extension');
  },
};

/** Advice on the cloths that are cut; the size at hand. */
export function clothAdvice(plan: CoatPlan, items: SlotItems): readonly Advice[] {
  const cut = plan.slots.flatMap((slot) => {
    const item = items.get(slot.id);
    const isCut = plan.pieces.some((piece) =>
      piece.cutFrom.some(({ slotId, plyCount }) => slotId === slot.id && plyCount > 0),
    );
    return item?.kind === 'cloth' && isCut ? [{ slot, item }] : [];
  });
  const seen = cut.filter(({ slot }) => slot.isSeen);
  return [
    ...seen.flatMap(({ item }) => repeatAdvice(item)),
    ...seen.flatMap(({ item }) => oneWayAdvice(item)),
    ...fusingAdvice(cut, items),
  ];
}

function wordIn(item: Cloth, words: RegExp): string | null {
  return words.exec(`${item.name}, ${item.colour}, ${item.facts.finish ?? ''}`)?.[0].toLowerCase() ?? null;
}

function repeatAdvice(item: Cloth): Advice[] {
  const word = wordIn(item, patterns);
  const { repeatAlongMm, repeatAcrossMm } = item.facts;
  if (word === null || (repeatAlongMm ?? 0) > 0 || (repeatAcrossMm ?? 0) > 0) return [];
  return [
    {
      kind: 'pattern matching',
      says: say('cloth-advice.is-a-by-its-name-and', { itemName: item.name, word }),
      fix: say('cloth-advice.measure-the-repeat-along-and-across'),
      basis: [trade],
    },
  ];
}

/** Only while the maker has said neither yes nor no. */
function oneWayAdvice(item: Cloth): Advice[] {
  const word = wordIn(item, oneWay);
  if (word === null || item.facts.hasNap !== null) return [];
  return [
    {
      kind: 'one way',
      says: say('cloth-advice.is-by-its-name-turned-end', { itemName: item.name, word }),
      fix: say('cloth-advice.look-at-it-both-ways-in'),
      basis: [trade],
    },
  ];
}

/** A fusible interfacing wants more heat than the cloth that it is fused to bears. */
function fusingAdvice(
  cut: readonly { readonly slot: Slot; readonly item: Cloth }[],
  items: SlotItems,
): Advice[] {
  const shell = cut.find(({ slot }) => slot.isSeen && slot.isQuilted) ?? cut.find(({ slot }) => slot.isSeen);
  const limitC = shell ? ironLimitC(shell.item) : null;
  if (!shell || limitC === null || limitC >= fusingC) return [];
  return cut.flatMap(({ slot }) => {
    const item = items.get(slot.id);
    if (item?.kind !== 'cloth' || !speaksOf('interfacing', slot.name)) return [];
    if (!speaksOf('fused', `${item.name} ${item.facts.finish ?? ''} ${item.notes}`)) return [];
    return [
      {
        kind: 'interfacing' as const,
        says: say('cloth-advice.is-fused-which-asks-for-c', {
          itemName: item.name,
          fusingC,
          itemName2: shell.item.name,
          limitC,
        }),
        fix: say('cloth-advice.take-a-sew-in-interfacing-or'),
        basis: [
          {
            kind: 'rule of thumb',
            how: say('cloth-advice.heat-of-fusing-by-the-dots'),
            source: say('common.common-practice-no-source'),
          },
        ],
      },
    ];
  });
}
