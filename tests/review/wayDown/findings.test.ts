import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';

/** A capsule of 1,000 kg over a world of Earth's size that does not turn, with its canopies. */
const air = { density_kg_m3: 1.225, scaleHeight_m: 8000 };
const place = { mu_m3_s2: 3.986004418e14, radius_m: 6_378_137 };
const mass_kg = 1000;
const bare_m2 = 1;
/** The canopies' area grows with the square of time to all of it, s. */
const filling_s = 3;

interface Fall {
  /** Speed at 8 km, m/s. */
  readonly speed_m_s: number;
  /** Where the canopies open, m. */
  readonly open_m: number;
  /** Of all canopies, Cd·A, m². */
  readonly canopy_m2: number;
  /** The card's, 0 for none; the same where not told. */
  readonly cardCanopy_m2?: number;
  readonly limit_m_s2?: number;
}

/** Rows of a body that falls straight down from 8 km, dv/dt = ρ·v²·CdA/2m − μ/r², by Runge and Kutta's fourth order. */
function fallingRows(speed_m_s: number, open_m: number, canopy_m2: number): string[] {
  const rows: string[] = ['time_s,altitude_m,speed_m_s,vertical_speed_m_s'];
  const put = (t: number, h: number, v: number) =>
    rows.push([t.toFixed(2), h.toFixed(2), (-v).toFixed(3), v.toFixed(3)].join(','));
  const dt = 0.01;
  let [h, v, opened] = [8000, -speed_m_s, Number.POSITIVE_INFINITY];
  const rate = (t: number, height: number, rise: number) => {
    const share = Math.max(0, Math.min(1, (t - opened) / filling_s)) ** 2;
    const density = air.density_kg_m3 * Math.exp(-height / air.scaleHeight_m);
    const drag = (density * rise ** 2 * (bare_m2 + canopy_m2 * share)) / 2 / mass_kg;
    return drag - place.mu_m3_s2 / (place.radius_m + height) ** 2;
  };
  let step = 0;
  for (; h > 0; step++) {
    const t = step * dt;
    if (h < open_m) opened = Math.min(opened, t);
    if (step % 10 === 0) put(t, h, v);
    const a1 = rate(t, h, v);
    const v2 = v + (a1 * dt) / 2;
    const a2 = rate(t + dt / 2, h + (v * dt) / 2, v2);
    const v3 = v + (a2 * dt) / 2;
    const a3 = rate(t + dt / 2, h + (v2 * dt) / 2, v3);
    const v4 = v + a3 * dt;
    const a4 = rate(t + dt, h + v3 * dt, v4);
    h += (dt * (v + 2 * v2 + 2 * v3 + v4)) / 6;
    v += (dt * (a1 + 2 * a2 + 2 * a3 + a4)) / 6;
  }
  const rest = Math.ceil(step / 10);
  for (let k = 0; k < 100; k++) put((rest + k) / 10, 0, 0);
  return rows;
}

/** What the review finds of a body let fall straight down, braked by its own area and then by canopies. */
async function reviewOf({ speed_m_s, open_m, canopy_m2, cardCanopy_m2, limit_m_s2 }: Fall) {
  const rows = fallingRows(speed_m_s, open_m, canopy_m2);
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
      parachutes:
        cardCanopy_m2 === 0 ? [] : [{ dragArea_m2: cardCanopy_m2 ?? canopy_m2, openAltitude_m: 3000 }],
    },
  };
  const { review } = await reviewFlight({
    log: { name: 'fall.csv', bytes: new TextEncoder().encode(rows.join('\n')) },
    card: { name: 'card', text: JSON.stringify(card) },
  });
  return review;
}

async function codesOf(flown: Fall): Promise<string[]> {
  return (await reviewOf(flown)).findings.map((f) => f.code);
}

/** Slow at 8 km, canopies at 3 km as the card has it, 6.5 m/s at the ground. */
const sound: Fall = { speed_m_s: 120, open_m: 3000, canopy_m2: 380 };

test('Allen and Eggers’ peak is for bodies that come from above the air, not for this fall from 8 km', async () => {
  const { entry } = (await reviewOf(sound)).return;
  expect(entry!.peakDynamicPressure_Pa.figure.value!).toBeGreaterThan(0);
  expect(entry!.allenEggers_m_s2).toMatchObject({ value: null, reason: 'the fall began within the air' });
}, 30_000);

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
    ['two fifths of the canopy', { ...sound, canopy_m2: 152, cardCanopy_m2: 380 }, 'parachute-not-full'],
  ] as const)(
    '%s',
    async (_, fault, code) => {
      expect(await codesOf(fault)).toEqual([code]);
    },
    30_000,
  );
});

describe('whether the parachutes fill', () => {
  const reached = async (canopy_m2: number, cardCanopy_m2: number) => {
    const { parachute } = (await reviewOf({ ...sound, canopy_m2, cardCanopy_m2 })).return;
    return { ...parachute!, share: parachute!.dragArea_m2.value! / (1 + canopy_m2) };
  };

  test('is the drag area flown against the card’s', async () => {
    const full = await reached(380, 380);
    expect(full.inflation).toBe('full');
    expect(full.full_s! - full.open_s).toBeGreaterThan(1);
    // Nine tenths of the area, which grows with the square of time over three seconds.
    expect(full.full_s! - full.open_s).toBeLessThan(3.3);
    const part = await reached(152, 380);
    expect(part).toMatchObject({ inflation: 'partial', full_s: null });
    expect(part.fullAltitude_m.reason).toContain('never');
    // Deceleration over dynamic pressure gives back the area flown: measured to 4e-5.
    for (const { share } of [full, part]) expect(Math.abs(share - 1)).toBeLessThan(2e-4);
  }, 30_000);

  test('allows for a canopy that brakes a little less than its card', async () => {
    expect((await reached(320, 380)).inflation).toBe('full');
    expect((await reached(260, 380)).inflation).toBe('partial');
  }, 30_000);

  test('cannot be told without a drag area in the card', async () => {
    const { return: way, findings, events } = await reviewOf({ ...sound, canopy_m2: 152, cardCanopy_m2: 0 });
    expect(way.parachute).toMatchObject({ inflation: 'untold', full_s: null });
    expect(way.parachute!.fullAltitude_m.reason).toContain('cannot be told');
    expect(findings.map((f) => f.code)).toEqual([]);
    expect(events.map((e) => e.name)).not.toContain('parachute-full');
  }, 30_000);

  test('even of one that comes out in the last quarter of the fall', async () => {
    const late = await reviewOf({ ...sound, open_m: 230 });
    expect(late.return.touchdown_s! - late.return.parachute!.open_s).toBeLessThan(
      0.25 * late.return.touchdown_s!,
    );
    expect(late.return.parachute!.inflation).toBe('full');
    expect(late.findings.map((f) => f.code)).toEqual(['parachute-low']);
  }, 30_000);
});
