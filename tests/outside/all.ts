/** Every module of outside checks; a new one is one import and one line. */
import { type OutsideCheck, runOutsideChecks } from './outside.ts';
import basket from './basket.ts';
import batches from './batches.ts';
import batting from './batting.ts';
import bindings from './bindings.ts';
import care from './care.ts';
import cost from './cost.ts';
import down from './down.ts';
import draft from './draft.ts';
import envelope from './envelope.ts';
import fastenings from './fastenings.ts';
import fill from './fill.ts';
import finished from './finished.ts';
import garmentThread from './garment-thread.ts';
import garments from './garments.ts';
import label from './label.ts';
import needles from './needles.ts';
import padding from './padding.ts';
import patternFiles from './pattern-files.ts';
import puzzles from './puzzles.ts';
import takeUp from './take-up.ts';
import thread from './thread.ts';
import units from './units.ts';
import warmth from './warmth.ts';
import widths from './widths.ts';

export interface OutsideModule {
  readonly name: string;
  readonly rows: readonly OutsideCheck[];
}

export const outsideModules: readonly OutsideModule[] = [
  { name: 'envelopes', rows: envelope },
  { name: 'garments', rows: garments },
  { name: 'widths', rows: widths },
  { name: 'batches', rows: batches },
  { name: 'thread of garments', rows: garmentThread },
  { name: 'down', rows: down },
  { name: 'finished garments', rows: finished },
  { name: 'batting', rows: batting },
  { name: 'fastenings', rows: fastenings },
  { name: 'draft', rows: draft },
  { name: 'units', rows: units },
  { name: 'basket', rows: basket },
  { name: 'bindings', rows: bindings },
  { name: 'care', rows: care },
  { name: 'cost', rows: cost },
  { name: 'fill', rows: fill },
  { name: 'label', rows: label },
  { name: 'needles', rows: needles },
  { name: 'padding', rows: padding },
  { name: 'pattern files', rows: patternFiles },
  { name: 'puzzles', rows: puzzles },
  { name: 'take-up', rows: takeUp },
  { name: 'thread', rows: thread },
  { name: 'warmth', rows: warmth },
];

/** Every row with its verdict and the topic that it belongs to, in the order of the modules. */
export const allVerdicts = outsideModules.flatMap(({ name, rows }) =>
  runOutsideChecks(rows).map((verdict) => ({ topic: name, ...verdict })),
);
