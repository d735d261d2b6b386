import { expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

/** Review of a reference flight whose card was edited. */
async function reviewed(
  edit: (card: { world: { rotationPeriod_s: number }; site: { launchAzimuth_deg: number } }) => void,
) {
  const card = JSON.parse(readCardText('osselby-short'));
  edit(card);
  const { review } = await reviewFlight({
    log: { name: 'x.csv', bytes: new TextEncoder().encode(cutLog('osselby-short')) },
    card: { name: 'card', text: JSON.stringify(card) },
  });
  return review;
}

/** Numbers to six decimals: the mirror's last digits are rounding. */
function toMicro(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value, (_, x) => (typeof x === 'number' ? Math.round(x * 1e6) / 1e6 : x)));
}

test('in the mirror, flown to the west on a world that turns westward, everything is the same', async () => {
  const east = await reviewed(() => undefined);
  const west = await reviewed(({ world, site }) => {
    world.rotationPeriod_s = -world.rotationPeriod_s;
    site.launchAzimuth_deg = 360 - site.launchAzimuth_deg;
  });
  const { inclination_deg: i, ...shape } = west.orbit.atCutoff;
  const { inclination_deg: j, ...eastShape } = east.orbit.atCutoff;
  expect(180 - i.value!).toBeCloseTo(j.value!, 9);
  expect(toMicro(shape)).toEqual(toMicro(eastShape));
  expect(toMicro(west.budget)).toEqual(toMicro(east.budget));
  expect(toMicro(west.ledger)).toEqual(toMicro(east.ledger));
  expect(west.verdict).toEqual(east.verdict);
  expect(west.findings.map((f) => f.code)).toEqual(east.findings.map((f) => f.code));
});

test('against the spin of a world that turns westward the rotation is not used', async () => {
  const { findings } = await reviewed(({ world }) => {
    world.rotationPeriod_s = -world.rotationPeriod_s;
  });
  const found = findings.find((f) => f.code === 'rotation-not-used')!;
  // ω·R·cos 5° = 373.2 m/s against a little less that had to be overcome.
  expect(Math.abs(found.cost_m_s.value! / (2 * 373.2) - 1)).toBeLessThan(0.01);
  expect(found.advice).toContain('toward the west');
  expect(found.text).toMatch(/it took \d+ m\/s where a launch westward gains \d+\.$/u);
});
