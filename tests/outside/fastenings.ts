/** Zips against published measuring instructions and what shops sell. */
import {
  fasteningLengthMm,
  usualSeparatingZipsMm,
  zipToBuy,
} from '../../shared-core/requirement/fastenings.ts';
import { piece, slot } from '../fixtures/small-workshop.ts';
import { panel, smallCoat } from '../core/requirement/small-coat.ts';
import type { OutsideCheck } from './outside.ts';

const measuring = 'apparel-merchandising.com, zipper measurement';
const shops = 'common practice, no source';

/** Zip along a front edge of a length, so much shorter. */
function zipMm(edgeMm: number, shorterByMm: number): number {
  const coat = smallCoat({ pieces: [piece('front', panel(edgeMm, 240, 'front edge', {}))], seams: [] });
  const zip = slot('zip', 'fastening', {
    alongEdges: [{ pieceId: 'front', edge: 'front edge' }],
    shorterByMm,
  });
  return fasteningLengthMm(coat, zip) ?? Number.NaN;
}
function bought(wantedMm: number, sold: readonly number[]) {
  const found = zipToBuy(wantedMm, sold);
  return found.ok ? found.value : { soldMm: Number.NaN, shortenToMm: Number.NaN };
}
const everyCm = Array.from({ length: 60 }, (_, i) => (20 + i) * 10);

const rows: readonly OutsideCheck[] = [
  {
    name: 'zip of a hooded front of 73 cm, less 10 cm and 2 %, cm',
    source: `${measuring}: 61.74`,
    expected: 61.74,
    got: zipMm(730, 100 + 0.02 * 630) / 10,
    tolerance: 0.005,
  },
  {
    name: 'zip to buy for a high neck of 63.82 cm, cm',
    source: `${measuring}: 64`,
    expected: 64,
    got: bought(638.2, everyCm).soldMm / 10,
    tolerance: 0,
  },
  {
    name: 'shortest separating zip, in',
    source: shops,
    expected: 12,
    got: Math.min(...usualSeparatingZipsMm) / 25.4,
    tolerance: 1e-9,
  },
  {
    name: 'longest separating zip, in',
    source: shops,
    expected: 36,
    got: Math.max(...usualSeparatingZipsMm) / 25.4,
    tolerance: 1e-9,
  },
  {
    name: 'separating zip for 23 1/2 in, in',
    source: `${shops}: 2 in steps`,
    expected: 24,
    got: bought(23.5 * 25.4, usualSeparatingZipsMm).soldMm / 25.4,
    tolerance: 1e-9,
  },
  {
    name: 'to be shortened to, in',
    source: `${shops}: shortened from the top`,
    expected: 23.5,
    got: (bought(23.5 * 25.4, usualSeparatingZipsMm).shortenToMm ?? Number.NaN) / 25.4,
    tolerance: 1e-9,
  },
];

export default rows;
