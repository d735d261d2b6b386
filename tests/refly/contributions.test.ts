import { describe, expect, test } from 'vitest';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { readPlan } from '../../src/plan/readPlan.ts';
import { contributions } from '../../src/refly/contributions.ts';
import { booked, flyPlan } from '../../src/refly/flyPlan.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

async function compare(name: ReferenceName, planName: ReferenceName) {
  const mission = readMission({ card: { name, text: readCardText(name) } });
  const flown = booked(await readLog(new TextEncoder().encode(cutLog(name)), { name }), mission);
  const plan = flyPlan(await readPlan(cutLog(planName), planName, mission), mission, null);
  const total = ({ spent, toGo, atEnd }: typeof flown.budget) => spent![atEnd]! + toGo![atEnd]!;
  const [was, planned] = [total(flown.budget), total(plan.budget)];
  const found = contributions(
    mission,
    flown.flight,
    was,
    plan.flight,
    planned,
    planName !== 'osselby-nominal',
  );
  const part = (group: string) => found!.parts.find((p) => p.group === group)?.deltaV_m_s ?? 0;
  return { found: found!, difference: was - planned, part };
}

describe('earth-lofted against earth-nominal', () => {
  test('the contributions add up to the difference of the projected totals, and the pitch program leads', async () => {
    const { found, difference, part } = await compare('earth-lofted', 'earth-nominal');
    const sum = found.parts.reduce((s, p) => s + p.deltaV_m_s, 0);
    expect(Math.abs(sum - difference)).toBeLessThan(1e-6);
    // The truth's own difference: 11861.209 − 8959.432 m/s.
    expect(Math.abs(difference - 2901.78)).toBeLessThan(0.5);
    // Measured: 0.01 m/s between the flight flown again and its log.
    expect(Math.abs(part('model'))).toBeLessThan(0.2);
    expect(part('pitch')).toBeGreaterThan(0.7 * difference);
    expect(part('throttle')).toBe(0);
    expect(part('timing')).toBe(0);
  });
});

test('osselby-throttled against osselby-nominal: pitch and throttle are told apart', async () => {
  const { found, difference, part } = await compare('osselby-throttled', 'osselby-nominal');
  expect(found.parts.reduce((s, p) => s + p.deltaV_m_s, 0)).toBeCloseTo(difference, 6);
  expect(found.parts.map((p) => p.group)).toContain('throttle');
  expect(Math.abs(part('model'))).toBeLessThan(0.2);
});

test('a flight against itself has nothing to contribute', async () => {
  const { found } = await compare('earth-nominal', 'earth-nominal');
  for (const p of found.parts) expect(Math.abs(p.deltaV_m_s), p.group).toBeLessThan(0.2);
});
