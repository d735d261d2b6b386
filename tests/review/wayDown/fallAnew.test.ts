import { expect, test } from 'vitest';
import { indexAt } from '../../../src/flight/events.ts';
import { timeToRadius } from '../../../src/orbit/kepler.ts';
import { fallAnew } from '../../../src/review/wayDown/fallAnew.ts';
import { flightOf, sampleText } from '../../wayDownFlights.ts';

test('without drag it is the free path of two bodies', async () => {
  const flight = await flightOf(
    sampleText('homeward-tansy-1.csv'),
    sampleText('homeward-tansy-1.mission.json'),
  );
  const i = indexAt(flight.time, 4300);
  const { world } = flight.mission;
  const down = timeToRadius(
    world.mu_m3_s2,
    flight.radius[i]!,
    flight.verticalSpeed[i]!,
    flight.track.inertialHorizontalSpeed[i]!,
    world.radius_m + 100_000,
    'falling',
  )!;
  const end = fallAnew(flight, i, 100_000, 0)!;
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
