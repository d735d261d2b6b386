import { expect, test } from 'vitest';
import { leastSquares } from '../../src/flight/identify/leastSquares.ts';

/** Data and certified values: NIST Statistical Reference Datasets, linear regression, Norris and Longley. */
const norrisX = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
  447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
  229.2, 669.1, 448.9, 0.5,
];
const norrisY = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
  448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
  228.9, 668.4, 449.2, 0.2,
];
const longley = [
  [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
  [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
  [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
  [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
  [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
  [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
  [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
  [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
  [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
  [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
  [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
  [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
  [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
  [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
  [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
  [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
];

/** Certified digits that agree: −log10 of the relative error. */
function digits(got: number, certified: number): number {
  return got === certified ? 15 : -Math.log10(Math.abs(got / certified - 1));
}

function solve(rows: readonly (readonly number[])[], y: readonly number[]) {
  const cols = rows[0]!.length;
  const solved = leastSquares(cols, Float64Array.from(rows.flat()), Float64Array.from(y));
  const variance = solved.residualSquares / (y.length - cols);
  const deviation = Array.from(solved.x, (_, k) => Math.sqrt(variance * solved.inverseNormal[k * cols + k]!));
  return { ...solved, deviation };
}

test('Norris: intercept, slope, their deviations and the residual sum to 12 digits', () => {
  const s = solve(
    norrisX.map((x) => [1, x]),
    norrisY,
  );
  const got = [...s.x, ...s.deviation, s.residualSquares];
  const certified = [
    -0.262323073774029, 1.00211681802045, 0.232818234301152, 0.429796848199937e-3, 26.6173985294224,
  ];
  certified.forEach((c, k) => {
    expect(digits(got[k]!, c)).toBeGreaterThan(12);
  });
});

test('Longley: seven coefficients, deviations and the residual sum to 10 digits (condition number 5e9)', () => {
  const s = solve(
    longley.map((row) => [1, ...row.slice(1)]),
    longley.map((row) => row[0]!),
  );
  const got = [...s.x, ...s.deviation, s.residualSquares];
  const certified = [
    -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
    -0.0511041056535807, 1829.15146461355, 890420.383607373, 84.9149257747669, 0.0334910077722432,
    0.488399681651699, 0.214274163161675, 0.22607320006937, 455.478499142212, 836424.055505915,
  ];
  certified.forEach((c, k) => {
    expect(digits(got[k]!, c)).toBeGreaterThan(10);
  });
});

test('NoInt1: a line through the origin', () => {
  const s = solve(
    [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70].map((x) => [x]),
    [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140],
  );
  expect(digits(s.x[0]!, 2.07438016528926)).toBeGreaterThan(13);
  expect(digits(s.residualSquares, 127.272727272727)).toBeGreaterThan(11);
});
