/**
 * The least multiple of stepMm that is at least valueMm, for cloth sold by the eighth of a yard or the tenth of
 * a metre. A float's dust above a multiple (1e-9 of a step, or 1e-12 of the value) buys no further step.
 *
 * valueMm: 0 or more; stepMm: above 0; else it throws.
 */
export function roundUpToStep(valueMm: number, stepMm: number): number {
  return stepsUp(valueMm, stepMm) * stepMm;
}

/** How many steps that is, a whole number. */
export function stepsUp(valueMm: number, stepMm: number): number {
  if (!(valueMm >= 0 && Number.isFinite(valueMm)))
    throw new RangeError(`not a length to round up: ${valueMm}`);
  if (!(stepMm > 0 && Number.isFinite(stepMm))) throw new RangeError(`not a step: ${stepMm}`);
  const exact = valueMm / stepMm;
  const nearest = Math.round(exact);
  const dust = Math.max(1e-9, 1e-12 * exact);
  return Math.abs(exact - nearest) <= dust ? nearest : Math.ceil(exact);
}
