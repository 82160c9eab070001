import { describe, expect, it } from 'vitest';
import type { LayResult } from '../../../shared-core/lay/job.ts';
import { startLay } from '../../../shared-core/lay/lay.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import { job, rectangle, shape } from './jobs.ts';

function result(more: Partial<LayResult> = {}): LayResult {
  return {
    placements: [],
    unplaced: [],
    usedLengthMm: [2914, 1396],
    utilisation: 0.826,
    floorMm: 3978,
    seed: 1,
    iterations: 512,
    seconds: 3.04,
    stoppedBy: 'time',
    ...more,
  };
}

describe('how good a lay is, in words', () => {
  it('says the length of all lengths together, the share used, the floor and how long it looked', () => {
    expect(layWords(result(), 'metric')).toBe(
      '4.31 m, 82 % of the cloth used; no lay can be shorter than 3.98 m; looked for 3 s',
    );
  });

  it('speaks of yards to a maker who measures in yards', () => {
    expect(layWords(result(), 'imperial')).toBe(
      '4.71 yd, 82 % of the cloth used; no lay can be shorter than 4.35 yd; looked for 3 s',
    );
  });

  it('says no more than is so: 99.9 % is not 100 %', () => {
    expect(layWords(result({ utilisation: 0.999 }), 'metric')).toContain('99 % of the cloth used');
  });

  it('says that nothing shorter is to be found when the floor is reached', () => {
    const words = layWords(result({ usedLengthMm: [3978], stoppedBy: 'floor', seconds: 0.42 }), 'metric');
    expect(words).toBe('3.98 m, 82 % of the cloth used; no lay can be shorter; looked for 0.4 s');
  });

  it('says that the maker stopped it', () => {
    expect(layWords(result({ stoppedBy: 'maker', seconds: 1.27 }), 'metric')).toMatch(
      /looked for 1.3 s, then stopped by you$/,
    );
  });

  it('says of a lay that is still looked for that it is, and not that somebody stopped it', () => {
    expect(layWords(result({ stoppedBy: 'under way', seconds: 1.27 }), 'metric')).toMatch(
      /looked for 1.3 s so far$/,
    );
    const search = startLay(job([shape('square', rectangle(90, 40), { count: 9 })]), () => 0);
    expect(search.best().stoppedBy).toBe('under way');
  });

  it('counts the pieces that no length had room for, as drawn and mirrored', () => {
    const unplaced = [
      { shape: 0, mirrored: false, count: 2 },
      { shape: 0, mirrored: true, count: 3 },
    ];
    expect(layWords(result({ unplaced }), 'metric')).toContain('; 5 pieces have no room;');
    expect(layWords(result({ unplaced: [{ shape: 4, mirrored: false, count: 1 }] }), 'metric')).toContain(
      '; 1 piece has no room;',
    );
  });

  it.each([
    [0.004, 'less than 0.1 s'],
    [0.16, '0.2 s'],
    [9.94, '9.9 s'],
    [9.97, '10 s'],
    [61.4, '61 s'],
  ])('looked for %s s is said as %s', (seconds, words) => {
    expect(layWords(result({ seconds }), 'metric')).toMatch(new RegExp(`looked for ${words}$`));
  });
});
