import { describe, expect, test } from 'vitest';
import { contributions } from '../../src/refly/contributions.ts';
import {
  type FlightScript,
  flightScript,
  scriptedPropellant_kg,
  splitOf,
} from '../../src/refly/flightScript.ts';
import { booked } from '../../src/refly/flyPlan.ts';
import { reflown, reflyWith } from '../../src/refly/reflown.ts';
import { withPayload, withPitchEarlier, withThrottle } from '../../src/refly/scriptEdits.ts';
import { type CleanFlight, changedLog, type StoredName, storedFlight } from '../review/faultyFlights.ts';

const total = ({ spent, toGo, atEnd }: ReturnType<typeof booked>['budget']) => spent![atEnd]! + toGo![atEnd]!;

/** Contributions on rockets with a second burn of the last stage, with boosters and a fairing, with a single stage. */
test.each([
  ['relit', 8, 300],
  ['boosters', 8, 500],
  ['single', 12, 60],
] as const)('%s: two differences add up, and each is told', async (name, late_s, more_kg) => {
  const c = await storedFlight(name);
  const script = withPayload(withPitchEarlier(c.base.script, c.base.last, -late_s), more_kg);
  const was = booked(changedLog(c, script), c.mission);
  const plan = booked(c.log, c.mission);
  const difference = total(was.budget) - total(plan.budget);
  const found = contributions(
    c.mission,
    was.flight,
    total(was.budget),
    plan.flight,
    total(plan.budget),
    true,
  )!;
  const part = (group: string) => found.parts.find((p) => p.group === group)?.deltaV_m_s ?? 0;
  const sum = found.parts.reduce((s, p) => s + p.deltaV_m_s, 0);
  expect(Math.abs(sum - difference)).toBeLessThan(1e-6);
  // The late pitch-over alone, and the load alone, differ a little from their shares of both.
  const alone = reflyWith(c.base, withPitchEarlier(c.base.script, c.base.last, -late_s))!;
  const pitch = alone.total_m_s - c.base.steered.total_m_s;
  expect(pitch).toBeGreaterThan(5);
  expect(Math.abs(part('pitch') / pitch - 1)).toBeLessThan(0.2);
  expect(part('throttle')).toBe(0);
  expect(part('timing')).toBe(0);
  // Flown again from its own script the flight ends as its log: measured within 0.2 m/s.
  expect(Math.abs(part('model'))).toBeLessThan(0.3);
  expect(Math.abs(part('cutoff'))).toBeLessThan(1);
});

test.each(['relit', 'boosters', 'single'] as const)(
  '%s: steered anew it does as well as the best ascent',
  async (name: StoredName) => {
    const { base } = await storedFlight(name);
    // Measured: 1.9 m/s more with the second burn flown out, 0.8 and 0.3 m/s less with the others.
    expect(Math.abs(base.steered.total_m_s - base.flown.end.total_m_s)).toBeLessThan(3);
    expect(base.steered.toGo_m_s).toBeLessThan(0.1);
    expect(base.steered.missing_m_s === null).toBe(name !== 'relit');
  },
);

test('a rocket’s only stage is scripted in two parts that follow each other', async () => {
  const { base, plan, mission, log } = await storedFlight('single');
  const { script } = base;
  expect(script.stages.map((s) => s.stage)).toEqual([0, 0]);
  const [lower, upper] = script.stages;
  const split = splitOf(script)!;
  expect(lower!.burns).toEqual([{ coast_s: 0, left_kg: 500 - split }]);
  expect(upper!.used_kg[0]!).toBeLessThanOrEqual(split);
  expect(scriptedPropellant_kg(script, 1)).toBeCloseTo(500 - upper!.used_kg[0]!, 9);
  expect(plan.axisValues.length).toBeGreaterThan(0);
  // Another flight is split where this one is, or where it is asked to be.
  const { flight } = booked(log, mission);
  expect(splitOf(flightScript(flight, split + 20)!)).toBeCloseTo(split + 20, 9);
  expect(reflown(flight)!.lastStage).toBe(0);
});

/** Every stage after the first lit `later_s` later. */
function withLaterIgnitions(script: FlightScript, later_s: number): FlightScript {
  const stages = script.stages.map((stage, k) => ({
    ...stage,
    burns: stage.burns.map((b, i) => (k > 0 && i === 0 ? { ...b, coast_s: b.coast_s + later_s } : b)),
  }));
  return { ...script, stages };
}

describe.each(['light', 'earth', 'mars'] as const)('%s: a difference of one kind', (name) => {
  const changes: readonly [string, (c: CleanFlight) => FlightScript][] = [
    ['pitch', ({ base }) => withPitchEarlier(base.script, base.last, -6)],
    ['throttle', ({ base }) => withThrottle(base.script, base.last, (set) => 0.9 * set)],
    ['timing', ({ base }) => withLaterIgnitions(base.script, 12)],
    ['vehicle', ({ base }) => withPayload(base.script, 0.1 * base.script.rocket.payload_kg)],
  ];
  test.each(changes)('in %s is told as nothing else', async (group, change) => {
    const c = await storedFlight(name);
    const was = booked(changedLog(c, change(c)), c.mission);
    const plan = booked(changedLog(c, c.base.script), c.mission);
    const difference = total(was.budget) - total(plan.budget);
    const totals = [total(was.budget), total(plan.budget)] as const;
    const found = contributions(c.mission, was.flight, totals[0], plan.flight, totals[1], true)!;
    // Measured: 0.65 m/s at most, the search for the last stage's steering and its later start.
    for (const p of found.parts)
      if (p.group === group) expect(Math.abs(p.deltaV_m_s - difference)).toBeLessThan(1);
      else expect(Math.abs(p.deltaV_m_s), p.group).toBeLessThan(1);
  });
});
