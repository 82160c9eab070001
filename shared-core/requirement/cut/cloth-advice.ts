/** Cloth whose name or colour speaks of a pattern or of one way, and whose facts do not; and interfacing that is fused. */
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
  how: 'by words in the name, colour and finish of the cloth: napped, plush and shiny cloths and one-way designs are laid one way; stripes, checks and plaids are matched',
  source: 'handbooks of home sewing; Oregon extension service, "Sewing with stripes, checks, and plaids"',
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
      says: `${item.name} is a ${word} by its name and has no repeat written down, so its pieces are laid without matching and it may be too little.`,
      fix: 'Measure the repeat along and across and type it at the cloth, so that its pieces are laid to match.',
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
      says: `${item.name} is ${word} by its name: turned end for end, its pieces may look another colour or stand on their heads, and it is laid both ways now.`,
      fix: 'Look at it both ways in daylight, and say at the cloth whether it has a nap or runs one way: yes or no.',
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
    if (item?.kind !== 'cloth' || !/\binterfacing\b/i.test(slot.name)) return [];
    if (!/\bfus(ible|ed|ing)\b|\biron-on\b/i.test(`${item.name} ${item.facts.finish ?? ''} ${item.notes}`))
      return [];
    return [
      {
        kind: 'interfacing' as const,
        says: `${item.name} is fused, which asks for ${fusingC} °C and more, and ${shell.item.name} bears ${limitC} °C.`,
        fix: 'Take a sew-in interfacing, or one that fuses lower, and try it on a scrap.',
        basis: [
          {
            kind: 'rule of thumb',
            how: 'heat of fusing by the dots of the iron',
            source: 'common practice, no source',
          },
        ],
      },
    ];
  });
}
