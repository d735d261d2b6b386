import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import { fall } from '../../fallingBodies.ts';

/** A capsule of 1,000 kg over a world of Earth's size that does not turn, with its canopies. */
const air = { density_kg_m3: 1.225, scaleHeight_m: 8000 };
const place = { mu_m3_s2: 3.986004418e14, radius_m: 6_378_137 };
const mass_kg = 1000;

interface Fall {
  /** Speed at 8 km, m/s. */
  readonly speed_m_s: number;
  /** Where the canopies open, m. */
  readonly open_m: number;
  /** Of all canopies, Cd·A, m². */
  readonly canopy_m2: number;
  readonly limit_m_s2?: number;
}

/** What the review finds of a body let fall straight down, braked by its own area and then by canopies. */
async function codesOf({ speed_m_s, open_m, canopy_m2, limit_m_s2 }: Fall): Promise<string[]> {
  const bare_m2 = 1;
  const base = { ...place, ...air, angle_rad: -Math.PI / 2, shape: 'sphere' as const, period_s: 0.1 };
  const free = fall({ ...base, ballisticCoefficient_kg_m2: mass_kg / bare_m2, altitude_m: 8000, speed_m_s });
  const end = free.altitude_m.findIndex((h) => h < open_m);
  const rows: string[] = ['time_s,altitude_m,speed_m_s,vertical_speed_m_s'];
  const put = (t: number, h: number, v: number) =>
    rows.push([t.toFixed(2), h.toFixed(2), v.toFixed(3), (-v).toFixed(3)].join(','));
  for (let i = 0; i < end; i++) put(free.time_s[i]!, free.altitude_m[i]!, free.speed_m_s[i]!);
  // The canopies fill in three seconds: fifteen falls of two samples each, then the rest of the way.
  let state = { t: free.time_s[end]!, h: free.altitude_m[end]!, v: free.speed_m_s[end]! };
  const steps = 15;
  for (let k = 1; k <= steps; k++) {
    const area_m2 = bare_m2 + canopy_m2 * (k / steps) ** 2;
    const under = fall({
      ...base,
      ballisticCoefficient_kg_m2: mass_kg / area_m2,
      altitude_m: state.h,
      speed_m_s: state.v,
    });
    const rowsHere = k === steps ? under.time_s.length - 1 : 2;
    const start = state.t;
    for (let i = 0; i < rowsHere && under.altitude_m[i]! >= 0; i++)
      put(start + under.time_s[i]!, under.altitude_m[i]!, under.speed_m_s[i]!);
    state = {
      t: start + under.time_s[rowsHere]!,
      h: under.altitude_m[rowsHere]!,
      v: under.speed_m_s[rowsHere]!,
    };
  }
  for (let k = 1; k <= 100; k++) put(state.t + 0.1 * k, 0, 0);
  const card = {
    world: {
      name: 'Osselby',
      gravitationalParameter_m3_s2: place.mu_m3_s2,
      radius_m: place.radius_m,
      rotationPeriod_s: 1e9,
      orbitFloor_m: 100_000,
      atmosphere: {
        model: 'exponential',
        surfacePressure_Pa: 100_000,
        surfaceDensity_kg_m3: air.density_kg_m3,
        scaleHeight_m: air.scaleHeight_m,
        top_m: 100_000,
        heatCapacityRatio: 1.4,
      },
    },
    target: { kind: 'suborbital', peakAltitude_m: 9000 },
    ...(limit_m_s2 === undefined ? {} : { limits: { acceleration_m_s2: limit_m_s2 } }),
    return: {
      mass_kg,
      referenceArea_m2: bare_m2,
      dragCoefficient: 1,
      parachutes: [{ count: 1, dragArea_m2: canopy_m2, openAltitude_m: 3000, fullAltitude_m: 2900 }],
    },
  };
  const { review } = await reviewFlight({
    log: { name: 'fall.csv', bytes: new TextEncoder().encode(rows.join('\n')) },
    card: { name: 'card', text: JSON.stringify(card) },
  });
  return review.findings.map((f) => f.code);
}

/** Slow at 8 km, canopies at 3 km as the card has it, 6.5 m/s at the ground. */
const sound: Fall = { speed_m_s: 120, open_m: 3000, canopy_m2: 380 };

test('a sound way down has no findings', async () => {
  expect(await codesOf(sound)).toEqual([]);
  expect(await codesOf({ ...sound, limit_m_s2: 18 })).toEqual([]);
}, 30_000);

describe('one fault, one finding', () => {
  test.each([
    ['too steep for the card’s limit', { ...sound, speed_m_s: 350, limit_m_s2: 18 }, 'entry-too-steep'],
    ['opened too low', { ...sound, open_m: 1500 }, 'parachute-low'],
    ['opened too fast', { ...sound, speed_m_s: 320, open_m: 7000 }, 'parachute-fast'],
    ['touchdown hard', { ...sound, canopy_m2: 70 }, 'touchdown-hard'],
  ] as const)(
    '%s',
    async (_, fault, code) => {
      expect(await codesOf(fault)).toEqual([code]);
    },
    30_000,
  );
});
