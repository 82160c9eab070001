import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringAreaMm2, ringFromPoints } from '../../../shared-core/geometry/ring.ts';
import { quiltingLines, ringLines, wholeSeamRing } from '../../../shared-core/quilting/lines.ts';
import { quiltedCoat } from '../requirement/small-coat.ts';

const ring = (...points: readonly (readonly [number, number])[]) =>
  ringFromPoints(points.map(([x, y]) => ({ x, y })));
const panel = ring([0, 0], [430, 0], [430, 90], [0, 90]);
/** An L: 400 long at its foot (40 wide), 150 long above it. */
const corner = ring([0, 0], [400, 0], [400, 40], [150, 40], [150, 110], [0, 110]);
/** A U lying open towards high x: a line across its legs has two stretches. */
const fork = ring([0, 0], [300, 0], [300, 20], [100, 20], [100, 70], [300, 70], [300, 100], [0, 100]);

const lengths = (...args: Parameters<typeof ringLines>) =>
  ringLines(...args).lines.map((line) => [line.atMm, line.lengthMm]);

describe('quilting lines', () => {
  it('stand at even spacing from the hem and end at the seam line', () => {
    expect(lengths(panel, 'across', 120, 0)).toEqual([
      [120, 90],
      [240, 90],
      [360, 90],
    ]);
  });
  it('along the piece they run its length', () => {
    expect(lengths(panel, 'along', 40, 45)).toEqual([
      [5, 430],
      [45, 430],
      [85, 430],
    ]);
  });
  it('are as long as the piece is wide there', () => {
    expect(lengths(corner, 'across', 130, 0)).toEqual([
      [130, 110],
      [260, 40],
      [390, 40],
    ]);
  });
  it('stop and go on where the piece is cut out', () => {
    expect(ringLines(fork, 'across', 200, 0).lines[0]?.spans).toEqual([
      [0, 20],
      [70, 100],
    ]);
  });
  it('an edge of the piece is not quilted', () => {
    expect(lengths(panel, 'across', 215, 0)).toEqual([[215, 90]]);
  });
  it('channels are as wide as the lines are apart, the last one narrower', () => {
    const { channels } = ringLines(corner, 'across', 130, 0);
    expect(channels.map((channel) => channel.widthMm)).toEqual([130, 130, 130, 10]);
    expect(channels.map((channel) => channel.areaMm2)).toEqual([130 * 110, 20 * 110 + 110 * 40, 5200, 400]);
    expect(channels[1]?.lengthMm).toBeCloseTo(6600 / 130, 9);
  });
  it('channels cover the piece, whatever the spacing and the origin', () => {
    const shapes = fc.constantFrom(panel, corner, fork);
    const way = fc.constantFrom('across' as const, 'along' as const);
    const spacing = fc.double({ min: 7, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        shapes,
        way,
        spacing,
        fc.double({ min: -300, max: 300, noNaN: true }),
        (shape, direction, s, origin) => {
          const { channels, lines } = ringLines(shape, direction, s, origin);
          const areaMm2 = channels.reduce((sum, channel) => sum + channel.areaMm2, 0);
          expect(areaMm2).toBeCloseTo(ringAreaMm2(shape), 3);
          expect(channels.length).toBe(lines.length + 1);
          for (const [index, line] of lines.entries()) {
            if (index > 0) expect(line.atMm - lines[index - 1]!.atMm).toBeCloseTo(s, 6);
          }
        },
      ),
    );
  });
  it('half the spacing never sews less', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(panel, corner, fork),
        fc.double({ min: 10, max: 200, noNaN: true }),
        (shape, s) => {
          expect(ringLines(shape, 'across', s / 2, 0).stitchingMm).toBeGreaterThanOrEqual(
            ringLines(shape, 'across', s, 0).stitchingMm - 1e-6,
          );
        },
      ),
    );
  });
  it('run over the fold of a back as over one piece', () => {
    const coat = quiltedCoat();
    expect(ringAreaMm2(wholeSeamRing(coat.pieces[0]!))).toBeCloseTo(700 * 520, 3);
    expect(quiltingLines(coat, 'back', 0).lines.map((line) => line.lengthMm)).toEqual(Array(6).fill(520));
    expect(quiltingLines({ ...coat, quilting: null }, 'back', 0).lines).toEqual([]);
  });
  it('no spacing is refused', () => {
    expect(() => ringLines(panel, 'across', 0, 0)).toThrow(RangeError);
  });
});
