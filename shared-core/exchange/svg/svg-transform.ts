/** The attribute `transform` of an SVG as one matrix. Source: SVG 1.1, 7.6 (from memory). */
import { type Matrix, product, unmoved } from '../pattern/drawn.ts';
import { plainNumber } from '../plain-number.ts';

/** Null where any of it cannot be read. */
export function transformMatrix(text: string): Matrix | null {
  const step = /[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/y;
  let matrix = unmoved;
  let at = 0;
  for (let match = step.exec(text); match; match = step.exec(text)) {
    const numbers = match[2]!
      .trim()
      .split(/\s*,\s*|\s+/)
      .map(plainNumber);
    const one = numbers.every(Number.isFinite) ? single(match[1]!, numbers) : null;
    if (!one) return null;
    matrix = product(matrix, one);
    at = step.lastIndex;
  }
  return text.slice(at).trim() === '' ? matrix : null;
}

function single(name: string, numbers: readonly number[]): Matrix | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = numbers;
  const count = numbers.length;
  const tangent = Math.tan((a * Math.PI) / 180);
  switch (name) {
    case 'matrix':
      return count === 6 ? [a, b, c, d, e, f] : null;
    case 'translate':
      return count === 1 || count === 2 ? [1, 0, 0, 1, a, b] : null;
    case 'scale':
      return count === 1 || count === 2 ? [a, 0, 0, count === 1 ? a : b, 0, 0] : null;
    case 'rotate': {
      if (count !== 1 && count !== 3) return null;
      const cos = Math.cos((a * Math.PI) / 180);
      const sin = Math.sin((a * Math.PI) / 180);
      return [cos, sin, -sin, cos, b - b * cos + c * sin, c - b * sin - c * cos];
    }
    case 'skewX':
      return count === 1 ? [1, 0, tangent, 1, 0, 0] : null;
    case 'skewY':
      return count === 1 ? [1, tangent, 0, 1, 0, 0] : null;
    default:
      return null;
  }
}
