/** DXF texts by the million letters: joined as text, since lists of pairs take more memory than the file. */
import { type At, dxfText, metric } from '../dxf-text.ts';

export interface Trap {
  readonly name: string;
  readonly text: () => string;
}

/** As many things, each by its number. */
export const many = <Thing>(count: number, thing: (index: number) => Thing): Thing[] =>
  Array.from({ length: count }, (_, index) => thing(index));

export const square: readonly At[] = [
  [0, 0],
  [310, 0],
  [310, 190],
  [0, 190],
];
/** Entities and blocks as a whole drawing. */
export function drawing(entities: string, blocks = ''): string {
  return (
    `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n` +
    `${dxfText(metric)}${entities}0\nENDSEC\n0\nEOF\n`
  );
}
export const block = (name: string, inside: string): string => `0\nBLOCK\n2\n${name}\n${inside}0\nENDBLK\n`;
export const placed = (name: string): string => `0\nINSERT\n2\n${name}\n10\n0\n20\n0\n`;
export const closedLine = (layer: string, points: readonly At[]): string =>
  `0\nPOLYLINE\n8\n${layer}\n70\n1\n${points.map(([x, y]) => `0\nVERTEX\n10\n${x}\n20\n${y}\n`).join('')}0\nSEQEND\n`;
export const stroke = (layer: string, [x, y]: At, [toX, toY]: At): string =>
  `0\nLINE\n8\n${layer}\n10\n${x}\n20\n${y}\n11\n${toX}\n21\n${toY}\n`;
