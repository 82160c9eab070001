import { describe, expect, it } from 'vitest';
import { howText, measureIn } from '../../../shared-core/measure/basis.ts';

describe('how a figure was got', () => {
  const how = `the edges, less ${measureIn('length', 38.1)}, in a sack of ${measureIn('volume', 6250)}`;
  it('is told in the units that the maker chose', () => {
    expect(howText(how, 'metric')).toBe('the edges, less 38.1 mm, in a sack of 6.25 L');
    expect(howText(how, 'imperial')).toBe('the edges, less 1 1/2 in, in a sack of 381.4 in³');
  });
  it('keeps what is no measure as it stands', () => {
    expect(howText('2 + 2 T / L {thickness 3} {length}', 'metric')).toBe(
      '2 + 2 T / L {thickness 3} {length}',
    );
  });
});
