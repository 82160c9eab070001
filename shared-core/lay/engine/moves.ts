/**
 * The memory in which pieces are moved, and the calls that move them. The loops themselves are compiled from
 * moves.as.ts; here their numbers are laid out and read back. What is exported as an array is the memory itself:
 * writing into it moves the piece.
 */
import type { Depths } from './depth.ts';
import type { DepthTable } from './kept-tables.ts';
import type { Bin, Item } from './model.ts';
import { movesBinary } from './moves-binary.ts';

/** The part of the language's WebAssembly that is used here; libraries without a browser or Node do not declare it. */
declare const WebAssembly: {
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object, imports: object) => { readonly exports: object };
  Memory: new (size: { initial: number; maximum: number; shared: boolean }) => WasmMemory;
};
interface WasmMemory {
  readonly buffer: SharedArrayBuffer;
  grow(pages: number): number;
}

const PAGE_BYTES = 65536;
/** A gigabyte of addresses; memory itself is taken as it is needed. */
const MOST_PAGES = 16384;
/** The rest is for the tables that one move may ask for. */
const MOST_BYTES = 768 * 2 ** 20;
/** Before this the compiled module keeps its own. */
const FIRST_BYTE = 1024;
const KEPT_ROOM = 8;
const EDGE_NUMBERS = 5;
const TABLE_HEAD_BYTES = 64;

/** What does not change while pieces move. Lengths in mm. */
export interface MovesSetup {
  readonly depths: Depths;
  readonly forms: readonly FormSize[];
  /** The pieces, and after them what never moves. */
  readonly items: readonly Pick<
    Item,
    'forms' | 'stepX' | 'stepY' | 'phaseX' | 'phaseY' | 'onFold' | 'areaMm2'
  >[];
  readonly fixed: readonly { readonly x: number; readonly y: number; readonly form: number }[];
  readonly bins: readonly Pick<Bin, 'startX' | 'widthMm'>[];
  /** How far beyond their boxes two pieces can meet. */
  readonly reachMm: number;
  readonly grainMm: number;
  /** Overlaps up to this count as none. */
  readonly nothingMm: number;
  /** How far pieces may pass a selvage. */
  readonly edgeMm: number;
  readonly widthMm: number;
  readonly seed: number;
  /** Tables are forgotten between moves, and made anew as they are asked, when memory has grown beyond this. */
  readonly maxBytes?: number;
  /** Asked before each table is made; once true, the call that needs it throws TimeIsUp and pieces lie anyhow. */
  readonly isLate?: () => boolean;
}

/** Thrown out of a call that moves pieces when a table is needed and the time for making any is over. */
export class TimeIsUp extends Error {}

export interface FormSize {
  readonly halfX: number;
  readonly halfY: number;
  readonly matchX: number;
  readonly matchY: number;
}

export interface Moves {
  /** Centres, forms and half boxes of all items. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly form: Int32Array;
  readonly halfX: Float64Array;
  readonly halfY: Float64Array;
  /** How much each item overlaps others, after a measure. */
  readonly overlap: Float64Array;
  /** Length of each bin that may be used. */
  readonly limit: Float64Array;
  setForm(item: number, form: number): void;
  /** Bins after this one are shut. */
  setActive(bin: number): void;
  /**
   * From now on places anywhere are drawn from fromX to toX alone, among these movers and these that are held still;
   * null: on all the cloth, among all.
   */
  setWindow(stretch: MovesWindow | null): void;
  /** Moves an item to the nearest place where it can lie in that form; false when there is none. */
  place(item: number, form: number, x: number, y: number): boolean;
  /** Moves an item to where it overlaps least; if it still does, tries so often to exchange it with another. */
  moveItem(item: number, exchanges: number): void;
  /** The sum of all overlaps with sizes but without weights; and the deepest in mm. */
  measure(): number;
  deepestMm(): number;
  resetWeights(): void;
  /** Pairs that overlap grow in weight; after a measure. */
  raiseWeights(): void;
  /** Pushes all pairs apart at once; true when nothing overlaps any more. */
  settle(rounds: number): boolean;
  /** Depth in mm of the second form in the first when its centre is x, y from the first's; 0 when it is clear. */
  depthBetween(first: number, second: number, x: number, y: number): number;
  /** About that depth times the root of the sides that both boxes share; 0 or less when it is clear. */
  roughBetween(first: number, second: number, x: number, y: number): number;
}

export interface MovesWindow {
  readonly fromX: number;
  readonly toX: number;
  readonly movers: readonly number[];
  /** Items beside them that they may touch. */
  readonly held: readonly number[];
}

interface Compiled {
  seed(value: number): void;
  fit(item: number, form: number, x: number, y: number): number;
  fillRough(table: number, firstX: number, firstY: number, secondX: number, secondY: number): void;
  moveItem(item: number, exchanges: number): void;
  measure(): number;
  resetWeights(): void;
  raiseWeights(): void;
  settle(rounds: number): number;
  depthBetween(first: number, second: number, x: number, y: number): number;
  roughBetween(first: number, second: number, x: number, y: number): number;
}
type Global = { value: number };

/** The machine gives no more memory. Whoever began the lay says so to the maker. */
export class OutOfMemory extends Error {}

// Compiled once for all lays of a program.
let compiledModule: object | undefined;

function moduleOfMoves(): object {
  compiledModule ??= new WebAssembly.Module(
    Uint8Array.from(movesBinary.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16)),
  );
  return compiledModule;
}

export function movesOf(setup: MovesSetup): Moves {
  const { depths, forms, items, fixed, bins } = setup;
  const { formCount } = depths;
  const movers = items.length;
  const total = movers + fixed.length;
  const choices = items.flatMap((item) => item.forms);
  const startOfChoices: number[] = [];
  let choicesSoFar = 0;
  for (const item of items) {
    startOfChoices.push(choicesSoFar);
    choicesSoFar += item.forms.length;
  }

  let end = FIRST_BYTE;
  const memory = new WebAssembly.Memory({ initial: 1, maximum: MOST_PAGES, shared: true });
  function grow(pages: number): void {
    try {
      memory.grow(pages);
    } catch {
      throw new OutOfMemory('the lay needs more memory than there is');
    }
  }
  /** Room for so many bytes; where it begins. */
  function room(bytes: number): number {
    const at = end;
    end = Math.ceil((at + bytes) / 8) * 8;
    const missing = Math.ceil((end - memory.buffer.byteLength) / PAGE_BYTES);
    // By halves more than asked, so that memory is not grown for each table.
    if (missing > 0) grow(Math.max(missing, Math.min(64, memory.buffer.byteLength >> 17)));
    return at;
  }
  const places: Record<string, number> = {};
  function reals(name: string, length: number): Float64Array {
    places[name] = room(length * 8);
    return new Float64Array(memory.buffer, places[name], length);
  }
  function wholes(name: string, length: number): Int32Array {
    places[name] = room(length * 4);
    return new Int32Array(memory.buffer, places[name], length);
  }

  function shorts(name: string, length: number): Float32Array {
    places[name] = room(length * 4);
    return new Float32Array(memory.buffer, places[name], length);
  }

  const x = reals('xAt', total);
  const y = reals('yAt', total);
  const form = wholes('formAt', total);
  const halfX = reals('halfXAt', total);
  const halfY = reals('halfYAt', total);
  // Behind the last item lie some that are nowhere: moves.as.ts looks at four at a time.
  shorts('noteXAt', total + 3).fill(Number.POSITIVE_INFINITY);
  for (const name of ['noteYAt', 'noteHalfXAt', 'noteHalfYAt']) shorts(name, total + 3);
  const overlap = reals('overlapAt', total);
  const limit = reals('limitAt', bins.length);
  const codes = wholes('codesAt', formCount * formCount);
  // A deep overlap of two large pieces is worse than one of two small ones.
  const size = reals('sizeAt', total).fill(Math.sqrt(setup.widthMm / 4));
  size.set(items.map((item) => Math.sqrt(Math.sqrt(item.areaMm2))));
  reals('weightAt', total * total);
  reals('depthAt', total * total);
  wholes('pairsAt', total * total);
  wholes('nearAt', total);
  const handy = wholes('handyAt', total);
  reals('keptLossAt', KEPT_ROOM);
  reals('keptXAt', KEPT_ROOM);
  reals('keptYAt', KEPT_ROOM);
  wholes('keptFormAt', KEPT_ROOM);
  wholes('onFoldAt', movers).set(items.map((item) => (item.onFold ? 1 : 0)));
  reals('stepXAt', movers).set(items.map((item) => item.stepX));
  reals('stepYAt', movers).set(items.map((item) => item.stepY));
  reals('phaseXAt', movers).set(items.map((item) => item.phaseX));
  reals('phaseYAt', movers).set(items.map((item) => item.phaseY));
  wholes('choiceStartAt', movers).set(startOfChoices);
  wholes('choiceCountAt', movers).set(items.map((item) => item.forms.length));
  wholes('choicesAt', choices.length).set(choices);
  const formHalfX = reals('formHalfXAt', forms.length);
  formHalfX.set(forms.map((one) => one.halfX));
  const formHalfY = reals('formHalfYAt', forms.length);
  formHalfY.set(forms.map((one) => one.halfY));
  reals('matchXAt', forms.length).set(forms.map((one) => one.matchX));
  reals('matchYAt', forms.length).set(forms.map((one) => one.matchY));
  reals('startXAt', bins.length).set(bins.map((bin) => bin.startX));
  reals('binWidthAt', bins.length).set(bins.map((bin) => bin.widthMm));

  /** Writes a table as moves.as.ts reads it (see depthIn); where it begins. */
  function write(table: DepthTable, first: FormSize, second: FormSize): number {
    const { cells, lists, edges } = table;
    const lineCount = cells.length / table.columnCount;
    const cornerCount = (table.columnCount + 1) * (lineCount + 1);
    const at = room(
      TABLE_HEAD_BYTES + 4 * (cells.length + lists.length + cornerCount) + 8 + 8 * edges.length,
    );
    const cellsAt = at + TABLE_HEAD_BYTES;
    const listsAt = cellsAt + 4 * cells.length;
    const edgesAt = Math.ceil((listsAt + 4 * lists.length) / 8) * 8;
    new Float64Array(memory.buffer, at, 5).set([
      table.halfX,
      table.halfY,
      table.cellsPerX,
      table.cellsPerY,
      table.reachMm,
    ]);
    const roughAt = edgesAt + 8 * edges.length;
    new Int32Array(memory.buffer, at + 40, 5).set([
      table.columnCount,
      edgesAt,
      edges.length / EDGE_NUMBERS,
      lineCount,
      roughAt,
    ]);
    new Int32Array(memory.buffer, cellsAt, cells.length).set(
      cells.map((cell) => (cell < 0 ? 0 : listsAt + 4 * (cell >> 1) + (cell & 1))),
    );
    const writtenLists = new Int32Array(memory.buffer, listsAt, lists.length);
    for (let list = 0; list < lists.length; list += 1 + lists[list]!) {
      const past = list + 1 + lists[list]!;
      writtenLists[list] = lists[list]!;
      for (let k = list + 1; k < past; k++) writtenLists[k] = edgesAt + 8 * EDGE_NUMBERS * lists[k]!;
    }
    new Float64Array(memory.buffer, edgesAt, edges.length).set(edges);
    compiled.fillRough(at, first.halfX, first.halfY, second.halfX, second.halfY);
    return at;
  }
  const tablesAt = end;
  // Where each table is written, by its key.
  const written = new Map<number, number>();
  /** Between calls, since within one a loop may still read any table. */
  function forgetTables(): void {
    if (end <= (setup.maxBytes ?? MOST_BYTES)) return;
    codes.fill(0);
    written.clear();
    end = tablesAt;
  }
  function prepare(first: number, second: number): void {
    const { key, flips, make } = depths.find(first, second);
    let at = written.get(key);
    if (at === undefined) {
      if (setup.isLate?.() === true) throw new TimeIsUp();
      at = write(make(), forms[first]!, forms[second]!);
      written.set(key, at);
    }
    codes[first * formCount + second] = at + flips;
  }

  const { exports } = new WebAssembly.Instance(moduleOfMoves(), {
    env: { memory },
    'moves.as': { prepare },
  });
  const globals = exports as unknown as Record<string, Global>;
  const compiled = exports as unknown as Compiled;
  function setGlobals(values: Record<string, number>): void {
    for (const [name, value] of Object.entries(values)) globals[name]!.value = value;
  }
  setGlobals(places);
  const { reachMm, grainMm, nothingMm, edgeMm, widthMm } = setup;
  setGlobals({ total, movers, formCount, reachMm, grainMm, nothingMm, edgeMm, widthMm });
  compiled.seed(setup.seed);

  function setWindow(stretch: MovesWindow | null): void {
    if (stretch === null) {
      for (let i = 0; i < total; i++) handy[i] = i;
      setGlobals({ windowFrom: -Infinity, windowTo: Infinity, handyCount: total, handyMovers: movers });
      return;
    }
    handy.set(stretch.movers);
    handy.set(stretch.held, stretch.movers.length);
    setGlobals({
      windowFrom: stretch.fromX,
      windowTo: stretch.toX,
      handyCount: stretch.movers.length + stretch.held.length,
      handyMovers: stretch.movers.length,
    });
  }
  setWindow(null);

  function setForm(item: number, to: number): void {
    form[item] = to;
    halfX[item] = formHalfX[to]!;
    halfY[item] = formHalfY[to]!;
  }
  fixed.forEach((one, k) => {
    x[movers + k] = one.x;
    y[movers + k] = one.y;
    setForm(movers + k, one.form);
  });

  return {
    x,
    y,
    form,
    halfX,
    halfY,
    overlap,
    limit,
    setForm,
    setActive: (bin) => setGlobals({ active: bin }),
    setWindow,
    place(item, to, toX, toY) {
      if (compiled.fit(item, to, toX, toY) === 0) return false;
      setForm(item, to);
      x[item] = globals.fitX!.value;
      y[item] = globals.fitY!.value;
      return true;
    },
    moveItem(item, exchanges) {
      forgetTables();
      compiled.moveItem(item, exchanges);
    },
    measure() {
      forgetTables();
      return compiled.measure();
    },
    deepestMm: () => globals.deepest!.value,
    resetWeights: compiled.resetWeights,
    raiseWeights: compiled.raiseWeights,
    settle: (rounds) => compiled.settle(rounds) !== 0,
    depthBetween: compiled.depthBetween,
    roughBetween: compiled.roughBetween,
  };
}
