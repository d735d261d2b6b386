import { expect, test } from 'vitest';
import { comingDownIndex } from '../../../src/flight/comingDown.ts';
import { indexAt } from '../../../src/flight/events.ts';
import { airDeceleration } from '../../../src/flight/wayDown/airDeceleration.ts';
import { flightOf, sampleText, shaken } from '../../wayDownFlights.ts';

const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');
const bare = (6.2 * 1.25) / 1900;

test('is q·CdA/m of the capsule all along its bare fall', async () => {
  const flight = await flightOf(text, card);
  const air = airDeceleration(flight, comingDownIndex(flight));
  let worst = 0;
  for (let t = 5800; t < 6080; t += 5) {
    const i = indexAt(flight.time, t);
    worst = Math.max(worst, Math.abs(air.deceleration[i]! - bare * flight.dynamicPressure[i]!));
  }
  // Measured 0.02 m/s² of up to 33: the curve bends within the window of five seconds.
  expect(worst).toBeLessThan(0.06);
});

test('its sigma is what noise makes of it', async () => {
  const flight = await flightOf(shaken(text, { 'Speed (m/s)': 0.2 }, 9), card);
  const air = airDeceleration(flight, comingDownIndex(flight));
  const errors: number[] = [];
  for (let t = 6240; t < 6580; t += 10) {
    const i = indexAt(flight.time, t);
    errors.push(air.deceleration[i]! - (547.75 / 1900) * flight.dynamicPressure[i]!);
  }
  const rms = Math.sqrt(errors.reduce((s, e) => s + e * e, 0) / errors.length);
  // The noise of q under the canopy adds to that of the slope.
  expect(rms).toBeLessThan(6 * air.sigma_m_s2);
  expect(rms).toBeGreaterThan(0.3 * air.sigma_m_s2);
});

test('nothing before the start, under thrust or at rest', async () => {
  const flight = await flightOf(text, card);
  const from = comingDownIndex(flight);
  const { deceleration } = airDeceleration(flight, from);
  expect(deceleration.subarray(0, from).every(Number.isNaN)).toBe(true);
  expect(deceleration.at(-1)).toBeNaN();
});
