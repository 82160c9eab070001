/** The two measures of a polygon that the checks take from d3-polygon. */
declare module 'd3-polygon' {
  type Vertex = readonly [number, number];
  export function polygonArea(polygon: readonly Vertex[]): number;
  export function polygonLength(polygon: readonly Vertex[]): number;
}
