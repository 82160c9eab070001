/**
 * Pattern files against a general geometry library's measures of the same polygons,
 * and general drawing libraries that write what is read here and read what is written here.
 */
import { DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import { polygonArea, polygonLength } from 'd3-polygon';
import DxfParser from 'dxf-parser';
import { write as writeDxf } from '../../shared-core/exchange/dxf/dxf-write.ts';
import { readPattern } from '../../shared-core/exchange/pattern/formats.ts';
import {
  type FoundPattern,
  defaultChoices,
  defaultLimits,
} from '../../shared-core/exchange/pattern/pattern.ts';
import { fenwalkCoat } from '../../shared-core/demo/coat.ts';
import { ringAreaMm2, ringPerimeterMm } from '../../shared-core/geometry/ring.ts';
import { seamRing } from '../../shared-core/plan/geometry/outline-ring.ts';
import type { OutsideCheck } from './outside.ts';

const geometry = 'd3-polygon 3.0.2';
const drawing = '@tarikjabiri/dxf 2.9.0';
const parsing = 'dxf-parser 1.1.2';

type Vertex = readonly [number, number];

/** Polygons round a middle without crossings, from a fixed seed: 3 to 120 corners, some hollow. */
function polygons(): Vertex[][] {
  let state = 20260417;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  return [3, 4, 5, 9, 17, 33, 60, 120].map((count) =>
    Array.from({ length: count }, (_, index): Vertex => {
      const angle = (2 * Math.PI * (index + 0.6 * next())) / count;
      const radius = 150 + 450 * next();
      return [700 + radius * Math.cos(angle), 900 + radius * Math.sin(angle)];
    }),
  );
}

function read(text: string): FoundPattern {
  const { found, problems } = readPattern(new TextEncoder().encode(text), '', defaultLimits, defaultChoices);
  if (!found) throw new Error(problems[0]?.what);
  return found;
}

/** One polyline by the drawing library. */
function drawnByLibrary(polygon: readonly Vertex[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.addLWPolyline(
    polygon.map(([x, y]) => ({ point: point2d(x, y) })),
    { flags: LWPolylineFlags.Closed },
  );
  return dxf.stringify();
}

function svgOf(polygon: readonly Vertex[]): string {
  const points = polygon.map(([x, y]) => `${x},${y}`).join(' ');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="1400mm" height="1600mm" viewBox="0 0 1400 1600"><polygon points="${points}"/></svg>`;
}

function measures(form: string, polygon: readonly Vertex[], text: string): OutsideCheck[] {
  const ring = seamRing(read(text).pieces[0]!.outline);
  const what = `of a polygon of ${polygon.length} corners from ${form}`;
  return [
    {
      class: 'A',
      toleranceReason: 'rounding of floating point and of the six places that are read',
      name: `area ${what}, mm2`,
      source: geometry,
      expected: Math.abs(polygonArea(polygon)),
      got: ringAreaMm2(ring),
      tolerance: 1e-4,
    },
    {
      class: 'A',
      toleranceReason: 'rounding of floating point and of the six places that are read',
      name: `length round ${what}, mm`,
      source: geometry,
      expected: polygonLength(polygon),
      got: ringPerimeterMm(ring),
      tolerance: 1e-6,
    },
  ];
}

/** A round and a line of arcs by the drawing library, in inches and in blocks. */
function roundsByLibrary(): OutsideCheck[] {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Inches);
  dxf.addCircle(point3d(40, 7), 5);
  dxf.addLine(point3d(0, 0), point3d(20, 0));
  dxf.addArc(point3d(20, 3), 3, 270, 90);
  dxf.addLine(point3d(20, 6), point3d(0, 6));
  dxf.addArc(point3d(0, 3), 3, 90, 270);
  const found = read(dxf.stringify());
  const areas = found.pieces.map((piece) => ringAreaMm2(seamRing(piece.outline, 0.001)) / 25.4 ** 2);
  const circle = 'area of a circle';
  return [
    {
      class: 'A',
      name: 'mm for a unit of a drawing in inches',
      source: drawing,
      expected: 25.4,
      got: found.mmPerUnit,
      tolerance: 0,
    },
    {
      class: 'B',
      name: 'a circle of radius 5 in, in2',
      source: circle,
      expected: 25 * Math.PI,
      got: areas[0]!,
      tolerance: 0.05,
    },
    {
      class: 'B',
      name: 'a run of two lines and two arcs of 3 in, in2',
      source: circle,
      expected: 120 + 9 * Math.PI,
      got: areas[1]!,
      tolerance: 0.05,
    },
  ];
}

interface Drawn {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
  readonly text?: string;
}

/** The demo coat's Back as the parsing library sees it in our file. */
function readByLibrary(): OutsideCheck[] {
  const plan = fenwalkCoat({});
  const back = plan.pieces.find(({ name }) => name === 'Back')!;
  const drawn = new DxfParser().parseSync(writeDxf({ ...plan, pieces: [back] }, { unit: 'mm' }));
  const block = Object.values(drawn?.blocks ?? {})[0];
  const entities = (block?.entities ?? []) as unknown as readonly Drawn[];
  const on = (layer: number) => entities.filter((entity) => entity.layer === String(layer));
  const kinds = (layer: number) => [...new Set(on(layer).map(({ type }) => type))].join(', ');
  const sewn = on(14)[0]?.vertices ?? [];
  const ring = seamRing(back.outline, 0.02);
  const count = (name: string, expected: number, got: number): OutsideCheck => ({
    class: 'A',
    name,
    source: parsing,
    expected,
    got,
    tolerance: 0,
  });
  return [
    {
      class: 'A',
      name: 'boundary and texts of a written piece',
      source: parsing,
      expected: 'TEXT, POLYLINE',
      got: kinds(1),
      tolerance: 0,
    },
    {
      class: 'A',
      name: 'sewing line of a written piece',
      source: parsing,
      expected: 'POLYLINE',
      got: kinds(14),
      tolerance: 0,
    },
    {
      class: 'A',
      name: 'grain line of a written piece',
      source: parsing,
      expected: 'LINE',
      got: kinds(7),
      tolerance: 0,
    },
    {
      class: 'A',
      name: 'mirror line of a written piece on the fold',
      source: parsing,
      expected: 'LINE',
      got: kinds(6),
      tolerance: 0,
    },
    count('turn points of a written piece', back.outline.edges.length, on(2).length),
    count('notches of a written piece', back.notches.length, on(4).length),
    {
      class: 'A',
      toleranceReason: 'coordinates are written to a thousandth of a millimetre, over some 3 m of outline',
      name: 'area in the sewing line of a written piece, mm2',
      source: `${parsing} and ${geometry}`,
      expected: Math.abs(polygonArea(sewn.map(({ x, y }): Vertex => [x, y]))),
      got: ringAreaMm2(ring),
      tolerance: 1,
    },
    {
      class: 'A',
      name: 'text of the style',
      source: parsing,
      expected: 'Units: METRIC',
      got:
        ((drawn?.entities ?? []) as unknown as readonly Drawn[]).find(({ text }) => text?.startsWith('Units'))
          ?.text ?? '',
      tolerance: 0,
    },
  ];
}

const rows: readonly OutsideCheck[] = [
  ...polygons().flatMap((polygon) => [
    ...measures('a drawing library', polygon, drawnByLibrary(polygon)),
    ...measures('SVG', polygon, svgOf(polygon)),
  ]),
  ...roundsByLibrary(),
  ...readByLibrary(),
  {
    class: 'B',
    name: 'pixels of an SVG without a view box, in mm',
    source: 'from memory: CSS Values and Units, 96 px to the inch',
    expected: 0.26458,
    got: read('<svg xmlns="http://www.w3.org/2000/svg" width="20in"><rect width="900" height="700"/></svg>')
      .mmPerUnit,
    tolerance: 0.000005,
  },
];

export default rows;
