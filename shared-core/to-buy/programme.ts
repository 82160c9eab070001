/**
 * An integer programme as plain data, and the text that a solver reads. What solves it is passed in:
 * the window and the headless command each bring their own.
 */

/** A whole number to be found, from `least` to `most`; each unit of it costs `cost`. All are integers. */
export interface Column {
  readonly cost: number;
  readonly min: number;
  readonly max: number;
}

/** The sum of factor x column lies from `least` to `most`; null: no bound on that side. */
export interface Row {
  readonly terms: readonly (readonly [column: number, factor: number])[];
  readonly min: number | null;
  readonly max: number | null;
}

export interface Programme {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

/** The whole numbers of least cost, proven so, one for each column; null where no numbers keep all rows. */
export type Solve = (programme: Programme) => Promise<readonly number[] | null>;

/** What a solver of LP texts gives back: its verdict and the value of each column by name. */
export interface SolverAnswer {
  readonly Status: string;
  readonly Columns: Readonly<Record<string, object>>;
}

/** Proven to the last minor unit. */
export const solverOptions = {
  mip_rel_gap: 0,
  mip_abs_gap: 0.5,
  output_flag: false,
} as const;

/** The programme in the LP text format. */
export function lpText({ columns, rows }: Programme): string {
  const sum = (terms: readonly (readonly [number, number])[]) =>
    terms
      .filter(([, factor]) => factor !== 0)
      .map(([column, factor]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} x${column}`)
      .join('\n ');
  const cost = sum(columns.map(({ cost }, index) => [index, cost]));
  const bounds = columns.map(({ min, max }, index) => ` ${min} <= x${index} <= ${max}`);
  const lines = rows.flatMap((row, index) => {
    const terms = sum(row.terms);
    if (row.min !== null && row.min === row.max) return [` r${index}: ${terms} = ${row.min}`];
    return [
      ...(row.min === null ? [] : [` r${index}l: ${terms} >= ${row.min}`]),
      ...(row.max === null ? [] : [` r${index}m: ${terms} <= ${row.max}`]),
    ];
  });
  return [
    'Minimize',
    ` cost: ${cost === '' ? '0 x0' : cost}`,
    'Subject To',
    ...lines,
    'Bounds',
    ...bounds,
    'General',
    ...columns.map((_, index) => ` x${index}`),
    'End',
    '',
  ].join('\n');
}

/** Reads a solver's answer. Throws when it is neither proven best nor proven impossible. */
export function solverNumbers({ columns }: Programme, answer: SolverAnswer): readonly number[] | null {
  // Every column has bounds, so that what the presolve cannot tell from unbounded is impossible.
  if (answer.Status === 'Infeasible' || answer.Status === 'Primal infeasible or unbounded') return null;
  if (answer.Status !== 'Optimal') throw new Error(`the solver ended with: ${answer.Status}`);
  return columns.map((_, index) => {
    const column = answer.Columns[`x${index}`];
    const value = column && 'Primal' in column ? column.Primal : undefined;
    if (typeof value !== 'number') throw new Error(`the solver gave no number for column ${index}`);
    return Math.round(value);
  });
}
