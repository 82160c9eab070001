/**
 * The XML of an SVG as a tree, by saxes: a parser that reads no outside files and expands no entities of the file's own,
 * so one that names them is refused at that line.
 */
import { say } from '../../wording/say.ts';
import { SaxesParser } from 'saxes';
import type { Problem } from '../../measure/problem.ts';
import type { ReadLimits } from '../pattern/pattern.ts';

export interface SvgNode {
  /** Without its prefix: "path", "g". */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly SvgNode[];
  /** Its own text, trimmed, as far as it is looked at: names need little, style sheets more. */
  readonly text: string;
  readonly line: number;
}

export type ReadTree =
  | { readonly ok: true; readonly root: SvgNode }
  | { readonly ok: false; readonly problem: Problem };

const longestText = { name: 200, style: 100_000 };
/** Attributes that a drawn thing has, on average, in a file that is no trap. */
const attributesEach = 20;

interface OpenNode {
  name: string;
  attributes: Record<string, string>;
  children: OpenNode[];
  text: string;
  line: number;
}

/** Letters of comments, and letters written by their numbers, which a parser takes longer for than for shapes. */
const maxCommentLetters = 2_000_000;
const maxReferences = 200_000;

/** Why the text is not worth a parser's time; null where it is. */
function slowness(text: string): string | null {
  if (commentLetterCount(text) > maxCommentLetters)
    return say('svg-tree.holds-more-than-million-letters-of', { maxCommentLetters: maxCommentLetters / 1e6 });
  let count = 0;
  for (let at = text.indexOf('&'); at >= 0; at = text.indexOf('&', at + 1))
    if (++count > maxReferences) return say('svg-tree.holds-more-than-letters-written-as', { maxReferences });
  return null;
}

function commentLetterCount(text: string): number {
  let count = 0;
  for (let from = text.indexOf('<!--'); from >= 0; ) {
    const end = text.indexOf('-->', from + 4);
    if (end < 0) return count + text.length - from;
    count += end - from;
    from = text.indexOf('<!--', end);
  }
  return count;
}

export function readTree(text: string, limits: ReadLimits): ReadTree {
  const slow = slowness(text);
  if (slow !== null)
    return {
      ok: false,
      problem: {
        where: say('common.the-file'),
        what: slow,
        fix: say('svg-tree.save-the-drawing-as-plain-svg'),
      },
    };
  const parser = new SaxesParser();
  const open: OpenNode[] = [];
  let root: OpenNode | null = null;
  let nodeCount = 0;
  let attributeCount = 0;
  let problem: Problem | null = null;
  const stop = (what: string, fix: string): never => {
    problem = { where: say('svg-tree.line', { line: parser.line }), what, fix };
    throw new Error(what);
  };
  parser.on('doctype', (doctype) => {
    if (doctype.includes('['))
      stop(say('svg-tree.defines-entities-of-its-own'), say('svg-tree.save-the-drawing-as-plain-svg'));
  });
  parser.on('error', (error) =>
    stop(
      say('svg-tree.is-not-sound-xml', { message: error.message.replace(/^[\d:]+ /, '').replace(/\.$/, '') }),
      say('svg-tree.save-the-drawing-again'),
    ),
  );
  parser.on('attribute', () => {
    if (++attributeCount > attributesEach * limits.entityCount)
      stop(say('svg-tree.goes-beyond-the-limit-its-shapes'), say('svg-tree.save-the-drawing-as-plain-svg'));
  });
  parser.on('opentag', (tag) => {
    if (++nodeCount > limits.entityCount)
      stop(
        say('svg-tree.goes-beyond-the-limit-of-shapes', { entityCount: limits.entityCount }),
        say('svg-tree.save-fewer-pieces-in-one-file'),
      );
    if (open.length >= limits.depthCount)
      stop(
        say('svg-tree.puts-groups-within-groups-more-than', { depthCount: limits.depthCount }),
        say('svg-tree.ungroup-the-pieces'),
      );
    const node: OpenNode = {
      name: tag.name.slice(tag.name.lastIndexOf(':') + 1),
      attributes: tag.attributes as Record<string, string>,
      children: [],
      text: '',
      line: parser.line,
    };
    if (root === null && node.name !== 'svg')
      stop(
        say('svg-tree.begins-with-not-with-svg', { tagName: tag.name.slice(0, 40) }),
        say('svg-tree.choose-an-svg-file'),
      );
    open.at(-1)?.children.push(node);
    root ??= node;
    open.push(node);
  });
  const addText = (words: string) => {
    const node = open.at(-1);
    if (!node) return;
    const max = node.name === 'style' ? longestText.style : longestText.name;
    if (node.text.length < max) node.text = (node.text + words.slice(0, max)).trim().slice(0, max);
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
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
    return {
      ok: false,
      problem: {
        where: say('common.the-file'),
        what: say('svg-tree.holds-no-svg'),
        fix: say('svg-tree.choose-an-svg-file'),
      },
    };
  return { ok: true, root };
}
