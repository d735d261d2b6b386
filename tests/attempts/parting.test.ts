import { expect, test } from 'vitest';
import { partingOf } from '../../src/attempts/parting.ts';
import { invented } from './inventedAttempts.ts';

const reference = invented({ name: 'best' });

/** Dearer by `cost` along a ramp between two amounts of delta-v spent. */
const ramp = (from: number, to: number, cost: number) => (s: number) =>
  4000 + 0.3 * s + cost * Math.min(1, Math.max(0, (s - from) / (to - from)));

test('finds the stretch and its cost', () => {
  const parting = partingOf(invented({ name: 'worse', total: ramp(1000, 2000, 80) }), reference)!;
  // Intervals of ±1 m/s each: told from √2 or, at the least, 2 m/s: a 40th of the ramp.
  expect(Math.abs(parting.fromSpent_m_s - 1025)).toBeLessThan(30);
  // Nine tenths of the ramp.
  expect(Math.abs(parting.toSpent_m_s - 1900)).toBeLessThan(30);
  expect(Math.abs(parting.cost_m_s.value! - 72)).toBeLessThan(3);
  expect(parting.after).toBe('pitch-over');
  expect(parting.text).toContain('dearer than best, after pitch-over');
  expect(parting.cost_m_s.high! - parting.cost_m_s.value!).toBeCloseTo(Math.SQRT2, 9);
});

test('says cheaper where it is', () => {
  const parting = partingOf(invented({ name: 'better', total: ramp(500, 900, -40) }), reference)!;
  expect(parting.cost_m_s.value!).toBeLessThan(-30);
  expect(parting.text).toContain('cheaper');
});

test('what the intervals allow is no parting', () => {
  const noisy = invented({ name: 'noisy', total: ramp(1000, 2000, 20), half: 25 });
  expect(partingOf(noisy, reference)).toBeNull();
  expect(partingOf(reference, reference)).toBeNull();
});

test('a bump that does not last is none, nor is an offset from the start', () => {
  const bump = invented({ name: 'bump', total: (s) => 4000 + 0.3 * s + (s === 2000 ? 50 : 0) });
  expect(partingOf(bump, reference)).toBeNull();
  expect(partingOf(invented({ name: 'heavier', total: (s) => 4300 + 0.3 * s }), reference)).toBeNull();
});

test('without curves there is nothing to part', () => {
  const bare = invented({ name: 'bare' });
  const none = { ...bare, curve: { spent_m_s: [], time_s: [], total_m_s: [], margin_m_s: [] } };
  expect(partingOf(none, reference)).toBeNull();
});
