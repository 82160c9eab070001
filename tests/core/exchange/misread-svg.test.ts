import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { readText } from './dxf-text.ts';

const said = (text: string) => {
  const { found, problems } = readText(text);
  return [...problems.map(problemSentence), ...(found?.notes ?? [])];
};

describe('an SVG', () => {
  const svg = (inside: string, attributes = 'width="700mm" height="500mm" viewBox="0 0 700 500"') =>
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>\n${inside}\n</svg>`;
  const board = '<rect id="board" x="20" y="20" width="300" height="200"/>';
  const sizes = (text: string) =>
    readText(text).found?.pieces.map(
      ({ name, extentMm }) => `${name} ${Math.round(extentMm.acrossMm)} x ${Math.round(extentMm.alongMm)}`,
    );

  it('that moves a shape by its style leaves it out, and says so', () => {
    const moved = '<g style="fill: none; transform: scale(2)"><rect id="m" width="300" height="90"/></g>';
    expect(sizes(svg(board + moved))).toEqual(['board 300 x 200']);
    expect(said(svg(board + moved))).toEqual([
      'The g on line 2 is moved or scaled by a style, which is not read. It is left out; apply its transforms in the drawing program, and save it again.',
    ]);
    const byRule = '<style>.big { transform: scale(2) }</style><rect class="big" width="300" height="90"/>';
    expect(said(svg(board + byRule))[0]).toMatch(/^The rect on line 2 is moved or scaled by a style/);
  });

  it.each(['rotate(90', 'scale(two)', 'scale(0x2)', 'rotate(1 2)', 'spin(4)', 'scale(2) and more'])(
    'with the transform %j leaves that shape out, and says so',
    (transform) => {
      const text = svg(`${board}<rect id="t" transform="${transform}" width="300" height="90"/>`);
      expect(sizes(text)).toEqual(['board 300 x 200']);
      expect(said(text)[0]).toMatch(/^The rect on line 2 has a transform that cannot be read/);
    },
  );

  it('stretched to its page is as large as it stands there, both ways', () => {
    const attributes = 'width="600mm" height="300mm" viewBox="0 0 100 100" preserveAspectRatio="none"';
    expect(sizes(svg('<rect id="a" width="100" height="100"/>', attributes))).toEqual(['a 600 x 300']);
    const filling = 'width="600mm" height="300mm" viewBox="0 0 100 100" preserveAspectRatio="xMidYMid slice"';
    expect(sizes(svg('<rect id="a" width="100" height="50"/>', filling))).toEqual(['a 600 x 300']);
    const half = 'width="600mm" height="100%" viewBox="0 0 100 100" preserveAspectRatio="none"';
    expect(said(svg('<rect id="a" width="100" height="50"/>', half))[0]).toMatch(
      /^The drawing is stretched to its page/,
    );
  });

  it.each([
    ['<style>.old { display: none }</style>', 'class="old"'],
    ['<style>rect.old, #other { visibility: hidden; }</style>', 'class="new old"'],
    ['', 'visibility="hidden"'],
    ['', 'style="visibility:collapse"'],
    ['<g visibility="hidden">', ''],
  ])('hides what its style %j and its attribute %j hide, and says so', (before, attribute) => {
    const rect = `<rect ${attribute} x="400" width="200" height="90"/>`;
    const text = svg(`${board}${before}${rect}${before.startsWith('<g') ? '</g>' : ''}`);
    expect(sizes(text)).toEqual(['board 300 x 200']);
    expect(said(text)).toEqual(['One thing that the drawing hides is left out.']);
  });

  it('shows what is seen again within what is hidden', () => {
    const text = svg(
      '<g visibility="hidden"><rect id="a" visibility="visible" width="300" height="200"/></g>',
    );
    expect(sizes(text)).toEqual(['a 300 x 200']);
  });

  it('with a rule that is too involved to follow says which', () => {
    const text = svg(
      `<style>@media print { .old { display: none } } g > .x { transform: none }</style>${board}`,
    );
    expect(said(text)).toEqual([
      'The style "@media print .old" may hide or move some of the drawing; it is not followed, so look whether all is right.',
      'The style "g > .x" may hide or move some of the drawing; it is not followed, so look whether all is right.',
    ]);
  });

  it('says how many holes are not kept', () => {
    const text = svg('<path id="a" d="M0 0h300v200h-300zM40 40h30v30h-30zM90 40h30v30h-30z"/>');
    expect(said(text)).toEqual([
      '2 closed lines that lie inside a piece not kept: a piece has no place for holes and marks.',
    ]);
  });

  it('that repeats a shape of another file, or one that is not there, says so', () => {
    expect(said(svg(`${board}<use href="other.svg#board"/>`))[0]).toMatch(
      /^The use on line 2 repeats a shape of another file\./,
    );
    expect(said(svg(`${board}<use xlink:href="#gone"/>`))[0]).toMatch(
      /^The use on line 2 repeats a shape that is not there\./,
    );
  });

  it('drawn far too small says that nothing is left of a piece', () => {
    const text = svg(board, 'width="7e-5mm" height="5e-5mm" viewBox="0 0 700 500"');
    expect(sizes(text)).toEqual([]);
    expect(said(text)).toEqual([
      'The piece board (line 2) is so small that nothing of it is left. Check the unit.',
    ]);
  });

  it('with units on its shapes takes them as a browser draws them, and says so', () => {
    const text = svg('<rect id="a" width="20cm" height="100"/>');
    expect(sizes(text)).toEqual(['a 756 x 100']);
    expect(said(text)).toEqual([
      'Measures with a unit, such as 20cm on line 2, are taken as a browser draws them: 96 pixels to the inch.',
    ]);
    const share = svg(`${board}<rect id="a" width="50%" height="100"/>`);
    expect(sizes(share)).toEqual(['board 300 x 200']);
    expect(said(share)[0]).toMatch(/^The rect on line 2 cannot be read: its width is "50%"\./);
  });

  it('within the drawing, with a scale of its own, is left out, and that is said', () => {
    const inner = '<svg viewBox="0 0 10 10" width="300" height="300"><rect width="9" height="9"/></svg>';
    expect(said(svg(board + inner))[0]).toMatch(
      /^The svg on line 2 is a drawing within the drawing with a scale of its own/,
    );
    const symbol =
      '<symbol id="s" viewBox="0 0 10 10"><rect width="9" height="9"/></symbol><use href="#s" width="300"/>';
    expect(said(svg(board + symbol))[0]).toMatch(
      /^The use on line 2 repeats a drawing with a scale of its own/,
    );
  });

  it('written here, whose cutting line is gone or open, names the piece that is missing', () => {
    const piece = (name: string, cut: string) => `<g data-piece="${name}">${cut}</g>`;
    const whole = piece('Whole', '<path data-line="cut" d="M0 0h300v200h-300z"/>');
    const gone = piece('Gone', '<path data-line="seam" d="M0 0h300v200h-300z"/>');
    const open = piece('Open', '<path data-line="cut" d="M0 0h300v200h-300"/>');
    expect(sizes(svg(whole + gone + open))).toEqual(['Whole 200 x 300']);
    expect(said(svg(whole + gone + open))).toEqual([
      'The piece Gone (line 2) has no cutting line. It is left out; save it from here again.',
      'The piece Open (line 2) has an open cutting line. It is left out; save it from here again.',
    ]);
    expect(said(svg(`${whole}<rect x="500" width="90" height="90"/>`))).toEqual([
      '1 line outside of the pieces not read.',
    ]);
  });
});
