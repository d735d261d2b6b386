/** What the tests use of the package odex, whose own sources do not pass the strict checks. */
export declare class Solver {
  constructor(size: number);
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  solve(
    derivative: (x: number, y: number[]) => number[],
    x: number,
    y: number[],
    xEnd: number,
  ): { readonly y: number[]; readonly xEnd: number };
}
