/**
 * The XML of an SVG as a tree, by saxes: a parser that reads no outside files and expands no entities of the file's own,
 * so one that names them is refused at that line.
 */
import { SaxesParser } from 'saxes';
import type { Problem } from '../measure/problem.ts';
import type { ReadLimits } from './pattern.ts';

export interface SvgNode {
  /** Without its prefix: "path", "g". */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgNode[];
  /** Its own text, trimmed. */
  readonly text: string;
  readonly line: number;
}

export type ReadTree =
  | { readonly ok: true; readonly root: SvgNode }
  | { readonly ok: false; readonly problem: Problem };

interface OpenNode {
  name: string;
  attributes: Record<string, string>;
  children: OpenNode[];
  text: string;
  line: number;
}

export function readTree(text: string, limits: ReadLimits): ReadTree {
  const parser = new SaxesParser();
  const open: OpenNode[] = [];
  let root: OpenNode | null = null;
  let nodeCount = 0;
  let problem: Problem | null = null;
  const stop = (what: string, mend: string): never => {
    problem = { where: `Line ${parser.line}`, what, mend };
    throw new Error(what);
  };
  parser.on('doctype', (doctype) => {
    if (doctype.includes('[')) stop('defines entities of its own', 'Save the drawing as plain SVG.');
  });
  parser.on('error', (error) =>
    stop(
      `is not sound XML: ${error.message.replace(/^[\d:]+ /, '').replace(/\.$/, '')}`,
      'Save the drawing again.',
    ),
  );
  parser.on('opentag', (tag) => {
    if (++nodeCount > limits.entityCount)
      stop(`goes beyond the limit of ${limits.entityCount} shapes`, 'Save fewer pieces in one file.');
    if (open.length >= limits.depthCount)
      stop(`puts groups within groups more than ${limits.depthCount} deep`, 'Ungroup the pieces.');
    const node: OpenNode = {
      name: tag.name.replace(/^.*:/, ''),
      attributes: tag.attributes as Record<string, string>,
      children: [],
      text: '',
      line: parser.line,
    };
    if (root === null && node.name !== 'svg')
      stop(`begins with <${tag.name}>, not with <svg>`, 'Choose an SVG file.');
    open.at(-1)?.children.push(node);
    root ??= node;
    open.push(node);
  });
  parser.on('text', (words) => {
    const node = open.at(-1);
    if (node && node.text.length < 200) node.text = (node.text + words).trim().slice(0, 200);
  });
  parser.on('closetag', () => {
    open.pop();
  });
  try {
    parser.write(text).close();
  } catch (error) {
    if (problem === null) throw error;
    return { ok: false, problem };
  }
  if (root === null)
    return { ok: false, problem: { where: 'The file', what: 'holds no <svg>', mend: 'Choose an SVG file.' } };
  return { ok: true, root };
}
