import { describe, expect, test } from 'vitest';
import type { ConstrainedProblem } from '../../src/refly/constrainedMinimum.ts';
import { constrainedMinimum } from '../../src/refly/constrainedMinimum.ts';

// Hock & Schittkowski, Test Examples for Nonlinear Programming Codes, 1981; numbers from memory, except that each
// optimum but the last can be checked by hand.
const box = (n: number, v: number) => new Float64Array(n).fill(v);
const cases: { name: string; start: number[]; optimum: number; problem: ConstrainedProblem }[] = [
  {
    name: 'problem 6, optimum 0 at (1, 1)',
    start: [-1.2, 1],
    optimum: 0,
    problem: {
      size: 2,
      constraints: 1,
      lower: box(2, -10),
      upper: box(2, 10),
      evaluate: (x, c) => {
        c[0] = 10 * (x[1]! - x[0]! ** 2);
        return (1 - x[0]!) ** 2;
      },
    },
  },
  {
    name: 'problem 7, optimum −√3',
    start: [2, 2],
    optimum: -Math.sqrt(3),
    problem: {
      size: 2,
      constraints: 1,
      lower: box(2, -10),
      upper: box(2, 10),
      evaluate: (x, c) => {
        c[0] = (1 + x[0]! ** 2) ** 2 + x[1]! ** 2 - 4;
        return Math.log(1 + x[0]! ** 2) - x[1]!;
      },
    },
  },
  {
    name: 'problem 1, optimum 0 at (1, 1), a wall near the way',
    start: [-2, 1],
    optimum: 0,
    problem: {
      size: 2,
      constraints: 0,
      lower: Float64Array.of(-1e3, -1.5),
      upper: box(2, 1e3),
      evaluate: (x) => 100 * (x[1]! - x[0]! ** 2) ** 2 + (1 - x[0]!) ** 2,
    },
  },
  {
    name: 'problem 71, optimum 17.0140173 on two walls, its inequality by a slack',
    start: [1, 5, 5, 1, 0],
    optimum: 17.0140173,
    problem: {
      size: 5,
      constraints: 2,
      lower: Float64Array.of(1, 1, 1, 1, 0),
      upper: Float64Array.of(5, 5, 5, 5, 100),
      evaluate: (x, c) => {
        const [a = 0, b = 0, d = 0, e = 0, slack = 0] = x;
        c[0] = a * b * d * e - 25 - slack;
        c[1] = a * a + b * b + d * d + e * e - 40;
        return a * e * (a + b + d) + d;
      },
    },
  },
];

describe('constrained minima of Hock and Schittkowski', () => {
  test.each(cases)('$name', ({ start, optimum, problem }) => {
    const end = constrainedMinimum(problem, start, { rounds: 120 });
    expect(end.settled).toBe(true);
    // Measured: at most 1e-10 off and 3e-10 in the constraints; the last optimum is printed to nine digits.
    expect(Math.abs(end.value - optimum)).toBeLessThan(5e-8);
    expect(end.miss).toBeLessThan(1e-8);
  });
});
