/** The few parts of clipper-lib that the referee calls. */
declare module 'clipper-lib' {
  interface IntPoint {
    X: number;
    Y: number;
  }
  class Clipper {
    AddPath(path: IntPoint[], type: number, isClosed: boolean): boolean;
    Execute(type: number, solution: IntPoint[][], subjectFill: number, clipFill: number): boolean;
    static Area(path: IntPoint[]): number;
  }
  const library: {
    Clipper: typeof Clipper;
    PolyType: { ptSubject: number; ptClip: number };
    ClipType: { ctDifference: number; ctUnion: number };
    PolyFillType: { pftNonZero: number };
  };
  export default library;
}
