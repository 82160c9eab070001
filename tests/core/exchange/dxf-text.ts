/** Builds DXF texts of patterns line by line, apart from the product's own writer. */
import { readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import {
  type FoundPattern,
  type FoundPiece,
  type ReadChoices,
  type ReadLimits,
  type ReadPattern,
  defaultChoices,
  defaultLimits,
} from '../../../shared-core/exchange/pattern/pattern.ts';

export type Pairs = readonly (readonly [number, string | number])[];
export type At = readonly [number, number];

export function dxfText(pairs: Pairs): string {
  return `${pairs.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;
}

export function polyline(layer: number | string, points: readonly At[], isClosed = true): Pairs {
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    [70, isClosed ? 1 : 0],
    ...points.flatMap(
      ([x, y]): Pairs => [
        [0, 'VERTEX'],
        [8, layer],
        [10, x],
        [20, y],
      ],
    ),
    [0, 'SEQEND'],
  ];
}

export function line(layer: number | string, [x, y]: At, [toX, toY]: At): Pairs {
  return [
    [0, 'LINE'],
    [8, layer],
    [10, x],
    [20, y],
    [11, toX],
    [21, toY],
  ];
}

export function point(layer: number | string, [x, y]: At): Pairs {
  return [
    [0, 'POINT'],
    [8, layer],
    [10, x],
    [20, y],
  ];
}

export function words(layer: number | string, text: string): Pairs {
  return [
    [0, 'TEXT'],
    [8, layer],
    [10, 0],
    [20, 0],
    [40, 5],
    [1, text],
  ];
}

export function insert(block: string, more: Pairs = []): Pairs {
  return [[0, 'INSERT'], [8, 1], [2, block], [10, 311], [20, 97], ...more];
}

export interface PatternText {
  readonly header?: Pairs;
  readonly blocks?: Readonly<Record<string, Pairs>>;
  readonly entities?: Pairs;
}

export function patternText({ header, blocks = {}, entities = [] }: PatternText): string {
  const section = (name: string, inside: Pairs): Pairs => [
    [0, 'SECTION'],
    [2, name],
    ...inside,
    [0, 'ENDSEC'],
  ];
  return dxfText([
    ...(header ? section('HEADER', header) : []),
    ...section(
      'BLOCKS',
      Object.entries(blocks).flatMap(
        ([name, inside]): Pairs => [
          [0, 'BLOCK'],
          [8, 1],
          [2, name],
          [70, 64],
          [10, 0],
          [20, 0],
          ...inside,
          [0, 'ENDBLK'],
        ],
      ),
    ),
    ...section('ENTITIES', entities),
    [0, 'EOF'],
  ]);
}

export const metric = words(1, 'Units: METRIC');

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

export function readText(
  text: string,
  choices: Partial<ReadChoices> = {},
  limits: Partial<ReadLimits> = {},
  fileName = 'pattern.dxf',
): ReadPattern {
  return readPattern(
    bytesOf(text),
    fileName,
    { ...defaultLimits, ...limits },
    { ...defaultChoices, ...choices },
  );
}

/** The pattern, where nothing was wrong with the file. */
export function wellRead(text: string, choices: Partial<ReadChoices> = {}): FoundPattern {
  const { found, problems } = readText(text, choices);
  if (!found || problems.length > 0) throw new Error(JSON.stringify(problems));
  return found;
}

export function onlyPiece(text: string, choices: Partial<ReadChoices> = {}): FoundPiece {
  const { pieces } = wellRead(text, choices);
  if (pieces.length !== 1) throw new Error(`${pieces.length} pieces`);
  return pieces[0]!;
}
