import { expect, test } from 'vitest';
import { comingDownIndex } from '../../../src/flight/comingDown.ts';
import { indexAt } from '../../../src/flight/events.ts';
import { dragPerMass } from '../../../src/flight/wayDown/dragPerMass.ts';
import { flightOf, sampleText, shaken } from '../../wayDownFlights.ts';

const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');
/** Of the sample's capsule: 6.2 m² × 1.25 over 1,900 kg. */
const truth = (6.2 * 1.25) / 1900;

test.each([
  ['as logged', {}, 1e-3],
  ['with 0.5 m/s and 20 m of noise', { 'Speed (m/s)': 0.5, 'Altitude (m)': 20 }, 0.02],
])('%s: the capsule’s drag area over mass', async (_, sigmas, share) => {
  const flight = await flightOf(shaken(text, sigmas, 5), card);
  const from = comingDownIndex(flight);
  const found = dragPerMass(flight, from, indexAt(flight.time, 6040))!;
  expect(Math.abs(found.value_m2_kg / truth - 1)).toBeLessThan(share);
  // Four sigma: one draw only.
  expect(Math.abs(found.value_m2_kg - truth)).toBeLessThan(Math.max(4 * found.sigma_m2_kg, 1e-3 * truth));
});

test('above the air there is nothing to identify', async () => {
  const flight = await flightOf(text, card);
  expect(dragPerMass(flight, indexAt(flight.time, 1500), indexAt(flight.time, 2500))).toBeNull();
});
