import { describe, expect, test } from 'vitest';
import { comingDownIndex } from '../../src/flight/comingDown.ts';
import { inertialState } from '../../src/flight/inertialState.ts';
import { peakAltitudeIndex } from '../../src/flight/peakAltitude.ts';
import { orbitAt } from '../../src/ledger/ascentEnd.ts';
import { elementsFromState, semiMajorAxis_m } from '../../src/orbit/elements.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';
import { flightOf, sampleText } from '../wayDownFlights.ts';

describe('the way down begins', () => {
  test('where a flight that came back last was above the orbit floor', async () => {
    const flight = await flightOf(
      sampleText('homeward-tansy-1.csv'),
      sampleText('homeward-tansy-1.mission.json'),
    );
    const i = comingDownIndex(flight);
    expect(flight.altitude[i]!).toBeGreaterThanOrEqual(110_000);
    expect(flight.altitude[i + 1]!).toBeLessThan(110_000);
  });

  test('at nine tenths of the peak of a flight that stayed below it', async () => {
    const flight = await flightOf(
      sampleText('bobstay-teasel-2.csv'),
      sampleText('bobstay-teasel-2.mission.json'),
    );
    const peak = flight.altitude[peakAltitudeIndex(flight)]!;
    const level = Math.min(0.9 * peak, flight.mission.world.orbitFloor_m);
    expect(flight.altitude[comingDownIndex(flight) + 1]!).toBeLessThan(level);
  });

  test('never for one that stays up', async () => {
    const flight = await flightOf(cutLog('osselby-nominal'), readCardText('osselby-nominal'));
    expect(comingDownIndex(flight)).toBe(flight.time.length - 1);
  });
});

test('the inertial state is that of the orbit: size, shape and inclination', async () => {
  const flight = await flightOf(
    sampleText('homeward-tansy-1.csv'),
    sampleText('homeward-tansy-1.mission.json'),
  );
  const i = flight.burns[2]!.endIndex;
  const state = inertialState(flight, i);
  const orbit = orbitAt(flight, i);
  const elements = elementsFromState(flight.mission.world.mu_m3_s2, state);
  expect(Math.hypot(...state.position_m)).toBeCloseTo(flight.radius[i]!, 3);
  expect(semiMajorAxis_m(elements)).toBeCloseTo(orbit.semiMajorAxis_m, 2);
  expect(elements.eccentricity).toBeCloseTo(orbit.eccentricity, 9);
  // Launched due east from 5°: the plane holds the latitude of the site, within what the held heading turns it.
  expect((elements.inclination_rad * 180) / Math.PI).toBeCloseTo(5, 0);
});
