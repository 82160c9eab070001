/** Where a piece has room for its name: the widest stretch across it, the nearer its middle the better. */
import type { SheetPoint } from './tiles.ts';

export interface LabelPlace extends SheetPoint {
  /** Room along x. */
  readonly width: number;
}

/** ring: closed by itself, of three points at least. */
export function labelPlace(ring: readonly SheetPoint[]): LabelPlace {
  const ys = ring.map(({ y }) => y);
  const low = Math.min(...ys);
  const high = Math.max(...ys);
  let best: LabelPlace = { x: ring[0]?.x ?? 0, y: (low + high) / 2, width: 0 };
  let bestWorth = -1;
  for (let step = 2; step <= 14; step++) {
    const y = low + ((high - low) * step) / 16;
    const crossings = crossingsAt(ring, y);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const width = crossings[k + 1]! - crossings[k]!;
      const worth = width * (1 - Math.abs(step - 8) / 24);
      if (worth <= bestWorth) continue;
      bestWorth = worth;
      best = { x: (crossings[k]! + crossings[k + 1]!) / 2, y, width };
    }
  }
  return best;
}

function crossingsAt(ring: readonly SheetPoint[], y: number): number[] {
  return ring
    .flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length]!;
      if (from.y > y === to.y > y) return [];
      return [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
    })
    .sort((a, b) => a - b);
}
