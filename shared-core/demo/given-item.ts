/** One item of the demo workshop. Quantities are given as the makers typed them, and read like anything typed. */
import { readQuantity } from '../measure/read.ts';
import { emptyFacts, factFields, factProblems, type ItemKind } from '../stash/kinds.ts';
import type { Item } from '../stash/stash.ts';

export interface GivenItem {
  readonly id: string;
  readonly name: string;
  readonly colour: string;
  readonly place: string;
  readonly notes?: string;
  /** A text for a quantity, as typed; else the fact itself. */
  readonly facts: Readonly<Record<string, string | boolean>>;
}

/** Throws for a text that cannot be read: the demo's own mistake. */
export function givenItem(kind: ItemKind, given: GivenItem): Item {
  const facts: Record<string, unknown> = { ...emptyFacts(kind) };
  const typed: Record<string, string> = {};
  const fields = new Map(factFields(kind));
  for (const [fact, value] of Object.entries(given.facts)) {
    const field = fields.get(fact);
    if (field?.kind === 'quantity' && typeof value === 'string') {
      const read = readQuantity(field.quantity, value, {
        where: `${field.label} of ${given.name}`,
        system: 'metric',
      });
      if (!read.ok)
        throw new RangeError(read.problems.map((problem) => `${problem.where} ${problem.what}`).join('; '));
      facts[fact] = read.value;
      typed[fact] = value;
    } else facts[fact] = value;
  }
  const [problem] = factProblems(kind, facts, given.name);
  if (problem) throw new RangeError(`${problem.where} ${problem.what}`);
  const { id, name, colour, place, notes = '' } = given;
  // The facts were checked against the kind's own fields just above.
  return { id, name, colour, place, notes, typed, kind, facts } as Item;
}
