/**
 * Generic names of fibres for both markets. Sources: US 16 CFR 303.7 and 15 USC 68b (wool), from memory; Annex I of
 * EU 1007/2011, as a shop's page on fibre labelling prints it (lanellya.de) and from memory. Down and feathers are no
 * textile fibre; their species is kept, as buyers and rules on filled goods ask for it.
 */
import { speaksOf } from '../../wording/words-in-names.ts';
export interface FibreRecord {
  /** Name on a US label. */
  readonly us: string;
  /** Name on an EU label. */
  readonly eu: string;
  /** Other words makers use. */
  readonly alias?: readonly string[];
  /** Wool by the US Wool Act, the hair of some goats and camels with it: named however little there is of it. */
  readonly isWool?: true;
  /** Has a function at any share, so it is named: stretch. */
  readonly isFunctional?: true;
  readonly isPlumage?: true;
}

const records = {
  cotton: { us: 'cotton', eu: 'cotton' },
  linen: { us: 'linen', eu: 'linen', alias: ['flax'] },
  hemp: { us: 'hemp', eu: 'hemp', alias: ['true hemp'] },
  jute: { us: 'jute', eu: 'jute' },
  ramie: { us: 'ramie', eu: 'ramie' },
  kapok: { us: 'kapok', eu: 'kapok' },
  abaca: { us: 'abaca', eu: 'abaca', alias: ['manila hemp', 'manila'] },
  sisal: { us: 'sisal', eu: 'sisal' },
  coir: { us: 'coir', eu: 'coir', alias: ['coconut'] },
  broom: { us: 'broom', eu: 'broom' },
  sunn: { us: 'sunn', eu: 'sunn' },
  henequen: { us: 'henequen', eu: 'henequen' },
  maguey: { us: 'maguey', eu: 'maguey' },
  alfa: { us: 'alfa', eu: 'alfa', alias: ['esparto'] },
  wool: {
    us: 'wool',
    eu: 'wool',
    alias: ['merino', 'merino wool', 'lambswool', 'lamb’s wool'],
    isWool: true,
  },
  'recycled wool': {
    us: 'recycled wool',
    eu: 'wool',
    alias: ['recycled merino', 'recycled merino wool', 'recycled lambswool'],
    isWool: true,
  },
  cashmere: { us: 'cashmere', eu: 'cashmere', alias: ['cashmere wool'], isWool: true },
  mohair: { us: 'mohair', eu: 'mohair', isWool: true },
  alpaca: { us: 'alpaca', eu: 'alpaca', alias: ['alpaca wool', 'baby alpaca'], isWool: true },
  camel: { us: 'camel hair', eu: 'camel', alias: ['camel wool'], isWool: true },
  llama: { us: 'llama', eu: 'llama', isWool: true },
  vicuna: { us: 'vicuna', eu: 'vicuña', isWool: true },
  angora: { us: 'angora rabbit hair', eu: 'angora', alias: ['angora rabbit'] },
  yak: { us: 'yak hair', eu: 'yak', alias: ['yak wool'] },
  guanaco: { us: 'guanaco', eu: 'guanaco' },
  cashgora: { us: 'cashgora hair', eu: 'cashgora' },
  horsehair: { us: 'horsehair', eu: 'horsehair', alias: ['horse hair'] },
  silk: { us: 'silk', eu: 'silk' },
  nylon: { us: 'nylon', eu: 'polyamide', alias: ['pa'] },
  polyester: { us: 'polyester', eu: 'polyester', alias: ['pet'] },
  acrylic: { us: 'acrylic', eu: 'acrylic' },
  modacrylic: { us: 'modacrylic', eu: 'modacrylic' },
  spandex: { us: 'spandex', eu: 'elastane', isFunctional: true },
  elastomultiester: { us: 'elastoester', eu: 'elastomultiester', isFunctional: true },
  rubber: { us: 'rubber', eu: 'elastodiene', isFunctional: true },
  rayon: {
    us: 'rayon',
    eu: 'viscose',
    alias: ['bamboo viscose', 'viscose from bamboo', 'rayon from bamboo'],
  },
  lyocell: { us: 'lyocell', eu: 'lyocell' },
  modal: { us: 'modal', eu: 'modal' },
  cupro: { us: 'cupro', eu: 'cupro' },
  acetate: { us: 'acetate', eu: 'acetate' },
  triacetate: { us: 'triacetate', eu: 'triacetate' },
  polypropylene: { us: 'olefin', eu: 'polypropylene' },
  polyethylene: { us: 'polyethylene', eu: 'polyethylene' },
  polylactide: { us: 'PLA', eu: 'polylactide' },
  aramid: { us: 'aramid', eu: 'aramid' },
  polyurethane: { us: 'polyurethane', eu: 'polyurethane' },
  melamine: { us: 'melamine', eu: 'melamine' },
  metal: { us: 'metallic', eu: 'metal', alias: ['metal fibre', 'metallic fibre'] },
  down: { us: 'down', eu: 'down', isPlumage: true },
  'goose down': { us: 'goose down', eu: 'goose down', isPlumage: true },
  'duck down': { us: 'duck down', eu: 'duck down', isPlumage: true },
  'eider down': { us: 'eider down', eu: 'eider down', alias: ['eiderdown'], isPlumage: true },
  feather: { us: 'feathers', eu: 'feathers', alias: ['waterfowl feathers'], isPlumage: true },
  'goose feather': { us: 'goose feathers', eu: 'goose feathers', isPlumage: true },
  'duck feather': { us: 'duck feathers', eu: 'duck feathers', isPlumage: true },
} as const satisfies Record<string, FibreRecord>;

export type Fibre = keyof typeof records;

export const fibres: Readonly<Record<Fibre, FibreRecord>> = records;

const fibreByWord = new Map<string, Fibre>();
for (const [name, record] of Object.entries(fibres) as [Fibre, FibreRecord][]) {
  for (const word of [name, record.us, record.eu, ...(record.alias ?? [])]) {
    // Recycled wool is wool by its EU name, and wool itself comes first.
    const plain = word.toLowerCase();
    if (!fibreByWord.has(plain)) fibreByWord.set(plain, name);
  }
}

/** Words before a name that leave the generic name as it is. */
const besides = /^(organic|recycled|virgin|new|pure|washed|white|grey|gray)\s+/;

/** The fibre of a word, whatever its case; undefined for what is no generic name. */
export function fibreOfWord(word: string): Fibre | undefined {
  const plain = word.trim().toLowerCase().replace(/\s+/g, ' ');
  const known = fibreByWord.get(plain);
  if (known !== undefined || !besides.test(plain)) return known;
  return fibreOfWord(plain.replace(besides, ''));
}

/** Whether words about a filling, its name and its fibres, speak of down or feathers. */
export function isPlumage(words: string): boolean {
  return speaksOf('plumage', words);
}
