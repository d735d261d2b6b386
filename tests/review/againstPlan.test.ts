import { beforeAll, describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { AgainstPlan, Analysis } from '../../src/review/types.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

function review(name: ReferenceName, plan: ReferenceName): Promise<Analysis> {
  const bytes = (of: ReferenceName) => new TextEncoder().encode(cutLog(of));
  return reviewFlight({
    log: { name: `${name}.csv`, bytes: bytes(name) },
    card: { name: 'card', text: readCardText(name) },
    plan: { name: `${plan}.csv`, bytes: bytes(plan) },
  });
}

describe('earth-lofted against earth-nominal', () => {
  let analysis: Analysis;
  let against: AgainstPlan;
  beforeAll(async () => {
    analysis = await review('earth-lofted', 'earth-nominal');
    against = analysis.review.againstPlan!;
  }, 60_000);

  test('events are flown less planned', () => {
    const cutoff = against.events.findLast((e) => e.name === 'cutoff')!;
    // Truths: 547.8258 and 502.2073 s.
    expect(cutoff.time_s.difference!).toBeCloseTo(45.6185, 2);
    // 16,500 kg are the empty upper stage with its payload; the plan had 12,431.5 kg left.
    expect(cutoff.propellant_kg.flown!).toBeCloseTo(0, 0);
    expect(cutoff.propellant_kg.planned!).toBeCloseTo(12_431.5, 0);
    for (const e of against.events)
      if (e.time_s.difference !== null)
        expect(e.time_s.difference).toBeCloseTo(e.time_s.flown! - e.time_s.planned!, 9);
    const event = analysis.review.events.findLast((e) => e.name === 'cutoff')!;
    expect(event.planned_s!).toBeCloseTo(502.2073, 2);
  });

  test('the states at the cutoffs', () => {
    expect(against.cutoffs.map((c) => c.subject)).toEqual(['booster', 'upper']);
    const { states } = against.cutoffs[1]!;
    expect(states.speed_m_s.planned!).toBeCloseTo(7361.37, 1);
    expect(states.speed_m_s.flown!).toBeCloseTo(6458.22, 1);
  });

  test('deviations lie on the axis where they say most', () => {
    const pitch = against.deviations.find((d) => d.quantity === 'pitch_deg')!;
    expect(pitch.axis).toBe('altitude_m');
    const k = pitch.at.findIndex((h) => h > 30_000);
    expect(pitch.flown[k]! - pitch.planned[k]!).toBeGreaterThan(40);
    expect(against.deviations.map((d) => d.quantity)).toEqual([
      'pitch_deg',
      'throttle',
      'thrustToWeight',
      'dynamicPressure_Pa',
    ]);
  });

  test('margin against delta-v spent: alike on the pad, apart after', () => {
    const { spent, planned, flown } = against.margin;
    expect(flown[0]!).toBeCloseTo(planned[0]!, 0);
    const k = spent.findIndex((s) => s > 4200);
    expect(planned[k]! - flown[k]!).toBeGreaterThan(2000);
    expect(planned.at(-1)).toBeNull();
  });

  test('the contributions make up what was avoidable', () => {
    const sum = against.contributions.reduce((s, c) => s + c.deltaV_m_s.value!, 0);
    expect(Math.abs(sum - against.avoidable.deltaV_m_s.value!)).toBeLessThan(1e-6);
    expect(against.contributions[0]!.group).toBe('pitch');
  });

  test('the dearest finding is the late and steep pitch program', () => {
    const [first] = analysis.review.findings;
    expect(first!.code).toBe('pitch-over-late');
    expect(first!.text).toMatch(/late and flown up to \d+° too steep/);
    expect(first!.cost_m_s.value!).toBeGreaterThan(0.7 * against.avoidable.deltaV_m_s.value!);
  });

  test('the plan has strips of its own', () => {
    const pitch = analysis.planStrips!.channels.pitch_deg!;
    expect(pitch.values.length).toBe(analysis.planStrips!.time_s.length);
  });
});

test('a flight against itself', async () => {
  const { review: own } = await review('osselby-nominal', 'osselby-nominal');
  expect(Math.abs(own.againstPlan!.avoidable.deltaV_m_s.value!)).toBeLessThan(0.2);
  expect(own.findings).toEqual([]);
});
