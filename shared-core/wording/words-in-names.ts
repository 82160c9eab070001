/**
 * What the names of slots, pieces, edges and materials say of them. Makers name them as they like and in their own
 * language, and a plan is opened in another: so the words are looked for in every language spoken here, whichever is.
 * German joins its words, so hers stand inside others: "Rumpffutter".
 */
const patterns = {
  // Edges and pieces.
  hem: /(?:^| )hem$|[Ss]aum$/,
  hood: /\bhood\b|kapuze/i,
  // Slots; a German "Taschenfutter" is a pocketing, and "Zwischenfutter" an interlining.
  shell: /\bshell\b|oberstoff/i,
  lining: /\blining\b|(?<!taschen|zwischen)futter/i,
  filling: /\bfilling\b|füllung/i,
  interfacing: /\binterfacing\b|einlage/i,
  backing: /\bbacking\b|unterstoff/i,
  'layer inside': /\b(interfacing|interlining|backing)\b|einlage|zwischenfutter|unterstoff/i,
  'lining or pocketing': /lining|pocketing|futter|taschenbeutel/i,
  trim: /\b(trim|cuffs?|ribs?|ribbing|binding|piping|facings?)\b|besatz|manschette|bündchen|einfass|paspel|beleg/i,
  'small part': /\b(hood|collar|cuffs?|pockets?|flaps?)\b|kapuze|kragen|manschette|tasche|patte/i,
  quilting: /quilt|[Ss]tepp/,
  zip: /\b(zip|zipper)\b|rei(?:ß|ss)verschluss/i,
  cord: /\b(cord|drawstring|drawcord)\b|kordel|zugband/i,
  // Sizes and plans.
  child:
    /\b(child|children|childs|children’s|kid|kids|toddler|baby|infant|boys?|girls?|kinder\w*|kleinkind|mädchen|jungen)\b/i,
  // Materials.
  down: /\bdown\b|daune/i,
  feathers: /\bfeathers?\b|federn/i,
  plumage: /\b(down|eiderdown|feathers?)\b|daune|federn/i,
  polyester: /\b(polyester|clusters?|hollowfibre|fibrefill|fiberfill)\b|hohlfaser|faserkugel/i,
  raised:
    /\b(brushed|raised|fleece|pile|flannel|velvet|velour|corduroy|terry|plush)\b|gerau(?:h)?t|flanell|samt\b|velours|frottee|plüsch/i,
  knitted: /\b(knit|knitted|jersey|fleece|rib)\b|gestrickt|strickstoff|gewirk/i,
  dense: /\b(coated|laminated|calendered|taffeta|ripstop)\b|beschichtet|laminiert|kalandriert|taft\b/i,
  fused: /\bfus(ible|ed|ing)\b|\biron-on\b|aufbügel|bügeleinlage|fixiereinlage/i,
} as const satisfies Record<string, RegExp>;

/** Whether words of the maker speak of it: "Rumpffutter" and "body lining" of a lining. */
export function speaksOf(thing: keyof typeof patterns, words: string): boolean {
  return patterns[thing].test(words);
}
