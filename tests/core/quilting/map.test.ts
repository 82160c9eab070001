import { describe, expect, it } from 'vitest';
import { quiltingMap } from '../../../shared-core/quilting/map.ts';
import { meetingReport } from '../../../shared-core/quilting/meeting.ts';
import { quiltedCoat } from '../requirement/small-coat.ts';
import { body, drawn } from './drawn-body.ts';

describe('the quilting map', () => {
  it('tells the lines of each piece from the hem, the channels and the stitching', () => {
    const [back, front] = quiltingMap(quiltedCoat({ coatCount: 3 }));
    expect(back?.offsetsMm).toEqual([100, 200, 300, 400, 500, 600]);
    expect([back?.stitchingMm, back?.copyCount]).toEqual([expect.closeTo(6 * 520, 6), 3]);
    expect([front?.stitchingMm, front?.copyCount]).toEqual([expect.closeTo(6 * 240, 6), 6]);
    expect(front?.channels.map((channel) => channel.widthMm)).toEqual(Array(7).fill(100));
  });
  it('a piece that is not quilted has no lines', () => {
    const [back, front] = quiltedCoat().pieces;
    const map = quiltingMap(quiltedCoat({ pieces: [back!, { ...front!, quilted: null }] }));
    expect(map.map(({ pieceId }) => pieceId)).toEqual(['back']);
  });
  it('a plan without quilting has no map', () => {
    expect(quiltingMap(quiltedCoat({ quilting: null }))).toEqual([]);
  });
  it('a front drafted 37 mm further up its sheet has its lines moved with it', () => {
    const coat = quiltedCoat({ pieces: body(300, 320, 37) });
    const [back, front] = quiltingMap(coat);
    expect(back?.lines[0]?.atMm).toBeCloseTo(100, 9);
    expect(front?.lines[0]?.atMm).toBeCloseTo(137, 9);
    expect(meetingReport(coat)[0]?.meets).toBe(true);
  });
  it('a shirt-tail front 50 mm longer below the side seam still meets the back there', () => {
    const [back] = body(300, 320);
    const front = drawn(
      'front',
      [
        [-50, 0],
        [700, 0],
        [700, 260],
        [0, 320],
        [-50, 200],
      ],
      [null, null, 'side seam', null, null],
    );
    const coat = quiltedCoat({ pieces: [back!, front] });
    expect(quiltingMap(coat)[1]?.offsetsMm[0]).toBeCloseTo(50, 9);
    expect(meetingReport(coat)[0]?.meets).toBe(true);
  });
  it('lines along start at the middle of the piece', () => {
    const coat = quiltedCoat({
      pieces: quiltedCoat().pieces.map((one) => ({ ...one, quilted: 'along' as const })),
    });
    expect(quiltingMap(coat)[1]?.lines.map((line) => line.atMm)).toEqual([20, 120, 220]);
  });
});
