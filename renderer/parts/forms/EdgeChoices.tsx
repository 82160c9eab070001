/** Some edges of the plan's pieces, chosen one after another: what a zip runs along, what a binding is sewn to. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { EdgePlace } from '../../../shared-core/plan/model/outline.ts';
import { ChoiceField } from './Field.tsx';

const separator = ' / ';
const keyOf = ({ pieceId, edge }: EdgePlace) => `${pieceId}${separator}${edge}`;

export interface EdgeChoicesProps {
  readonly plan: CoatPlan;
  readonly edges: readonly EdgePlace[];
  readonly onChange: (edges: readonly EdgePlace[]) => void;
}

export function EdgeChoices({ plan, edges, onChange }: EdgeChoicesProps) {
  const places = plan.pieces.flatMap((piece) =>
    piece.band
      ? []
      : piece.outline.edges
          .filter(({ name }) => name !== piece.foldEdge)
          .map(({ name }) => ({ pieceId: piece.id, edge: name, label: `${piece.name}: ${name}` })),
  );
  const options = places.map((place) => ({ value: keyOf(place), label: place.label }));
  const choose = (at: number, key: string) => {
    const chosen = places.find((place) => keyOf(place) === key);
    const next = [...edges.slice(0, at), ...(chosen ? [chosen] : []), ...edges.slice(at + 1)];
    onChange(next.map(({ pieceId, edge }) => ({ pieceId, edge })));
  };
  return (
    <>
      {[...edges.map(keyOf), ''].map((key, index) => (
        <ChoiceField
          // biome-ignore lint/suspicious/noArrayIndexKey: an edge is known by its place in the list
          key={index}
          label={
            key === '' ? say('edge-choices.another-edge') : say('edge-choices.edge', { index: index + 1 })
          }
          value={key}
          options={options}
          emptyLabel={
            key === '' ? say('edge-choices.choose-an-edge') : say('edge-choices.not-along-this-one')
          }
          onChange={(next) => choose(index, next)}
        />
      ))}
    </>
  );
}
