/** Zips of drafted fronts against published measuring instructions, and what is bought and shortened. */
import { fasteningLengthMm, zipToBuy } from '../../shared-core/requirement/fastenings.ts';
import { slotById } from '../../shared-core/plan/model/coat-plan.ts';
import { drafted } from './drafted.ts';
import type { OutsideCheck } from './outside.ts';

const measuring = 'apparel-merchandising.com, zipper measurement';

/** Zip of a man's drafted front of a length from the nape down, cm. */
function zipCm(backLengthCm: number, isHigh: boolean): number {
  const { plan } = drafted(
    { kind: 'men', bustMm: 1000, waistMm: 880, heightMm: 1780 },
    {
      coatLengthMm: backLengthCm * 10,
      hasCollar: isHigh,
      hood: isHigh ? 'none' : 'two panels',
    },
  );
  return (fasteningLengthMm(plan, slotById(plan, 'zip')) ?? Number.NaN) / 10;
}

/** Bought by whole centimetres from 20 to 79. */
const found = zipToBuy(
  638.2,
  Array.from({ length: 60 }, (_, i) => (20 + i) * 10),
);

const dropReason =
  'the neck of the source is 8 cm deep in front, that of a draft its own within 1.5 cm; 2 to 3 % is taken off for the tape, of 63 cm 1.3 to 1.9';

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    isMainJob: true,
    name: 'zip of a hooded front, 71 cm from the nape to the hem, cm',
    source: `${measuring}: 71 less 8 for the neck, less 2 %, printed 61.5`,
    expected: 61.5,
    got: zipCm(71, false),
    tolerance: 2,
    toleranceReason: dropReason,
  },
  {
    class: 'A',
    isMainJob: true,
    name: 'zip of a front with a high neck, 65 cm from the nape to the hem, cm',
    source: `${measuring}: 65 less 6 for the neck, less 2 %, and 6 up the collar, printed 63.82`,
    expected: 63.82,
    got: zipCm(65, true),
    tolerance: 2,
    toleranceReason: dropReason,
  },
  {
    class: 'B',
    name: 'zip to buy for 63.82 cm where every centimetre is sold, cm',
    source: `${measuring}: 64`,
    expected: 64,
    got: found.ok ? found.value.soldMm / 10 : Number.NaN,
    tolerance: 0,
  },
];

export default rows;
