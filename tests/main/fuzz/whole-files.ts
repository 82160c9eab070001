/** Sound files of every kind, from which the spoiled ones are made. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backupFolder } from '../../../main/database/backups/backup-folder.ts';
import { openServices } from '../../../main/services/calls/services.ts';
import type { Workshop } from '../../../shared-core/contract/contract.ts';
import { fenwalkCoat } from '../../../shared-core/demo/coat.ts';
import { write as writeDxf } from '../../../shared-core/exchange/dxf/dxf-write.ts';
import { write as writeSvg } from '../../../shared-core/exchange/svg/svg-write.ts';
import {
  type At,
  insert,
  line,
  metric,
  patternText,
  point,
  polyline,
  words,
} from '../../core/exchange/dxf-text.ts';
import { exif, jpeg } from '../../fixtures/pictures.ts';
import { clothLot, down, fillLot, taffeta } from '../asking-inputs.ts';
import type { FileKind } from './fuzz-file.ts';

export type WholeFiles = Readonly<Record<Exclude<FileKind, 'typed texts'>, readonly Buffer[]>>;

/** Made anew for each run, since some come from a workshop; all but the backup are the same each time. */
export async function wholeFiles(): Promise<WholeFiles> {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-fuzz-'));
  try {
    return { ...patterns(), photo: photos(), ...(await tables(folder)) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function patterns() {
  const coat = fenwalkCoat({});
  const plan = { ...coat, pieces: coat.pieces.slice(0, 3) };
  const one = { ...coat, pieces: coat.pieces.filter(({ name }) => name === 'Cuff') };
  const square: readonly At[] = [
    [0, 0],
    [310, 0],
    [310, 190],
    [0, 190],
  ];
  const byHand = patternText({
    header: [
      [9, '$INSUNITS'],
      [70, 4],
    ],
    blocks: {
      PANEL: [
        ...polyline(1, square),
        ...polyline(14, square),
        ...line(7, [10, 10], [90, 10]),
        ...point(4, [90, 0]),
      ],
      OUTER: insert('PANEL', [
        [41, 2],
        [50, 30],
      ]),
    },
    entities: [...metric, ...words(1, 'Sample Size: 14'), ...insert('OUTER'), ...polyline('0', square)],
  });
  const drawn =
    '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="700mm" height="500mm" viewBox="0 0 700 500">' +
    '<style>.a{display:none}</style><defs><symbol id="s"><rect width="90" height="70" rx="9"/></symbol></defs>' +
    '<g transform="translate(10 20) rotate(30)" id="g"><path d="M0 0C10 50 90 50 100 0S150 90 200 0a30 40 10 0 1 60 0v200H0z"/>' +
    '<use href="#s" x="300"/></g><polygon points="1,1 200,1 100,180"/><ellipse cx="400" cy="300" rx="60" ry="40"/></svg>';
  const bytes = (...texts: string[]) => texts.map((text) => Buffer.from(text));
  return {
    DXF: bytes(writeDxf(plan, { unit: 'mm' }), writeDxf(one, { unit: 'in' }), byHand),
    SVG: bytes(writeSvg(plan), writeSvg(one), drawn),
  };
}

function photos(): Buffer[] {
  return [jpeg(200, 150), jpeg(33, 640, { beside: [[0xe1, exif()]], filler: 60 })];
}

async function tables(folder: string) {
  const dataFile = join(folder, 'own.sqlite');
  const opened = openServices({ dataFile, demoFile: join(folder, 'demo.sqlite') });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  const get = async (call: string, input: unknown, workshop: Workshop = 'own') => {
    const outcome = await services.answer({ call, workshop, input });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    return outcome.value as {
      readonly itemId: string;
      readonly text: string;
      readonly rows: readonly { name: string }[];
    };
  };
  try {
    const { itemId } = await get('saveItem', taffeta);
    await get('receiveLot', clothLot(itemId));
    const fill = await get('saveItem', down);
    await get('receiveLot', fillLot(fill.itemId, 640));
    await get('openDemo', {}, 'demo');
    const buffers = async (call: string) =>
      [await get(call, {}), await get(call, {}, 'demo')].map(({ text }) => Buffer.from(text));
    const ownPrices =
      'supplier,item,sold as,step or length (cm),width (cm),mass (g),price (EUR),priced on,breaks\n' +
      'Fernlow,Peatwater taffeta,by length,10,147,,1.15,2026-10-12,500 cm = 1.05; 20 m = 0.98\n' +
      'Lanternhill,Fenwalk down,by mass,,,100,7.45,2026-10-14,\n';
    const { rows } = await get('backUp', {});
    return {
      'price list': [Buffer.from(ownPrices), ...(await buffers('priceList'))],
      'stash file': await buffers('stashFile'),
      backup: [readFileSync(join(backupFolder(dataFile), rows[0]!.name))],
    };
  } finally {
    services.close();
  }
}
