import { describe, expect, test } from 'vitest';
import { kalmanFilter, kalmanSmooth, type StateModel } from '../../src/flight/smooth/kalman.ts';
import { randomWalkStep } from '../../src/flight/smooth/randomWalk.ts';

/**
 * Annual flow of the Nile at Aswan 1871–1970, 1e8 m³ (Cobb 1978; the values from memory, borne out by the figures
 * below). Local level with σε² = 15099, ση² = 1469.1 (Durbin & Koopman 2012, §2.2, from memory; the parameters
 * also in public example code), a₁ = 0, P₁ = 1e7.
 */
const FLOW = [
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
  1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040,
  759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890,
  744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740,
];

const model: StateModel = {
  size: 1,
  nodes: FLOW.length,
  start: Float64Array.of(0),
  startCovariance: Float64Array.of(1e7),
  step: () => randomWalkStep(1, 1, 1, 1469.1),
  observations: {
    node: Int32Array.from(FLOW, (_, k) => k),
    y: Float64Array.from(FLOW),
    variance: new Float64Array(FLOW.length).fill(15099),
    rows: new Float64Array(FLOW.length).fill(1),
  },
};

describe('the flow of the Nile by the local level model', () => {
  const filtered = kalmanFilter(model);
  const smoothed = kalmanSmooth(model, filtered);

  test('filter: steady gain 0.267 and predicted variance 5501.3 (the book’s), likelihood', () => {
    expect(filtered.gain[99]!).toBeCloseTo(0.267048, 6);
    expect(filtered.covariance[99]!).toBeCloseTo(5501.258, 3);
    const last = filtered.mean[99]! + filtered.gain[99]! * filtered.innovation[99]!;
    expect(last).toBeCloseTo(798.3703, 4);
    expect(filtered.logLikelihood).toBeCloseTo(-641.5856, 4);
  });

  test('smoother: first, fiftieth and last year', () => {
    expect(smoothed.mean[0]!).toBeCloseTo(1111.2203, 4);
    expect(smoothed.covariance[0]!).toBeCloseTo(4030.533, 3);
    expect(smoothed.mean[49]!).toBeCloseTo(834.7633, 4);
    expect(smoothed.covariance[49]!).toBeCloseTo(2326.757, 3);
    expect(smoothed.mean[99]!).toBeCloseTo(798.3703, 4);
    expect(smoothed.covariance[99]!).toBeCloseTo(4032.158, 3);
  });
});
