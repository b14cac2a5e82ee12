/** The part of clipper-lib 6.4.2 that the region engine uses; the package brings no types. */
declare module "clipper-lib" {
  interface IntPoint {
    X: number;
    Y: number;
  }
  class Clipper {
    AddPath(path: IntPoint[], polyType: number, closed: boolean): boolean;
    Execute(clipType: number, solution: IntPoint[][], subjectFill: number, clipFill: number): boolean;
    static Area(path: IntPoint[]): number;
  }
  const ClipperLib: {
    Clipper: typeof Clipper;
    ClipType: { ctIntersection: number; ctUnion: number; ctDifference: number; ctXor: number };
    PolyType: { ptSubject: number; ptClip: number };
    PolyFillType: { pftEvenOdd: number; pftNonZero: number };
    Error: (message: string) => void;
  };
  export default ClipperLib;
}
