import { describe, expect, test } from 'vitest';
import { comingDownIndex } from '../../../src/flight/comingDown.ts';
import { findParachutes } from '../../../src/flight/wayDown/parachutes.ts';
import { cutLog, readCardText } from '../../referenceFlights.ts';
import { flightOf, onlyColumns, sampleText, shaken } from '../../wayDownFlights.ts';

// Truth of the homeward sample: canopies begin to open at 6,000 m and at 3,000 m and fill over 180 and 50 m.
const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');
const filled = (7.75 + 540) / 1900;

/** When the log comes down through an altitude, s. */
function timeAt(altitude_m: number): number {
  const rows = text
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => line.split(',').map(Number));
  const i = rows.findIndex((row) => row[0]! > 3000 && row[1]! < altitude_m);
  return rows[i]![0]!;
}

describe('parachutes of the homeward sample', () => {
  test.each([
    ['as logged', {}, 1, 0.002],
    ['with 0.1 m/s of noise', { 'Speed (m/s)': 0.1, 'Vertical speed (m/s)': 0.1 }, 2.5, 0.05],
    [
      'with 0.3 m/s and 5 m of noise',
      { 'Speed (m/s)': 0.3, 'Vertical speed (m/s)': 0.3, 'Altitude (m)': 5 },
      4,
      0.08,
    ],
  ])('%s: opening, full inflation and drag area', async (_, sigmas, within_s, share) => {
    const flight = await flightOf(shaken(text, sigmas, 3), card);
    const found = findParachutes(flight, comingDownIndex(flight))!;
    expect(found.openedBefore).toBe(false);
    expect(Math.abs(found.open_s - timeAt(6000))).toBeLessThan(within_s);
    // Nine tenths of the way from 3,000 m to 2,950 m.
    expect(Math.abs(found.full_s! - timeAt(2962))).toBeLessThan(within_s);
    expect(Math.abs(found.reached_m2_kg / filled - 1)).toBeLessThan(share);
  });

  test('need neither mass nor throttle nor vertical speed', async () => {
    const flight = await flightOf(onlyColumns(text, ['Time (s)', 'Altitude (m)', 'Speed (m/s)']), card);
    const found = findParachutes(flight, comingDownIndex(flight))!;
    expect(Math.abs(found.open_s - timeAt(6000))).toBeLessThan(4);
    expect(Math.abs(found.reached_m2_kg / filled - 1)).toBeLessThan(0.1);
  });
});

test('a flight that does not come down has none, nor has one that falls bare', async () => {
  const up = await flightOf(cutLog('osselby-nominal'), readCardText('osselby-nominal'));
  expect(findParachutes(up, comingDownIndex(up))).toBeNull();
  const bare = await flightOf(
    sampleText('bobstay-teasel-2.csv'),
    sampleText('bobstay-teasel-2.mission.json'),
  );
  expect(findParachutes(bare, comingDownIndex(bare))).toBeNull();
});
