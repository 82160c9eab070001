/** The heat of an iron that materials bear, by their fibres. */
import type { Item } from '../../stash/stash.ts';
import { readFibre } from './fibre.ts';
import type { Fibre } from './fibre-names.ts';

/**
 * Highest sole of the iron that a fibre bears, Celsius. Source: care-symbol page (one dot 110, two 150, three
 * 200, as ISO 3758:2012 has them; the edition of 2023 was not read); hairs and other plant fibres as wool and linen,
 * from memory.
 */
export const ironC: Readonly<Partial<Record<Fibre, number>>> = {
  nylon: 110,
  acrylic: 110,
  modacrylic: 110,
  acetate: 110,
  polypropylene: 110,
  polyethylene: 110,
  spandex: 110,
  polyester: 150,
  wool: 150,
  'recycled wool': 150,
  cashmere: 150,
  mohair: 150,
  alpaca: 150,
  camel: 150,
  llama: 150,
  yak: 150,
  silk: 150,
  rayon: 150,
  lyocell: 150,
  modal: 150,
  cupro: 150,
  triacetate: 150,
  cotton: 200,
  linen: 200,
  hemp: 200,
  ramie: 200,
  jute: 200,
  kapok: 200,
};

/** The least heat that a material's fibres bear, Celsius; null where they are not known. Shared with the cautions. */
export function ironLimitC(item: Item): number | null {
  if (item.kind !== 'cloth' && item.kind !== 'batting') return null;
  const read = readFibre(item.facts.fibre ?? '', item.name);
  if (!read.ok) return null;
  const limits = read.value.flatMap(({ fibre }) => ironC[fibre] ?? []);
  return limits.length > 0 ? Math.min(...limits) : null;
}
