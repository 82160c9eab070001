/** The filling list as a table to weigh out by at the table: chamber by chamber with its grams, and a box to tick. */
import { say } from '../../wording/say.ts';
import type { MeasureSystem } from '../../measure/quantity.ts';
import { sentenceCase } from '../../measure/text/sentence-case.ts';
import { showQuantity } from '../../measure/show.ts';
import type { PaperRow, PaperTable } from '../../paper/paper-table.ts';
import type { ChamberFill, FillingList } from './fill.ts';

export interface FillingTableOptions {
  readonly system: MeasureSystem;
  /** The coat and the fill: "Fenwalk coat: Puffball clusters". */
  readonly title: string;
  /** Sentences to have in sight while filling. */
  readonly cautions: readonly string[];
}

export function fillingTable(
  list: FillingList,
  { system, title, cautions }: FillingTableOptions,
): PaperTable {
  const fine = { metric: 'g', imperial: 'oz' } as const;
  const digits = system === 'metric' ? 1 : 3;
  const mass = (grams: number) => ({
    text: showQuantity('mass', grams, { system, unit: fine, digits }),
    fileText: showQuantity('mass', grams, { system, unit: fine, digits }).replace(/ \S+$/, ''),
  });
  const length = (mm: number) =>
    showQuantity('length', mm, { system, unit: { metric: 'mm', imperial: 'in' } });
  const volume = (cm3: number) =>
    showQuantity('volume', cm3, { system, unit: { metric: 'cm3', imperial: 'in3' }, digits: 0 });
  const whole = (grams: number) => showQuantity('mass', grams, { system, unit: fine, digits: 0 });
  const row = (chamber: ChamberFill): PaperRow => [
    '',
    String(chamber.number),
    length(chamber.widthMm),
    length(chamber.lengthMm),
    volume(chamber.volumeCm3),
    mass(chamber.massG),
    String(chamber.count),
    mass(chamber.massG * chamber.count),
  ];
  const total = (label: string, grams: number): PaperRow => ['', label, '', '', '', '', '', mass(grams)];
  const unit = fine[system];
  return {
    title,
    lead: [
      say('filling-table.weigh-out-each-chamber-from-the'),
      say('filling-table.overfill-x', { overfillFactor: list.overfillFactor }),
      `${sentenceCase(weightWords(list, system))}.`,
      say('filling-table.with-to-spare-have-at-hand', {
        whole: whole(list.spareG),
        whole2: whole(list.filledG + list.spareG),
      }),
    ].join(' '),
    sectionHead: 'piece',
    columns: [
      { head: '', kind: 'tick', only: 'paper' },
      { head: say('filling-table.chamber'), fileHead: 'chamber', kind: 'number' },
      { head: say('common.width'), fileHead: 'width', kind: 'number' },
      { head: say('common.length'), fileHead: 'length', kind: 'number' },
      { head: say('filling-table.holds'), fileHead: 'holds', kind: 'number' },
      { head: say('common.each'), kind: 'number', fileHead: `each (${unit})` },
      { head: say('filling-table.times'), fileHead: 'times', kind: 'number' },
      { head: say('common.together'), kind: 'number', fileHead: `together (${unit})` },
    ],
    sections: byPiece(list.chambers).map(({ pieceName, chambers }) => ({
      title: pieceName,
      rows: chambers.map(row),
      total: total(
        '',
        chambers.reduce((sum, chamber) => sum + chamber.massG * chamber.count, 0),
      ),
    })),
    total: total(say('common.in-all'), list.filledG),
    notes: [...list.problems.map(({ where, what, fix }) => `${where} ${what}. ${fix}`), ...cautions],
  };
}

/** "112 g/m² over the stuffed pieces, good to 5 % either way: 188 to 208 g". */
export function weightWords({ gPerM2, filledG, toleranceRatio }: FillingList, system: MeasureSystem): string {
  const weight = showQuantity('arealMass', gPerM2, { system, digits: system === 'metric' ? 0 : 1 });
  const over = say('filling-table.over-the-stuffed-pieces', { weight });
  if (toleranceRatio === 0) return over;
  const unit = { metric: 'g', imperial: 'oz' } as const;
  const mass = (grams: number) =>
    showQuantity('mass', grams, { system, unit, digits: system === 'metric' ? 0 : 1 });
  const from = mass(filledG * (1 - toleranceRatio)).replace(/ \S+$/, '');
  return say('filling-table.good-to-either-way-to', {
    over,
    toleranceRatio: toleranceRatio * 100,
    from,
    mass: mass(filledG * (1 + toleranceRatio)),
  });
}

/** Chambers under the name of their piece, in the order of the list. */
export function byPiece(
  chambers: readonly ChamberFill[],
): readonly { readonly pieceName: string; readonly chambers: readonly ChamberFill[] }[] {
  const pieces = new Map<string, ChamberFill[]>();
  for (const chamber of chambers) {
    const before = pieces.get(chamber.pieceName);
    if (before) before.push(chamber);
    else pieces.set(chamber.pieceName, [chamber]);
  }
  return [...pieces].map(([pieceName, own]) => ({ pieceName, chambers: own }));
}
