/** Published instances: a folder of JSON files { name, stripHeight, bestKnownLength, items: [{ id, demand, allowedTurns, outline }] }. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { LayJob } from '../../../shared-core/lay/job.ts';

export interface Instance {
  readonly name: string;
  readonly stripHeight: number;
  readonly bestKnownLength: number;
  readonly items: readonly {
    readonly id: number | string;
    readonly demand: number;
    readonly allowedTurns: readonly number[];
    readonly outline: readonly (readonly [number, number])[];
  }[];
}

export function publishedInstances(folder: string): Instance[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as Instance);
}

export function instanceJob(instance: Instance, seed: number): LayJob {
  return {
    shapes: instance.items.map((item) => ({
      id: String(item.id),
      ring: Float64Array.from(item.outline.flat()),
      count: item.demand,
      mirroredCount: 0,
      turnsDeg: item.allowedTurns,
    })),
    lengths: [{ id: 'strip', widthMm: instance.stripHeight, lengthMm: null, flaws: [] }],
    clearanceMm: 0,
    spread: 'open',
    repeat: null,
    seed,
  };
}
