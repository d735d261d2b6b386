import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText, readTruth } from '../referenceFlights.ts';

/**
 * A synthetic twin of a log read off a display: kilometres beside metres per second with no unit written, the
 * altitude in steps of 0.1 km and from 100 km up of 1 km, the speed in steps of 1 km/h, nothing else.
 */
function displayTwin(name: ReferenceName, until_s = Number.POSITIVE_INFINITY): Uint8Array {
  const rows = cutLog(name, ['time_s', 'altitude_m', 'speed_m_s'])
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number) as [number, number, number])
    .filter(([t]) => t <= until_s);
  const km = (h: number): number => (h < 1e5 ? Math.round(h / 100) / 10 : Math.round(h / 1000));
  const twin = {
    time: rows.map(([t]) => t),
    velocity: rows.map(([, , v]) => Math.round((Math.round(v * 3.6) / 3.6) * 1000) / 1000),
    altitude: rows.map(([, h]) => km(h)),
  };
  return new TextEncoder().encode(JSON.stringify(twin));
}

/** The reference card without its vehicle: world, site and target only. */
function bareCard(name: ReferenceName): string {
  const { vehicle: _, ...rest } = JSON.parse(readCardText(name));
  return JSON.stringify(rest);
}

describe.each(['earth-nominal', 'osselby-early-cutoff'] as const)('display twin of %s', (name) => {
  const truth = readTruth(name);
  const analysis = reviewFlight({
    log: { name: 'twin.json', bytes: displayTwin(name) },
    card: { name: 'bare.mission.json', text: bareCard(name) },
  });

  test('units are inferred and the inference is told', async () => {
    const { review } = await analysis;
    const altitude = review.channels.find((c) => c.channel === 'altitude')!;
    expect(altitude.unit).toBe('km');
    expect(altitude.unitFrom).toBe('inferred');
    expect(altitude.reason.length).toBeGreaterThan(10);
    expect(review.channels.find((c) => c.channel === 'speed')!.unit).toBe('m/s');
  });

  test('cutoffs and the second ignition are found from the path alone', async () => {
    const { review } = await analysis;
    for (const [time_s, label] of truth.events) {
      const kind = label.split(' ')[0];
      // The first ignition is lift-off, and a separation leaves no trace in the speed.
      if (kind === 'separation' || time_s === 0) continue;
      const nearest = Math.min(
        ...review.events.filter((e) => e.name === kind).map((e) => Math.abs(e.time_s - time_s)),
      );
      // Measured: within 0.4 s.
      expect(nearest, label).toBeLessThan(2);
    }
  });

  test('the orbit lies within its stated interval', async () => {
    const { atCutoff } = (await analysis).review.orbit;
    const wanted = truth.orbit_at_cutoff;
    for (const [figure, value] of [
      [atCutoff.semiMajorAxis_m, wanted.semi_major_axis_m],
      [atCutoff.apoapsisAltitude_m, wanted.apoapsis_altitude_m],
      [atCutoff.periapsisAltitude_m, wanted.periapsis_altitude_m],
    ] as const) {
      expect(figure.low!).toBeLessThanOrEqual(value);
      expect(figure.high!).toBeGreaterThanOrEqual(value);
    }
  });

  test('gravity and speed gained come within their intervals; what needs mass is unavailable and says why', async () => {
    const { ledger, budget } = (await analysis).review;
    expect(ledger.ground.gravity.low!).toBeLessThanOrEqual(truth.ground.gravity!);
    expect(ledger.ground.gravity.high!).toBeGreaterThanOrEqual(truth.ground.gravity!);
    expect(Math.abs(ledger.ground.speedGained.value! - truth.ground.speed_gained!)).toBeLessThan(5);
    for (const figure of [ledger.ground.ideal, ledger.ground.steering, ledger.ground.drag, budget.margin]) {
      expect(figure.value).toBeNull();
      expect(figure.basis).toBe('unavailable');
      expect(figure.reason).toMatch(/mass/u);
    }
  });

  test('the verdict stands on the orbit alone', async () => {
    const { verdict } = (await analysis).review;
    expect(['in-orbit', 'orbit-off-target', 'undetermined']).toContain(verdict.code);
    if (name !== 'earth-nominal') expect(verdict.code).toBe('undetermined');
  });
});

test('on a steep path with steps in quick succession the rate is not as open as a step between two of them', async () => {
  // The log ends in the coast after the first stage, at 84° and some 1,400 m/s: an altitude step about every 0.1 s.
  const name = 'earth-lofted';
  const truth = readTruth(name);
  const cutoff_s = truth.events.find(([, label]) => label.startsWith('cutoff'))?.[0] ?? Number.NaN;
  const { review } = await reviewFlight({
    log: { name: 'twin.json', bytes: displayTwin(name, cutoff_s + 5) },
    card: { name: 'bare.mission.json', text: bareCard(name) },
  });
  const toGo = review.budget.deltaVToGo;
  const { delta_v_to_go } = truth.to_go.reduce((a, b) =>
    Math.abs(b.t - cutoff_s) < Math.abs(a.t - cutoff_s) ? b : a,
  );
  expect(toGo.low!).toBeLessThanOrEqual(delta_v_to_go);
  expect(toGo.high!).toBeGreaterThanOrEqual(delta_v_to_go);
  // Measured: 692 m/s wide. The length of a velocity so near the vertical says next to nothing of the sideways speed:
  // fused with the altitudes it came out backward, so the channels stay apart and the interval open.
  expect(toGo.high! - toGo.low!).toBeLessThan(830);
});
