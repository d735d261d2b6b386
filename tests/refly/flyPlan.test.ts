import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { ledgerTotals } from '../../src/ledger/totals.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { readPlan } from '../../src/plan/readPlan.ts';
import { writePlan } from '../../src/plan/writePlan.ts';
import { flyPlan } from '../../src/refly/flyPlan.ts';
import { cutLog, type ReferenceName, readCardText, readTruth, referenceNames } from '../referenceFlights.ts';

const columns = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle', 'pitch_deg', 'heading_deg'];

function missionOf(name: ReferenceName) {
  return readMission({ card: { name, text: readCardText(name) } });
}

describe.each(referenceNames)('%s as its own plan', (name) => {
  test.each(['flight', 'table'])('read as a %s it ends where the truth does', async (form) => {
    const mission = missionOf(name);
    const truth = readTruth(name);
    const flight = await readPlan(cutLog(name, columns), `${name}.csv`, mission);
    const plan = form === 'flight' ? flight : await readPlan(writePlan(flight), `${name}.plan.csv`, mission);
    expect(plan.form).toBe(form);
    const flown = flyPlan(plan, mission, null);
    const end = flown.span.end;
    expect(flown.end).toBe('flown');
    // Measured: 0.005 m/s and 8 m (the reference flights start with 0.01 m/s); throttled 0.08 m/s and 28 m.
    expect(Math.abs(flown.flight.time[end]! - truth.cutoff_time_s)).toBeLessThan(0.002);
    expect(Math.abs(flown.flight.speed[end]! - truth.ground.speed_gained! - 0.01)).toBeLessThan(0.15);
    const last = truth.to_go.at(-1)!;
    expect(Math.abs(flown.budget.toGo![flown.budget.atEnd]! - last.delta_v_to_go)).toBeLessThan(0.1);
    const ledger = ledgerTotals(flown.ground);
    expect(Math.abs(ledger.ideal! - truth.ground.ideal!)).toBeLessThan(0.01);
    expect(Math.abs(ledger.gravity - truth.ground.gravity!)).toBeLessThan(0.1);
    expect(Math.abs(ledger.unexplained!)).toBeLessThan(0.01);
  });
});

test('a sparse table over altitude, without events, is staged by default and cut off at the target’s energy', async () => {
  const mission = missionOf('osselby-nominal');
  const table = 'altitude_km,pitch_deg\n0,90\n0.5,88\n5,70\n20,50\n45,30\n80,12\n140,0\n170,-5\n';
  const flown = flyPlan(await readPlan(table, 'x.csv', mission), mission, null);
  const { burns } = flown.flight;
  expect(burns.length).toBe(2);
  expect(burns[1]!.start_s - burns[0]!.end_s).toBeCloseTo(2, 2);
  expect(flown.assumed.join(' ')).toContain('full thrust');
});

test('without a vehicle it says what is missing', async () => {
  const mission = readMission({});
  const plan = await readPlan('time_s,pitch_deg\n0,90\n100,40\n', 'x.csv', mission);
  expect(() => flyPlan(plan, mission, null)).toThrow(LossbookError);
});

test('a first stage lit before lift-off is held down: what it burns on the pad is gone and booked', async () => {
  const mission = missionOf('osselby-nominal');
  const table = (ignition_s: number) =>
    `time_s,pitch_deg,event\n${ignition_s},90,ignition (lower)\n10,89,\n160,40,cutoff (lower)\n`;
  const [held, free] = await Promise.all(
    [-2, 0].map(async (t) => flyPlan(await readPlan(table(t), 'x.csv', mission), mission, null)),
  );
  const stage = mission.vehicle!.stages[0]!;
  const burnt_kg = (2 * stage.thrustVacuum_N!) / (stage.ispVacuum_s! * 9.80665);
  const [a, b] = [held!, free!].map(({ flight }) => flight.mass![flight.liftOffIndex]!);
  // The simulated log shows lift-off within its 0.1 s.
  expect(Math.abs(b! - a! - burnt_kg)).toBeLessThan(0.06 * burnt_kg);
  expect(held!.flight.burns[0]!.start_s).toBeCloseTo(-2, 2);
  expect(free!.flight.burns[0]!.start_s).toBeCloseTo(0, 2);
});

test('a flight that never lit its second stage is flown so', async () => {
  const mission = missionOf('osselby-nominal');
  // Without what came after the coast between the stages: the first has burnt out, the second is not lit.
  const whole = await readPlan(cutLog('osselby-nominal', columns), 'whole.csv', mission);
  const lit = whole.events.find((e) => e.name === 'ignition' && e.at > 10)!;
  const unlit = { ...whole, events: whole.events.filter((e) => e.at < lit.at) };
  const { flight } = flyPlan(unlit, mission, null);
  expect(flight.burns.map((b) => b.stage)).toEqual([0]);
  // A table without that ignition leaves it to the default.
  const table = flyPlan({ ...unlit, form: 'table' }, mission, null);
  expect(table.flight.burns.map((b) => b.stage)).toEqual([0, 1]);
});
