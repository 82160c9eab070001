/**
 * What an SVG's styles do to where things stand and whether they are seen: its own attributes, `style`, and the simple
 * rules of its style sheets (by kind, class and id). Everything else of a style is colour and does not matter here.
 */
import type { SvgNode } from './svg-tree.ts';

export interface SvgLook {
  /** Neither it nor anything in it is drawn. */
  readonly isGone: boolean;
  /** Of itself; what is in it may say otherwise. null: as what it is in. */
  readonly isHidden: boolean | null;
  /** Moved, turned or scaled by a style rather than by its attribute. */
  readonly isMovedByStyle: boolean;
}

interface Rule {
  readonly kind: string;
  readonly id: string;
  readonly classes: readonly string[];
  readonly says: Says;
}

/** display, visibility and whether it moves, each where it is said. */
type Says = ReadonlyMap<'display' | 'visibility' | 'move', string>;

const movers = ['transform', 'translate', 'rotate', 'scale', 'offset-path', 'zoom'];

const unmoving = ['none', 'initial', 'unset', '1'];

export interface StyleSheet {
  readonly rules: readonly Rule[];
  /** Selectors of rules that may hide or move things and are too involved to be followed here. */
  readonly unread: readonly string[];
}

/** More are not told of. */
const maxUnread = 20;

/** The rules of all <style> texts, weaker ones first. */
export function styleSheet(texts: readonly string[]): StyleSheet {
  const unread: string[] = [];
  const rules = texts.flatMap((text) =>
    blocksOf(withoutComments(text)).flatMap(({ head, body }): Rule[] => {
      const says = saidIn(body);
      if (says.size === 0) return [];
      return head.split(',').flatMap((selector): Rule[] => {
        const rule = simpleRule(selector.trim(), says);
        if (!rule && unread.length < maxUnread) unread.push(selector.trim().slice(0, 60));
        return rule ? [rule] : [];
      });
    }),
  );
  return { rules: rules.toSorted((a, b) => weight(a) - weight(b)), unread };
}

/** Longer ones hold nothing that a drawing program wrote. */
const longest = { style: 10_000, classes: 2000 };

export function lookOf(node: SvgNode, sheet: StyleSheet): SvgLook {
  const said = new Map<string, string>();
  const { display, visibility, style, id } = node.attributes;
  if (display !== undefined) said.set('display', word(display));
  if (visibility !== undefined) said.set('visibility', word(visibility));
  const classes =
    sheet.rules.length > 0 ? (node.attributes.class ?? '').slice(0, longest.classes).split(/\s+/) : [];
  for (const rule of sheet.rules) {
    const applies =
      (rule.kind === '' || rule.kind === node.name) &&
      (rule.id === '' || rule.id === id) &&
      rule.classes.every((name) => classes.includes(name));
    if (applies) for (const [key, value] of rule.says) said.set(key, value);
  }
  if (style !== undefined)
    for (const [key, value] of saidIn(style.slice(0, longest.style))) said.set(key, value);
  const seen = said.get('visibility');
  return {
    isGone: said.get('display') === 'none',
    isHidden: seen === undefined || seen === 'inherit' ? null : seen === 'hidden' || seen === 'collapse',
    isMovedByStyle: said.get('move') === 'yes',
  };
}

function word(text: string): string {
  return text.slice(0, 100).trim().toLowerCase();
}

function saidIn(declarations: string): Says {
  const says = new Map<'display' | 'visibility' | 'move', string>();
  for (const declaration of declarations.split(';')) {
    const colon = declaration.indexOf(':');
    const key = declaration.slice(0, colon).trim().toLowerCase();
    const value = declaration
      .slice(colon + 1)
      .replace('!important', '')
      .trim()
      .toLowerCase();
    if (key === 'display' || key === 'visibility') says.set(key, value);
    else if (movers.includes(key)) says.set('move', unmoving.includes(value) ? 'no' : 'yes');
  }
  return says;
}

function simpleRule(selector: string, says: Says): Rule | null {
  if (!/^[\w*][\w-]*(?:[.#][\w-]+)*$|^(?:[.#][\w-]+)+$/.test(selector)) return null;
  const kind = /^[\w-]+/.exec(selector)?.[0] ?? '';
  const classes = [...selector.matchAll(/\.([\w-]+)/g)].map((match) => match[1]!);
  const id = /#([\w-]+)/.exec(selector)?.[1] ?? '';
  return { kind, id, classes, says };
}

function weight({ kind, id, classes }: Rule): number {
  return (id === '' ? 0 : 1e6) + classes.length * 1000 + (kind === '' ? 0 : 1);
}

function withoutComments(text: string): string {
  return text
    .split('/*')
    .map((part, index) => {
      const end = part.indexOf('*/');
      return index === 0 ? part : end < 0 ? '' : part.slice(end + 2);
    })
    .join(' ');
}

/** Rules within rules within rules are nobody's drawing. */
const deepestRule = 4;

/** Each rule's head and body; one within an at-rule has its head in front, so that it counts as involved. */
function blocksOf(text: string): { head: string; body: string }[] {
  const blocks: { head: string; body: string }[] = [];
  const open: string[] = [];
  let last = '';
  for (const [piece] of text.matchAll(/[^{}]+|[{}]/g)) {
    if (piece === '{') {
      if (open.length === deepestRule) break;
      open.push(last.trim());
      last = '';
    } else if (piece === '}') {
      const own = open.pop();
      if (own !== undefined) blocks.push({ head: [...open, own].join(' '), body: last });
      last = '';
    } else last = open.length === 0 ? piece.slice(piece.lastIndexOf(';') + 1) : piece;
  }
  return blocks;
}
