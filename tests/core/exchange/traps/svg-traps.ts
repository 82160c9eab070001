/** SVG files that are made to take a reader's time or memory, each by one means. */
import { many, type Trap } from './trap-text.ts';

const drawing = (inside: string, attributes = 'width="700mm" height="500mm" viewBox="0 0 700 500"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${inside}</svg>`;

const comb = (count: number): string =>
  many(count, (i) => `${i % 2 === 0 ? 1 : 300} ${(i * 190) / count}`).join(' ');

export const svgTraps: readonly Trap[] = [
  {
    name: 'twenty thousand triangles',
    text: () =>
      drawing(
        many(20_000, (i) => `<path d="M${(i % 200) * 12} ${Math.floor(i / 200) * 12}h9l-4 9z"/>`).join(''),
      ),
  },
  {
    name: 'fifty thousand rects',
    text: () => drawing(many(50_000, (i) => `<rect x="${i * 3}" width="2" height="2"/>`).join('')),
  },
  {
    name: 'fifty thousand circles, each in the one before',
    text: () => drawing(many(50_000, (i) => `<circle r="${900 - i / 60}"/>`).join('')),
  },
  {
    name: 'eight thousand shapes of many sides, one over the other',
    text: () =>
      drawing(many(8000, (i) => `<path d="M${i / 100} 0${'l9 3l3 9'.repeat(12)}l-300 -5z"/>`).join('')),
  },
  {
    name: 'a long path that fails at its end, used fifty thousand times',
    text: () =>
      drawing(
        `<defs><path id="p" d="M0 0${'l1 1'.repeat(50_000)} oops"/></defs>${'<use href="#p"/>'.repeat(50_000)}`,
      ),
  },
  {
    name: 'a path of nothing but Z, used fifty thousand times',
    text: () =>
      drawing(
        `<defs><path id="p" d="M0 0${'Z'.repeat(100_000)}"/></defs>${'<use href="#p"/>'.repeat(50_000)}`,
      ),
  },
  {
    name: 'a sound path of a thousand points, used fifty thousand times',
    text: () =>
      drawing(
        `<defs><path id="p" d="M0 0${'l1 1l1 -2'.repeat(500)}z"/></defs>${'<use href="#p"/>'.repeat(50_000)}`,
      ),
  },
  { name: 'a path of nineteen million Z', text: () => drawing(`<path d="M0 0${'Z'.repeat(19e6)}"/>`) },
  {
    name: 'a path of three million arcs',
    text: () => drawing(`<path d="M0 0${'a1 1 0 00.1.1'.repeat(1.3e6)}"/>`),
  },
  { name: 'a path of five million steps', text: () => drawing(`<path d="M0 0h${'1 '.repeat(9e6)}"/>`) },
  {
    name: 'a transform of a million letters over a thousand paths',
    text: () =>
      drawing(
        `<g transform="${'scale(1 1) '.repeat(90_000)}">${many(1000, (i) => `<path d="M${i} 0h1v1z"/>`).join('')}</g>`,
      ),
  },
  {
    name: 'a transform that is never closed',
    text: () => drawing(`<g transform="${'translate('.repeat(1.5e6)}"><path d="M0 0h200v90z"/></g>`),
  },
  {
    name: 'a transform of blanks',
    text: () => drawing(`<g transform="rotate(${' '.repeat(15e6)}x"><path d="M0 0h200v90z"/></g>`),
  },
  {
    name: 'control points past all bounds',
    text: () => drawing('<path d="M0 0C1e15 1e15 -1e15 1e15 200 0V90z"/>'.repeat(1000)),
  },
  {
    name: 'control points at the bounds',
    text: () => drawing(many(40_000, () => '<path d="M0 0C9e5 9e5 -9e5 9e5 200 0V90z"/>').join('')),
  },
  {
    name: 'scales upon scales',
    text: () => drawing(`${'<g transform="scale(1e60)">'.repeat(20)}<circle r="9"/>${'</g>'.repeat(20)}`),
  },
  {
    name: 'a page of next to no size',
    text: () =>
      drawing('<circle r="9"/>'.repeat(500), 'width="1e-9mm" height="1e-9mm" viewBox="0 0 1e9 1e9"'),
  },
  {
    name: 'a page beyond all size',
    text: () =>
      drawing('<circle r="9"/>'.repeat(500), 'width="1e9mm" height="1e9mm" viewBox="0 0 1e-9 1e-9"'),
  },
  {
    name: 'three million attributes',
    text: () => drawing(`<path ${many(2e6, (i) => `a${i}=""`).join(' ')}/>`),
  },
  {
    name: 'a view box of nineteen million letters',
    text: () => drawing('', `width="9mm" viewBox="${'1 '.repeat(9.5e6)}"`),
  },
  {
    name: 'a width of nineteen million digits',
    text: () => drawing('', `width="${'1'.repeat(19e6)}mm" viewBox="0 0 1 1"`),
  },
  {
    name: 'ten thousand style rules over fifty thousand shapes',
    text: () =>
      drawing(
        `<style>${many(5000, (i) => `.a${i}{display:none}`).join('')}</style>${many(50_000, (i) => `<path class="a${i}" d="M0 0h2v1z"/>`).join('')}`,
      ),
  },
  {
    name: 'a style sheet of nineteen million braces',
    text: () => drawing(`<style>${'{'.repeat(19e6)}</style>`),
  },
  { name: 'a style sheet of comments', text: () => drawing(`<style>${'/*'.repeat(9e6)}</style>`) },
  {
    name: 'a style of nineteen million semicolons',
    text: () => drawing(`<path style="${';'.repeat(19e6)}" d="M0 0h200v90z"/>`),
  },
  {
    name: 'a class of nineteen million letters under a rule',
    text: () =>
      drawing(`<style>.a{display:none}</style><path class="${'b '.repeat(9e6)}" d="M0 0h200v90z"/>`),
  },
  {
    name: 'a character section of nineteen million letters',
    text: () => drawing(`<![CDATA[${'x'.repeat(19e6)}]]>`),
  },
  { name: 'a comment of nineteen million dashes', text: () => drawing(`<!--${' -'.repeat(9e6)} -->`) },
  {
    name: 'a title of nineteen million letters',
    text: () => drawing(`<path d="M0 0h200v90z"><title>${'x'.repeat(19e6)}</title></path>`),
  },
  {
    name: 'three million references to letters',
    text: () => drawing(`<title>${'&#65;'.repeat(3e6)}</title>`),
  },
  {
    name: 'entities that grow tenfold each',
    text: () =>
      `<!DOCTYPE svg [<!ENTITY a0 "aaaaaaaaaa">${many(12, (i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`).join('')}]>${drawing('<title>&a12;</title>')}`,
  },
  {
    name: 'a document type of nineteen million letters',
    text: () => `<!DOCTYPE svg ${'x '.repeat(9e6)}>${drawing('')}`,
  },
  {
    name: 'groups a hundred thousand deep',
    text: () => drawing(`${'<g>'.repeat(100_000)}${'</g>'.repeat(100_000)}`),
  },
  {
    name: 'uses of uses, ten in each',
    text: () =>
      drawing(
        `<path id="g0" d="M0 0h2v1z"/>${many(12, (i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(10)}</g>`).join('')}`,
      ),
  },
  { name: 'a use of itself', text: () => drawing('<g id="a"><use href="#a"/><use href="#a"/></g>') },
  {
    name: 'a use with a name of a million letters, a thousand times',
    text: () =>
      drawing(
        `<g id="${'x'.repeat(1e6)}"><path d="M0 0h2v1z"/></g>${`<use href="#${'x'.repeat(15_000)}"/>`.repeat(1000)}`,
      ),
  },
  {
    name: 'a symbol of many attributes, used fifty thousand times',
    text: () =>
      drawing(
        `<symbol id="s" ${many(10_000, (i) => `b${i}="1"`).join(' ')}><path d="M0 0h2v1z"/></symbol>${'<use href="#s"/>'.repeat(25_000)}`,
      ),
  },
  {
    name: 'fifty thousand kinds of thing that nobody knows',
    text: () => drawing(many(50_000, (i) => `<k${i}/>`).join('')),
  },
  {
    name: 'fifty thousand groups that say they are pieces',
    text: () => drawing('<g data-piece="x"><path data-line="cut" d="M0 0h200v90z"/></g>'.repeat(25_000)),
  },
  {
    name: 'a hundred and ninety pieces of one name with circles in them',
    text: () =>
      drawing(
        many(190, (i) => `<path id="a" d="M${i * 300} 0h200v190h-200z"/>`).join('') +
          '<circle id="a" cx="50" cy="50" r="3"/>'.repeat(40_000),
      ),
  },
  {
    name: 'an outline of three hundred thousand sides',
    text: () => drawing(`<polygon points="${comb(290_000)} 400 190 400 -9 0 -9"/>`),
  },
  {
    name: 'loose lines that all begin in one point',
    text: () => drawing(many(4000, (i) => `<path d="M0 0L${100 + i} ${100 - i}"/>`).join('')),
  },
  {
    name: 'loose lines of many points in one long chain',
    text: () => drawing(many(3900, (i) => `<path d="M${i} 0${'l.01 .01'.repeat(74)}L${i + 1} 0"/>`).join('')),
  },
  {
    name: 'a written piece with a rough cutting line and five hundred notches',
    text: () =>
      drawing(
        `<g data-piece="x"><path data-line="cut" d="M${many(100_000, (i) => `${300 * Math.cos(i / 15_915)} ${300 * Math.sin(i / 15_915)}`).join('L')}z"/>${many(500, (i) => `<path data-line="notch" d="M${300 * Math.cos(i)} ${300 * Math.sin(i)}l3 3"/>`).join('')}</g>`,
      ),
  },
];
