import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

/** A reference flight's six channels between two times. */
function between(name: ReferenceName, from_s: number, to_s: number): string {
  const [header, ...rows] = cutLog(name).split('\n');
  return [header, ...rows.filter((r) => Number.parseFloat(r) >= from_s && Number.parseFloat(r) <= to_s)].join(
    '\n',
  );
}

async function verdictOf(log: string, card: string) {
  const { review } = await reviewFlight({
    log: { name: 'flight.csv', bytes: new TextEncoder().encode(log) },
    card: { name: 'flight.mission.json', text: card },
  });
  return review.verdict;
}

function cardWith(name: ReferenceName, change: (card: Record<string, unknown>) => void): string {
  const card = JSON.parse(readCardText(name));
  change(card);
  return JSON.stringify(card);
}

describe('each verdict on a flight that earns it', () => {
  test('started in orbit: the log begins after the cutoff that reached it', async () => {
    const verdict = await verdictOf(between('osselby-nominal', 417, 1e9), readCardText('osselby-nominal'));
    expect(verdict.code).toBe('started-in-orbit');
    expect(verdict.text).toMatch(/begins in orbit/u);
  });

  test('lost in flight: the log ends under thrust', async () => {
    const verdict = await verdictOf(between('osselby-nominal', 0, 300), readCardText('osselby-nominal'));
    expect(verdict.code).toBe('suborbital-lost-in-flight');
    expect(verdict.text).toMatch(/300 s/u);
  });

  test('stage not lit: the log ends in the coast after the first stage ran dry', async () => {
    const folder = new URL('../../sample-logs/', import.meta.url);
    const read = (file: string) => readFileSync(new URL(file, folder), 'utf8');
    const verdict = await verdictOf(read('bobstay-teasel-2.csv'), read('bobstay-teasel-2.mission.json'));
    expect(verdict.code).toBe('suborbital-stage-not-lit');
    expect(verdict.text).toContain('upper');
  });

  test('orbit off target: the same orbit with a higher target', async () => {
    const card = cardWith('osselby-nominal', (c) => {
      c.target = { apoapsisAltitude_m: 300000, periapsisAltitude_m: 300000, tolerance_m: 5000 };
    });
    const verdict = await verdictOf(cutLog('osselby-nominal'), card);
    expect(verdict.code).toBe('orbit-off-target');
    expect(verdict.text).toMatch(/too low/u);
  });

  test('suborbital as planned: the peak was the target', async () => {
    const card = cardWith('osselby-short', (c) => {
      c.target = { kind: 'suborbital', peakAltitude_m: 180000, tolerance_m: 10000 };
    });
    const verdict = await verdictOf(cutLog('osselby-short'), card);
    expect(verdict.code).toBe('suborbital-as-planned');
  });

  test('escape: enough for the C3 asked', async () => {
    // With two fifths of the world's pull the final speed of a circular orbit is above escape: C3 4.2 km²/s².
    const card = cardWith('osselby-nominal', (c) => {
      const world = c.world as { gravitationalParameter_m3_s2: number };
      world.gravitationalParameter_m3_s2 *= 0.4;
      c.target = { kind: 'escape', c3_m2_s2: 1e6 };
    });
    expect((await verdictOf(cutLog('osselby-nominal'), card)).code).toBe('escape');
  });

  test('orbit decaying: periapsis between ground and floor, tanks dry', async () => {
    // The early-cutoff flight's last orbit with the floor raised above it, and nothing left aboard by the card.
    const card = cardWith('osselby-nominal', (c) => {
      const world = c.world as Record<string, unknown>;
      world.orbitFloor_m = 170000;
      const vehicle = c.vehicle as { payload_kg: number; stages: { propellantMass_kg: number }[] };
      vehicle.payload_kg += 2068.4;
      vehicle.stages[1]!.propellantMass_kg -= 2068.4;
      c.target = { apoapsisAltitude_m: 200000, periapsisAltitude_m: 200000 };
    });
    const verdict = await verdictOf(cutLog('osselby-nominal'), card);
    expect(verdict.code).toBe('orbit-decaying');
    expect(verdict.text).toMatch(/decays/u);
  });

  test('undetermined: without mass and vehicle a flight short of orbit keeps its question', async () => {
    const { vehicle: _, ...bare } = JSON.parse(readCardText('osselby-short'));
    const log = cutLog('osselby-short', ['time_s', 'altitude_m', 'speed_m_s']);
    const verdict = await verdictOf(log, JSON.stringify(bare));
    expect(verdict.code).toBe('undetermined');
    expect(verdict.text).toMatch(/361 m\/s|36\d m\/s/u);
  });
});

test('a log in which nothing moves is read but gives nothing: exit 4', async () => {
  const rows = Array.from({ length: 50 }, (_, i) => `${i},0,0`);
  const log = `time_s,altitude_m,speed_m_s\n${rows.join('\n')}`;
  const failed = await reviewFlight({
    log: { name: 'still.csv', bytes: new TextEncoder().encode(log) },
  }).catch((e: unknown) => e);
  expect(failed).toBeInstanceOf(LossbookError);
  expect((failed as LossbookError).code).toBe('no-flight');
  expect((failed as LossbookError).exit).toBe(4);
});

describe('what the verdict says of a goal that was not reached', () => {
  test('a height that was wanted is not called orbit', async () => {
    const card = cardWith('osselby-short', (c) => {
      c.target = { kind: 'suborbital', peakAltitude_m: 2500000, tolerance_m: 10000 };
    });
    const { text } = await verdictOf(cutLog('osselby-short'), card);
    expect(text).toMatch(/^Peak \d+ km, .* The height wanted was out of reach from \d+ s at the latest\.$/u);
    expect(text).not.toMatch(/orbit/iu);
  });

  test('a rocket that never had enough is told so, with what was aboard and the least that was needed', async () => {
    const altitude_m = 20_000_000;
    const card = cardWith('osselby-short', (c) => {
      c.target = { apoapsisAltitude_m: altitude_m, periapsisAltitude_m: altitude_m };
    });
    const verdict = await verdictOf(cutLog('osselby-short'), card);
    // Hohmann (1925) from the turning ground, by hand: the first impulse less what the ground gives.
    const { world, site } = JSON.parse(card);
    const mu = world.gravitationalParameter_m3_s2;
    const low = world.radius_m + (site.altitude_m ?? 0);
    const high = world.radius_m + altitude_m;
    const given =
      ((2 * Math.PI) / world.rotationPeriod_s) * low * Math.cos((site.latitude_deg * Math.PI) / 180);
    const first = Math.sqrt(mu * (2 / low - 2 / (low + high)));
    const second = Math.sqrt(mu / high) - Math.sqrt(mu * (2 / high - 2 / (low + high)));
    const told =
      /Orbit was out of reach from the start: ([\d,]+) m\/s were aboard at lift-off, with ([\d,]+)/u;
    const [, aboard, least] = (told.exec(verdict.text) ?? []).map((s) => Number(s.replace(/,/g, '')));
    expect(Math.abs(least! - (first - given + second))).toBeLessThan(2);
    expect(verdict.detail).toContain(`${(least! - aboard!).toLocaleString('en')} m/s too little at lift-off`);
  });

  test('without air an orbit under the floor does not decay', async () => {
    const folder = new URL('../../sample-logs/', import.meta.url);
    const read = (file: string) => readFileSync(new URL(file, folder), 'utf8');
    const { vehicle: _, ...card } = JSON.parse(read('thimble-teasel-1.mission.json'));
    card.world.orbitFloor_m = 40000;
    const verdict = await verdictOf(read('thimble-teasel-1.csv'), JSON.stringify(card));
    expect(verdict.code).toBe('orbit-decaying');
    expect(verdict.text).toBe('In orbit, but too low: periapsis 30 km is under the floor of Threnby, 40 km.');
  });
});

test('heights under a kilometre are told in metres', async () => {
  // A hop of 156 m: v = 35 m/s at 93.8 m, then free: 93.8 + 35²/(2·9.8).
  const rows = ['time_s,altitude_m,speed_m_s'];
  const [a, g, burn_s] = [6.53, 9.8, 5.36];
  for (let t = 0; t <= 14; t += 0.05) {
    const up = Math.min(t, burn_s);
    const free = Math.max(0, t - burn_s);
    const v = a * up - g * free;
    const h = (a * up ** 2) / 2 + a * up * free - (g * free ** 2) / 2;
    if (h >= 0) rows.push([t, h, Math.abs(v)].map((x) => x.toFixed(3)).join(','));
  }
  const card = {
    world: 'earth',
    target: { kind: 'suborbital', peakAltitude_m: 300, tolerance_m: 20 },
  };
  const { text } = await verdictOf(rows.join('\n'), JSON.stringify(card));
  expect(text).toMatch(/^Peak 156 m, 144 m under the 300 m wanted/u);
});
