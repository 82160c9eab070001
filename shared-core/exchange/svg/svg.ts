/**
 * Reads pieces from an SVG: every closed outline that lies in no other is a piece, named by its title, label or id.
 * SVG has no standard for patterns, so grain is taken as up, except in files written here (svg-write.ts), whose lines
 * say in `data-line` what they are.
 */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { Matrix } from '../pattern/drawn.ts';
import { bytesProblem, fileText } from '../file-text.ts';
import { settledPieces, unitOfFile } from '../pattern/found-pattern.ts';
import { nothingFound, type ReadChoices, type ReadLimits, type ReadPattern } from '../pattern/pattern.ts';
import { openMeter } from '../read-meter.ts';
import { pixelMm, realMm } from './svg-length.ts';
import { freePieces, writtenPieces } from './svg-pieces.ts';
import { readTree, type SvgNode } from './svg-tree.ts';
import { svgShapes } from './svg-walk.ts';

/** Throws BeyondLimit where the file goes beyond a limit. */
export function read(bytes: Uint8Array, limits: ReadLimits, choices: ReadChoices): ReadPattern {
  const refusal = bytesProblem(bytes, limits);
  if (refusal) return nothingFound(refusal);
  const tree = readTree(fileText(bytes), limits);
  if (!tree.ok) return nothingFound(tree.problem);
  const { root } = tree;
  const meter = openMeter(limits);
  const page = pageOf(root);
  const mmPerUnit = unitOfFile(page.mmPerUnit, choices);
  const { shapes, groups, problems, notes } = svgShapes(
    root,
    { frame: page.frame, mmPerUnit },
    limits,
    meter,
  );
  const written = groups.length > 0 ? writtenPieces(shapes, groups) : null;
  const drawn = written && written.pieces.length > 0 ? written : freePieces(shapes, limits, meter);
  const before = [...page.problems, ...problems, ...(written?.problems ?? [])];
  if (drawn !== written) before.push(...drawn.problems);
  return settledPieces(
    drawn.pieces,
    before,
    { limits, choices, meter },
    {
      format: 'SVG',
      styleName: (root.attributes['data-style'] ?? '').slice(0, 500),
      sampleSize: (root.attributes['data-size'] ?? '').slice(0, 500),
      statedMmPerUnit: page.mmPerUnit,
      notes: [...notes, ...drawn.notes],
    },
  );
}

interface Page {
  /** By width or height with a real unit and the view box; null where only pixels are given. */
  readonly mmPerUnit: number | null;
  /** Turns y up, and evens out a drawing that is stretched to its page. */
  readonly frame: Matrix;
  readonly problems: readonly Problem[];
}

function pageOf(root: SvgNode): Page {
  const { viewBox = '', preserveAspectRatio = '' } = root.attributes;
  const width = realMm(root.attributes.width);
  const height = realMm(root.attributes.height);
  const box = viewBox
    .slice(0, 200)
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , boxWidth = Number.NaN, boxHeight = Number.NaN] = box;
  const even: Matrix = [1, 0, 0, -1, 0, 0];
  if (!(box.length === 4 && boxWidth > 0 && boxHeight > 0))
    return { mmPerUnit: width === null && height === null ? null : pixelMm, frame: even, problems: [] };
  const across = width === null ? null : width / boxWidth;
  const up = height === null ? null : height / boxHeight;
  if (across === null || up === null) {
    const isStretched = /^\s*none/.test(preserveAspectRatio) && (across ?? up) !== null;
    return { mmPerUnit: across ?? up, frame: even, problems: isStretched ? [halfStretched] : [] };
  }
  if (/^\s*none/.test(preserveAspectRatio))
    return { mmPerUnit: across, frame: [1, 0, 0, -up / across, 0, 0], problems: [] };
  // A drawing keeps its proportions and is as large as fits, or as fills the page.
  const isFilling = /\bslice\s*$/.test(preserveAspectRatio.slice(0, 60));
  return { mmPerUnit: isFilling ? Math.max(across, up) : Math.min(across, up), frame: even, problems: [] };
}

const halfStretched: Problem = {
  get where() {
    return say('common.the-drawing');
  },
  get what() {
    return say('svg.is-stretched-to-its-page-but');
  },
  get fix() {
    return say('svg.compare-the-size-of-a-piece');
  },
};
