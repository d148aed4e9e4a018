declare module 'jsts/org/locationtech/jts/*.js' {
  const value: {
    new (...args: unknown[]): { createPolygon(coordinates: unknown[]): unknown };
    overlayOp(a: unknown, b: unknown, code: number): unknown;
    bufferOp(a: unknown, distance: number, quadrantSegments: number): unknown;
    readonly UNION: number;
    readonly INTERSECTION: number;
    readonly DIFFERENCE: number;
    readonly SYMDIFFERENCE: number;
  };
  export default value;
}
