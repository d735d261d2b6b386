import { expect, test } from 'vitest';
import { indexAt } from '../../../src/flight/events.ts';
import { timeToRadius } from '../../../src/orbit/kepler.ts';
import { fallAnew } from '../../../src/review/wayDown/fallAnew.ts';
import { flightOf, sampleText } from '../../wayDownFlights.ts';

test.each([
  ['high up', 100_000],
  ['on the ground', 0],
  ['in low land', -3000],
])('without drag it is the free path of two bodies: %s', async (_, altitude_m) => {
  const flight = await flightOf(
    sampleText('homeward-tansy-1.csv'),
    sampleText('homeward-tansy-1.mission.json'),
  );
  const i = indexAt(flight.time, 4300);
  const { world } = flight.mission;
  // So much slower that the free path meets the ground.
  const speed_m_s = -1500;
  const across = flight.horizontalSpeed[i]! + speed_m_s;
  const course = flight.track.course[i]!;
  const turning = world.spin_rad_s * flight.radius[i]! * Math.cos(flight.track.latitude[i]!);
  const down = timeToRadius(
    world.mu_m3_s2,
    flight.radius[i]!,
    flight.verticalSpeed[i]!,
    Math.hypot(across * Math.sin(course) + turning, across * Math.cos(course)),
    world.radius_m + altitude_m,
    'falling',
  )!;
  const end = fallAnew(flight, i, altitude_m, 0, { speed_m_s })!;
  expect(end.time_s - flight.time[i]!).toBeCloseTo(down, 4);
});

test('drag brings it down later in time and sooner along the ground', async () => {
  const flight = await flightOf(
    sampleText('homeward-tansy-1.csv'),
    sampleText('homeward-tansy-1.mission.json'),
  );
  const i = indexAt(flight.time, 4300);
  const light = fallAnew(flight, i, 20_000, 0.02)!;
  const heavy = fallAnew(flight, i, 20_000, 0.002)!;
  expect(light.time_s).toBeGreaterThan(heavy.time_s);
  const way = (end: { longitude_rad: number }) => end.longitude_rad - flight.track.longitude[i]!;
  expect(way(light)).toBeLessThan(way(heavy));
});

test('what stays in orbit never comes down', async () => {
  const flight = await flightOf(
    sampleText('homeward-tansy-1.csv'),
    sampleText('homeward-tansy-1.mission.json'),
  );
  expect(fallAnew(flight, indexAt(flight.time, 1500), 100_000, 0)).toBeNull();
});
