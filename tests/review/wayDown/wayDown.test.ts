import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import { cutLog, readCardText } from '../../referenceFlights.ts';
import { onlyColumns, sampleText, shaken } from '../../wayDownFlights.ts';

function review(text: string, card?: string) {
  return reviewFlight({
    log: { name: 'test.csv', bytes: new TextEncoder().encode(text) },
    ...(card === undefined ? {} : { card: { name: 'card', text: card } }),
  });
}

const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');

describe('the homeward sample', async () => {
  const { review: r } = await review(text, card);
  const way = r.return;

  test('comes down whole', () => {
    expect(way.code).toBe('landed');
    expect(Math.abs(way.touchdownSpeed_m_s.value! - 7)).toBeLessThan(0.1);
    expect(r.phases.map((p) => p.name)).toEqual(
      expect.arrayContaining(['orbit', 'deorbit', 'entry', 'parachute', 'landed']),
    );
    expect(r.phases.filter((p) => p.name === 'deorbit').length).toBe(1);
    expect(r.events.map((e) => e.name)).toEqual(
      expect.arrayContaining(['air-entry', 'parachute-open', 'parachute-full', 'touchdown']),
    );
  });

  test('deorbit: periapsis ends at the 22 km flown to', () => {
    const { deorbit } = way;
    expect(Math.abs(deorbit!.periapsisAfter_m.value! - 22_000)).toBeLessThan(50);
    expect(deorbit!.optimum_m_s.value!).toBeLessThan(deorbit!.deltaV_m_s.value!);
  });

  test('impact: predicted from the coast to within its interval, 0.2 s and 1 km', () => {
    const impact = way.impact!;
    expect(impact.until).toBe('parachute-open');
    expect(impact.drag).toBe('identified');
    expect(Math.abs(impact.missTime_s.value!)).toBeLessThan(0.2);
    expect(impact.missDistance_m.value!).toBeLessThan(1000);
    expect(impact.missDistance_m.low!).toBe(0);
    expect(impact.missTime_s.low!).toBeLessThan(0.1);
    expect(impact.missTime_s.high!).toBeGreaterThan(-0.1);
  });

  test('entry: the capsule’s ballistic coefficient, and heating without a figure but with a time', () => {
    const entry = way.entry!;
    expect(Math.abs(entry.ballisticCoefficient_kg_m2.value! / 245.161 - 1)).toBeLessThan(1e-3);
    expect(entry.cardBallisticCoefficient_kg_m2).toBeCloseTo(245.161, 2);
    // q = β·a at every instant of a bare fall.
    const [a, q] = [entry.peakDeceleration_m_s2, entry.peakDynamicPressure_Pa];
    expect(q.figure.value! / (245.161 * a.figure.value!)).toBeCloseTo(1, 2);
    expect(entry.peakHeatFlux_W_m2.figure.basis).toBe('unavailable');
    expect(entry.peakHeatFlux_W_m2.figure.reason).toContain('gas');
    // The peak of heating comes before that of deceleration (V³ against V²).
    expect(entry.peakHeatFlux_W_m2.time_s).toBeLessThan(a.time_s);
    expect(entry.allenEggers_m_s2.basis).toBe('unavailable');
  });

  test('parachutes and descent: areas and rate as the card has them', () => {
    expect(Math.abs(way.parachute!.dragArea_m2.value! / 547.75 - 1)).toBeLessThan(0.01);
    expect(way.descent!.rate_m_s.value! / way.descent!.expected_m_s.value!).toBeCloseTo(1, 1);
    expect(way.poweredLanding).toBeNull();
  });

  test('orbit work: four burns, the early one at fault', () => {
    expect(r.orbitWork.burns.map((b) => b.kind)).toEqual(['raise', 'circularise', 'plane-change', 'deorbit']);
    const early = r.orbitWork.burns[1]!;
    expect(early.bestAt).toBe('apoapsis');
    expect(early.placeLoss_m_s.value!).toBeGreaterThan(5);
    expect(r.orbitWork.burns[0]!.efficiency.value!).toBeGreaterThan(0.99);
    expect(r.orbitWork.burns[2]!.planeChange_deg.value!).toBeCloseTo(0.53, 2);
    expect(r.orbitWork.history.length).toBe(5);
    expect(r.findings.map((f) => f.code)).toEqual(['orbit-burn-place', 'deorbit-place']);
    expect(r.budget.lostAt_s).toBeNull();
  });
});

test('with noise the way down is still told', async () => {
  const noisy = shaken(text, { 'Speed (m/s)': 0.3, 'Vertical speed (m/s)': 0.3, 'Altitude (m)': 5 }, 11);
  const { review: r } = await review(noisy, card);
  expect(r.return.code).toBe('landed');
  const miss = r.return.impact!.missTime_s;
  expect(miss.low!).toBeLessThan(0);
  expect(miss.high!).toBeGreaterThan(0);
  const beta = r.return.entry!.ballisticCoefficient_kg_m2;
  expect(Math.abs(beta.value! / 245.161 - 1)).toBeLessThan(0.03);
});

test('on Earth with a nose radius the heat flux is a figure', async () => {
  const onEarth = JSON.parse(card) as Record<string, unknown>;
  onEarth.world = { ...(onEarth.world as object), atmosphere: { model: 'us-standard-1976' } };
  const { review: r } = await review(text, JSON.stringify(onEarth));
  expect(r.return.entry!.heatingConstant).toBe(1.7415e-4);
  const { figure, altitude_m, speed_m_s } = r.return.entry!.peakHeatFlux_W_m2;
  // Standard air at that altitude, within its scale of a tenth.
  expect(figure.value!).toBeGreaterThan(
    0.3 * 1.7415e-4 * Math.sqrt((1.225 * Math.exp(-altitude_m / 7000)) / 1.6) * speed_m_s ** 3,
  );
  expect(figure.basis).toBe('derived');
});

test('a flight that stays up has no way down', async () => {
  const { review: r } = await review(cutLog('osselby-nominal'), readCardText('osselby-nominal'));
  expect(r.return).toMatchObject({ code: 'not-flown', impact: null, entry: null, parachute: null });
  expect(r.orbitWork.burns).toEqual([]);
});

test('a fall without parachute is lost, and predicted', async () => {
  const { review: r } = await review(
    sampleText('bobstay-teasel-2.csv'),
    sampleText('bobstay-teasel-2.mission.json'),
  );
  expect(r.return.code).toBe('lost');
  expect(r.return.impact!.until).toBe('end of the log');
  expect(Math.abs(r.return.impact!.missTime_s.value!)).toBeLessThan(5);
});

describe('findings of the way down', () => {
  const withReturn = (change: object, more: object = {}): string => {
    const made = JSON.parse(card) as { return: object };
    return JSON.stringify({ ...made, ...more, return: { ...made.return, ...change } });
  };

  test('too steep for the card’s limit, opened lower than planned', async () => {
    const planned = {
      parachutes: [{ count: 2, dragArea_m2: 270, openAltitude_m: 9000, fullAltitude_m: 3000 }],
    };
    const { review: r } = await review(text, withReturn(planned, { limits: { acceleration_m_s2: 25 } }));
    const codes = r.findings.map((f) => f.code);
    expect(codes).toContain('entry-too-steep');
    expect(codes).toContain('parachute-low');
    for (const f of r.findings) expect(f.advice.length).toBeGreaterThan(20);
  });

  test('comes down faster than the card’s canopies would let it', async () => {
    const big = { parachutes: [{ count: 4, dragArea_m2: 300, openAltitude_m: 6000, fullAltitude_m: 3000 }] };
    const { review: r } = await review(text, withReturn(big));
    const codes = r.findings.map((f) => f.code);
    expect(codes).toContain('parachute-not-full');
    // The same thing is not told twice.
    expect(codes).not.toContain('descent-fast');
    const { review: light } = await review(text, withReturn({ mass_kg: 1200 }));
    expect(light.findings.map((f) => f.code)).toContain('descent-fast');
  });

  test('a log that stops at the ground has landed, hard where it was fast', async () => {
    const rows = onlyColumns(text, ['Time (s)', 'Altitude (m)', 'Speed (m/s)', 'Vertical speed (m/s)'])
      .split('\n')
      .filter((line) => !line.endsWith(',0.00'));
    const { review: r } = await review(rows.join('\n'), card);
    expect(r.return.code).toBe('landed');
    expect(r.return.text).toContain('log ends at the ground');
  });
});
