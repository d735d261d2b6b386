import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { opm } from '../../src/exchange/opm.ts';
import { readTruth } from '../referenceFlights.ts';
import { reviewSix } from '../review/reviewSix.ts';
import { strictEpoch, strictOpm } from './ccsds/strictReader.ts';
import { handMadeReview } from './handMadeReview.ts';

const options = { created_ms: Date.UTC(2031, 4, 20, 12), originator: 'Long Ladder club' };

describe.each(['earth-nominal', 'osselby-nominal', 'osselby-short'] as const)('the orbit of %s', (name) => {
  const truth = readTruth(name);
  const ready = reviewSix(name).then((analysis) => ({ analysis, read: strictOpm(opm(analysis, options)) }));

  test('keeps the rules of the standard', async () => {
    const { read } = await ready;
    expect(read.header).toMatchObject({
      CCSDS_OPM_VERS: '2.0',
      CREATION_DATE: '2031-05-20T12:00:00',
      ORIGINATOR: 'LONG LADDER CLUB',
    });
    expect(read.metadata.OBJECT_NAME).toBe(name.toUpperCase());
    expect(read.elements).not.toBeNull();
  });

  test('is the true orbit at the true cutoff', async () => {
    const { analysis, read } = await ready;
    const { orbit_at_cutoff: orbit, cutoff_time_s } = truth;
    // Measured: 0.00002 s, 0.04 m of semi-major axis, 3e-6°; the eccentricity's 5e-6 is 0.04 m/s of vertical speed.
    expect(Math.abs(read.unix_s - strictEpoch('2000-01-01T00:00:00') - cutoff_time_s)).toBeLessThan(1e-4);
    const { SEMI_MAJOR_AXIS = 0, ECCENTRICITY = 0, INCLINATION = 0, GM } = read.elements ?? {};
    expect(Math.abs(SEMI_MAJOR_AXIS * 1000 - orbit.semi_major_axis_m)).toBeLessThan(0.2);
    expect(Math.abs(ECCENTRICITY - orbit.eccentricity)).toBeLessThan(1e-5);
    expect(Math.abs(INCLINATION - orbit.inclination_deg)).toBeLessThan(1e-5);
    expect(GM).toBe(analysis.review.mission.constants.gravitationalParameter_m3_s2 / 1e9);
  });

  test('its elements belong to its state', async () => {
    const { read } = await ready;
    const { X = 0, Y = 0, Z = 0, X_DOT = 0, Y_DOT = 0, Z_DOT = 0 } = read.state;
    const { SEMI_MAJOR_AXIS: a = 0, ECCENTRICITY: e = 0, TRUE_ANOMALY = 0, GM = 0 } = read.elements ?? {};
    const r = Math.hypot(X, Y, Z);
    const speed = Math.hypot(X_DOT, Y_DOT, Z_DOT);
    // Orbit equation and vis-viva; measured 2e-9.
    expect((a * (1 - e * e)) / (1 + e * Math.cos((TRUE_ANOMALY * Math.PI) / 180)) / r).toBeCloseTo(1, 7);
    expect((speed * speed) / (GM * (2 / r - 1 / a))).toBeCloseTo(1, 7);
    const climbing = X * X_DOT + Y * Y_DOT + Z * Z_DOT > 0;
    expect(TRUE_ANOMALY < 180).toBe(climbing);
  });

  test('its mass is the vehicle’s after cutoff', async () => {
    const { analysis, read } = await ready;
    const mass = analysis.strips.channels.mass_kg?.values.at(-1) ?? 0;
    expect(Math.abs((read.rest.MASS ?? 0) / mass - 1)).toBeLessThan(1e-4);
  });
});

test('a log without mass gives an orbit without mass', async () => {
  const analysis = await reviewSix('osselby-nominal', 10);
  const { mass_kg: _, ...channels } = analysis.strips.channels;
  const read = strictOpm(opm({ ...analysis, strips: { ...analysis.strips, channels } }, options));
  expect(read.rest).toEqual({});
});

test('a flight without positions is told', () => {
  const strips = { time_s: Float64Array.of(0, 1), channels: {} };
  expect(() => opm({ review: handMadeReview(), strips }, options)).toThrow(
    new LossbookError('nothing-to-exchange', { what: 'orbit' }, { file: 'bobstay-medlar-4.csv' }),
  );
});
