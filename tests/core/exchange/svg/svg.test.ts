import { describe, expect, it } from 'vitest';
import type { FoundPiece } from '../../../../shared-core/exchange/pattern/pattern.ts';
import { ringAreaMm2, ringPerimeterMm } from '../../../../shared-core/geometry/ring.ts';
import { seamRing } from '../../../../shared-core/plan/geometry/outline-ring.ts';
import { readText, wellRead } from '../dxf-text.ts';

const svg = (inside: string, attributes = 'width="700mm" height="500mm" viewBox="0 0 700 500"') =>
  `<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;

function pieces(inside: string, attributes?: string): readonly FoundPiece[] {
  return wellRead(svg(inside, attributes)).pieces;
}

const areaMm2 = (piece: FoundPiece | undefined) => ringAreaMm2(seamRing(piece!.outline, 0.001));
const sizeMm = (piece: FoundPiece | undefined) => {
  const { alongMm, acrossMm } = piece!.extentMm;
  return [alongMm, acrossMm].map((mm) => Math.round(mm * 1000) / 1000);
};

describe('pieces of an SVG', () => {
  it('lie as worn: up the page runs along x, and left stays left', () => {
    const [piece] = pieces('<path d="M50 300 L50 20 L90 20 L180 300 Z"/>');
    expect(sizeMm(piece)).toEqual([280, 130]);
    // The narrow end is up, at great x; the straight side is left, at great y.
    const corners = piece!.outline.edges.flatMap(({ segments }) =>
      segments.map(({ to }) => [Math.round(to.x), Math.round(to.y)]),
    );
    expect(corners).toContainEqual([280, 130]);
    expect(corners).toContainEqual([280, 90]);
    expect(corners).toContainEqual([0, 0]);
  });

  it('may be drawn with every command, absolute and relative', () => {
    const square = 'M10 10 H210 V140 H10 Z';
    const same = [
      'm10 10 h200 v130 h-200 z',
      'M10 10 L210 10 210 140 L10 140Z',
      'M10,10l200,0 0,130-200,0z',
      'M10 10C80 10 140 10 210 10Q210 70 210 140T10 140 L10 10Z',
    ];
    const [first] = pieces(`<path d="${square}"/>`);
    expect(areaMm2(first)).toBeCloseTo(26_000, 6);
    for (const d of same.slice(0, 3)) expect(areaMm2(pieces(`<path d="${d}"/>`)[0])).toBeCloseTo(26_000, 6);
    // A half circle on top, by an arc and by its two quarters with smooth curves.
    expect(areaMm2(pieces('<path d="M0 200 V100 A60 60 0 0 1 120 100 V200 Z"/>')[0])).toBeCloseTo(
      12_000 + (Math.PI * 3600) / 2,
      -1,
    );
    const kappa = 60 * 0.5522847;
    const smooth = `<path d="M0 200 V100 C0 ${100 - kappa} ${60 - kappa} 40 60 40 S120 ${100 - kappa} 120 100 V200 Z"/>`;
    expect(areaMm2(pieces(smooth)[0])).toBeCloseTo(12_000 + (Math.PI * 3600) / 2, -1);
    const quadratic = pieces('<path d="M0 200 Q90 20 180 200 Z"/>')[0];
    expect(areaMm2(quadratic)).toBeCloseTo((2 / 3) * 180 * 90, 0);
  });

  it('keep their curves as curves and part at corners', () => {
    const [piece] = pieces('<path d="M0 200 V100 C0 60 20 40 60 40 S120 60 120 100 V200 Z"/>');
    expect(piece!.outline.edges.flatMap(({ segments }) => segments.map(({ kind }) => kind)).sort()).toEqual([
      'cubic',
      'cubic',
      'line',
      'line',
      'line',
    ]);
    expect(piece!.outline.edges).toHaveLength(2);
  });

  it('may be shapes: polygon, joined polyline, rect with round corners, circle, ellipse', () => {
    expect(areaMm2(pieces('<polygon points="0,0 240,0 240,90"/>')[0])).toBeCloseTo((240 * 90) / 2, 6);
    expect(areaMm2(pieces('<polyline points="0 0 240 0 240 90 0 0"/>')[0])).toBeCloseTo((240 * 90) / 2, 6);
    expect(areaMm2(pieces('<rect x="9" y="7" width="210" height="130"/>')[0])).toBeCloseTo(210 * 130, 6);
    expect(areaMm2(pieces('<rect width="210" height="130" rx="20"/>')[0])).toBeCloseTo(
      210 * 130 - (4 - Math.PI) * 400,
      0,
    );
    expect(areaMm2(pieces('<circle cx="90" cy="80" r="70"/>')[0])).toBeCloseTo(Math.PI * 4900, -1);
    expect(areaMm2(pieces('<ellipse cx="90" cy="80" rx="90" ry="40"/>')[0])).toBeCloseTo(Math.PI * 3600, -1);
    const lines =
      '<line x1="0" y1="0" x2="200" y2="0"/><line x1="200" y1="110" x2="200" y2="0"/><line x1="200" y1="110" x2="0" y2="0"/>';
    expect(areaMm2(pieces(lines)[0])).toBeCloseTo((200 * 110) / 2, 6);
  });

  it('stand under every transform above them, the inner first', () => {
    // Scaled to 80 by 60, then turned a quarter to 60 by 80, then widened threefold.
    const inside =
      '<g transform="scale(3 1)"><g transform="translate(300 0) rotate(90)"><rect width="40" height="20" transform="scale(2 3)"/></g></g>';
    expect(sizeMm(pieces(inside)[0])).toEqual([80, 180]);
    const matrix = '<g transform="matrix(1 0 0 2 50 0) skewX(30)"><rect width="100" height="70"/></g>';
    expect(areaMm2(pieces(matrix)[0])).toBeCloseTo(14_000, 6);
    const used =
      '<defs><rect id="r" width="150" height="90"/></defs><use href="#r" x="20" transform="scale(2)"/>';
    expect(sizeMm(pieces(used)[0])).toEqual([180, 300]);
  });

  it('are as large as width, height and view box say', () => {
    const rect = '<rect width="60" height="70"/>';
    const size = (attributes: string) => sizeMm(pieces(rect, attributes)[0]);
    expect(size('width="10in" height="8in" viewBox="0 0 100 80"')).toEqual([177.8, 152.4]);
    expect(
      wellRead(svg('<rect width="200" height="100"/>', 'width="60cm" height="30cm" viewBox="0 0 600 300"'))
        .mmPerUnit,
    ).toBeCloseTo(1, 9);
    // The smaller of both: the drawing keeps its proportions.
    expect(
      readText(svg(rect, 'width="600mm" height="300mm" viewBox="0 0 100 100"')).found?.mmPerUnit,
    ).toBeCloseTo(3, 9);
    expect(readText(svg(rect, 'width="600mm" height="300mm"')).found?.mmPerUnit).toBeCloseTo(25.4 / 96, 9);
  });

  it('in pixels alone have no size, until the maker types one', () => {
    const inside = '<rect width="200" height="500"/>';
    const { found, problems } = readText(svg(inside, 'width="900" height="900"'));
    expect(found?.statedMmPerUnit).toBeNull();
    expect(problems.map(({ what }) => what)).toEqual(['does not say its unit; mm are taken']);
    const scaled = readText(svg(inside, 'width="900" height="900"'), { mmPerUnit: 712 / 500 });
    expect(sizeMm(scaled.found?.pieces[0])).toEqual([712, 284.8]);
    expect(scaled.problems).toEqual([]);
  });

  it('are named by title, label or id; what lies inside a piece or is hidden is none', () => {
    const inside =
      '<g id="layer"><g aria-label="Hood side"><path d="M0 0h200v150h-200z"/></g>' +
      '<path d="M300 0h150v150h-150z"><title>Patch &amp; flap</title></path><path id="cuff" d="M500 0h150v90h-150z"/></g>' +
      '<circle cx="50" cy="50" r="8"/><g style="display: none"><rect y="300" width="90" height="90"/></g>' +
      '<clipPath id="c"><rect y="300" width="90" height="90"/></clipPath>';
    expect(pieces(inside).map(({ name }) => name)).toEqual(['Hood side', 'Patch & flap', 'cuff']);
  });

  it('keep their length round', () => {
    expect(ringPerimeterMm(seamRing(pieces('<path d="M0 0h210v-170h-210z"/>')[0]!.outline))).toBeCloseTo(
      760,
      6,
    );
  });
});
