/** The formats that patterns come in and go out by: one line each, with their endings and how their files begin. */
import { say } from '../../wording/say.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import { read as readDxf } from '../dxf/dxf.ts';
import { write as writeDxf } from '../dxf/dxf-write.ts';
import { bytesProblem, fileText } from '../file-text.ts';
import { curtailed, nothingFound, type ReadChoices, type ReadLimits, type ReadPattern } from './pattern.ts';
import { BeyondLimit } from '../read-meter.ts';
import { read as readSvg } from '../svg/svg.ts';
import { write as writeSvg } from '../svg/svg-write.ts';

export interface PatternFormat {
  readonly name: 'DXF' | 'SVG';
  /** With its dot, in lower case. */
  readonly ending: string;
  readonly mediaType: 'text/plain' | 'image/svg+xml';
  /** How a text of this format begins, blank lines and comments passed over. */
  readonly begins: RegExp;
  readonly read: (bytes: Uint8Array, limits: ReadLimits, choices: ReadChoices) => ReadPattern;
  readonly write: (plan: CoatPlan) => string;
}

export const patternFormats: readonly PatternFormat[] = [
  {
    name: 'DXF',
    ending: '.dxf',
    mediaType: 'text/plain',
    begins: /^\s*(?:999\r?\n[^\n]*\n\s*)*0\r?\n\s*SECTION\b/i,
    read: readDxf,
    write: (plan) => writeDxf(plan, { unit: 'mm' }),
  },
  {
    name: 'SVG',
    ending: '.svg',
    mediaType: 'image/svg+xml',
    begins: /^\s*<(?:\?xml|!DOCTYPE svg|!--|(?:\w+:)?svg\b)/i,
    read: readSvg,
    write: writeSvg,
  },
];

/**
 * Reads a pattern by how the file begins, else by its name's ending. Changes nothing. Whatever the bytes are, it ends
 * within what the limits allow.
 */
export function readPattern(
  bytes: Uint8Array,
  fileName: string,
  limits: ReadLimits,
  choices: ReadChoices,
): ReadPattern {
  const refusal = bytesProblem(bytes, limits);
  if (refusal) return nothingFound(refusal);
  const head = fileText(bytes.subarray(0, 2048));
  const format =
    patternFormats.find(({ begins }) => begins.test(head)) ??
    patternFormats.find(({ ending }) => fileName.toLowerCase().endsWith(ending));
  if (format) {
    try {
      return curtailed(format.read(bytes, limits, choices));
    } catch (error) {
      if (error instanceof BeyondLimit) return curtailed(nothingFound(error.problem));
      throw error;
    }
  }
  return nothingFound({
    where: say('common.the-file'),
    what: say('formats.is-neither-dxf-nor-svg'),
    fix: say('formats.save-the-pattern-as-an-ascii'),
  });
}
