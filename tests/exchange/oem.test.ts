import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import type { Flown } from '../../src/exchange/ccsds/inertialStates.ts';
import { oem } from '../../src/exchange/oem.ts';
import { readTruth } from '../referenceFlights.ts';
import { reviewSix } from '../review/reviewSix.ts';
import { strictEpoch, strictOem } from './ccsds/strictReader.ts';
import { handMadeReview } from './handMadeReview.ts';

const options = { created_ms: Date.UTC(2031, 4, 20, 12) };
const norm = (v: readonly number[]) => Math.hypot(...v);

/** The same analysis, flown at another place and date. */
function placed(analysis: Flown, longitude_deg: number, date: string): Flown {
  const { review, strips } = analysis;
  const { longitude_deg: log } = strips.channels;
  const mission = { ...review.mission, date, site: { ...review.mission.site, longitude_deg } };
  const moved =
    log === undefined ? {} : { longitude_deg: { ...log, values: log.values.map((x) => x + longitude_deg) } };
  return {
    review: { ...review, mission },
    strips: { ...strips, channels: { ...strips.channels, ...moved } },
  };
}

describe.each(['earth-nominal', 'osselby-nominal', 'osselby-short'] as const)(
  'the ephemeris of %s',
  (name) => {
    const truth = readTruth(name);
    const ready = reviewSix(name).then((analysis) => ({ analysis, read: strictOem(oem(analysis, options)) }));

    test('keeps the rules of the standard and has a line for each row', async () => {
      const { analysis, read } = await ready;
      expect(read.blocks).toHaveLength(1);
      const states = read.blocks[0]?.states ?? [];
      expect(states.length).toBeGreaterThanOrEqual(analysis.review.source.rows);
      expect(states.length).toBeLessThanOrEqual(analysis.strips.time_s.length);
      expect(new Set(states.map((s) => s.unix_s)).size).toBe(states.length);
      expect(read.comments.join(' ')).toMatch(/Epochs are made up.*lift-off is put at 2000-01-01T00:00:00/);
    });

    test('its state after cutoff has the true orbit', async () => {
      const { analysis, read } = await ready;
      const { gravitationalParameter_m3_s2, radius_m } = analysis.review.mission.constants;
      const mu = gravitationalParameter_m3_s2 / 1e9;
      const zero = strictEpoch('2000-01-01T00:00:00');
      const after = read.blocks[0]?.states.find((s) => s.unix_s - zero > truth.cutoff_time_s + 1);
      if (after === undefined) throw new Error('no state after cutoff');
      const [[x = 0, y = 0, z = 0], [vx = 0, vy = 0, vz = 0]] = [after.r_km, after.v_km_s];
      const h = [y * vz - z * vy, z * vx - x * vz, x * vy - y * vx];
      // Vis-viva and the angular momentum (any textbook of orbital mechanics).
      const axis = 1 / (2 / norm(after.r_km) - norm(after.v_km_s) ** 2 / mu);
      const e = Math.sqrt(1 - norm(h) ** 2 / (mu * axis));
      const { apoapsis_altitude_m, periapsis_altitude_m, inclination_deg } = truth.orbit_at_cutoff;
      // Measured from six channels: 1.4 m on Earth, 0.5 m on Osselby, and 3e-6°.
      expect(Math.abs(axis * (1 + e) * 1000 - radius_m - apoapsis_altitude_m)).toBeLessThan(3);
      expect(Math.abs(axis * (1 - e) * 1000 - radius_m - periapsis_altitude_m)).toBeLessThan(3);
      expect(Math.abs((Math.acos((h[2] ?? 0) / norm(h)) * 180) / Math.PI - inclination_deg)).toBeLessThan(
        1e-5,
      );
    });

    test('its velocities lead from each position to the next', async () => {
      const { read } = await ready;
      const states = read.blocks[0]?.states ?? [];
      const misses = states.slice(1).map((b, i) => {
        const a = states[i] ?? b;
        const dt = b.unix_s - a.unix_s;
        return norm(
          b.r_km.map((x, k) => x - (a.r_km[k] ?? 0) - (((a.v_km_s[k] ?? 0) + (b.v_km_s[k] ?? 0)) / 2) * dt),
        );
      });
      // Trapezoid over 0.1 s; measured 5 cm at the worst, where the speed's last digit is 1 cm/s.
      expect(Math.max(...misses)).toBeLessThan(1e-4);
    });
  },
);

describe('epoch and frame', () => {
  test('date, time of day and longitude on Earth give true dates and TEME', async () => {
    const flight = placed(await reviewSix('earth-nominal', 10), -80.6, '1992-08-20T12:14:00Z');
    const { blocks, comments } = strictOem(oem(flight, options));
    const [block] = blocks;
    expect(block?.metadata).toMatchObject({
      REF_FRAME: 'TEME',
      CENTER_NAME: 'EARTH',
      TIME_SYSTEM: 'UTC',
      START_TIME: '1992-08-20T12:14:00.000000',
    });
    expect(comments.join(' ')).not.toContain('made up');
    // Greenwich stands 152.578788° from the equinox then (Vallado, example 3-5, from memory).
    const [x = 0, y = 0] = block?.states[0]?.r_km ?? [];
    expect((Math.atan2(y, x) * 180) / Math.PI).toBeCloseTo(152.578788 - 80.6, 5);
  });

  test('a date without time of day is used and said to lack one; the frame is then our own', async () => {
    const flight = placed(await reviewSix('earth-nominal', 10), -80.6, '2031-05-14');
    const { blocks, comments } = strictOem(oem(flight, options));
    expect(blocks[0]?.metadata).toMatchObject({
      REF_FRAME: 'INERTIAL_AT_LIFTOFF',
      START_TIME: '2031-05-14T00:00:00.000000',
    });
    expect(comments.join(' ')).toMatch(/The time of day is made up/);
    expect(comments.join(' ')).toMatch(/meridian of longitude zero/);
  });

  test('a site without longitude starts the frame from its own meridian', async () => {
    const { blocks, comments } = strictOem(oem(await reviewSix('osselby-nominal', 10), options));
    expect(comments.join(' ')).toMatch(/centre of Osselby.*meridian of the launch site/);
    const [x = 0, y = 1] = blocks[0]?.states[0]?.r_km ?? [];
    expect(Math.abs(y)).toBeLessThan(1e-6 * x);
  });
});

test('names and texts of any script become printable ASCII, and stay on their line', async () => {
  const analysis = await reviewSix('osselby-nominal', 20);
  const mission = {
    ...analysis.review.mission,
    vehicle: 'Bob–stay «Ü»\nSTOP_TIME = x',
    world: '火星',
    name: '\u001b[31m×',
  };
  const { blocks } = strictOem(oem({ ...analysis, review: { ...analysis.review, mission } }, options));
  expect(blocks[0]?.metadata).toMatchObject({
    OBJECT_NAME: 'BOB-STAY ?U? STOP_TIME = X',
    CENTER_NAME: '??',
  });
});

test('a flight without positions is told', () => {
  const strips = { time_s: Float64Array.of(0, 1), channels: {} };
  expect(() => oem({ review: handMadeReview(), strips }, options)).toThrow(
    new LossbookError('nothing-to-exchange', { what: 'ephemeris' }, { file: 'bobstay-medlar-4.csv' }),
  );
});
