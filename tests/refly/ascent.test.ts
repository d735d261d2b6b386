import { describe, expect, test } from 'vitest';
import { Ascent } from '../../src/refly/ascent.ts';
import { carriedLedger } from '../../src/refly/carriedLedger.ts';
import { alongPathPitch, held, timeTable } from '../../src/refly/controls.ts';
import type { FlightProgram } from '../../src/refly/flightProgram.ts';
import { place } from '../../src/refly/motion.ts';
import { STANDARD_GRAVITY_M_S2 as g0 } from '../../src/units/standardGravity.ts';
import { airTo, padStart, rocketWith, stageOf, worldOf } from './rockets.ts';

const east = held(Math.PI / 2);
const controls = { throttle: held(1), pitch: held(1.4), heading: east };
const toEmpty: FlightProgram['steps'] = [{ do: 'burn', until: { kind: 'empty' } }];
const names = (events: readonly { name: string }[]) => events.map((e) => e.name);

describe('ledger carried as states', () => {
  test('closes in both frames, over two stages, a hold-down, air and a turning world', () => {
    const world = worldOf(1e-4, airTo(90e3));
    const ascent = new Ascent(world, rocketWith([stageOf({ thrustVacuum_N: 400000 }), stageOf()]));
    const result = ascent.fly({
      start: { ...padStart(3), latitude_rad: 0.4 },
      controls: { ...controls, pitch: timeTable([0, 20, 200], [Math.PI / 2, 1.4, 0.2]) },
      steps: [
        ...toEmpty,
        { do: 'coast', until: { kind: 'duration', duration_s: 2 } },
        { do: 'separate' },
        { do: 'burn', until: { kind: 'duration', duration_s: 60 } },
      ],
    });
    expect(names(result.events)).toEqual([
      'ignition',
      'lift-off',
      'cutoff',
      'separation',
      'ignition',
      'cutoff',
    ]);
    for (const frame of ['ground', 'inertial'] as const) {
      const ledger = carriedLedger(world, result.events[0]!.state, result.state, frame);
      // Measured: 1e-6 m/s at the default tolerance, 1e-9 of the speed.
      expect(Math.abs(ledger.unexplained)).toBeLessThan(5e-6);
      expect(ledger.holdDown).toBeGreaterThan(10);
    }
  });

  test('ideal is Tsiolkovsky’s formula, whatever the throttle does', () => {
    const ascent = new Ascent(worldOf(0), rocketWith([stageOf()]));
    const result = ascent.fly({
      start: padStart(),
      controls: { ...controls, throttle: timeTable([0, 20, 20, 40, 60], [1, 1, 0.8, 0.8, 1]) },
      steps: toEmpty,
    });
    expect(result.end).toBe('flown');
    expect(result.state[place.ideal]).toBeCloseTo(300 * g0 * Math.log(10500 / 1500), 5);
  });
});

describe('conservation', () => {
  test('a coast without air keeps energy and angular momentum, at any spin of the world', () => {
    const ascent = new Ascent(worldOf(2e-4), rocketWith([stageOf()]), { relativeTolerance: 1e-11 });
    const start = {
      kind: 'flight' as const,
      time_s: 5,
      latitude_rad: 0.3,
      longitude_rad: 1,
      altitude_m: 100e3,
      speed_m_s: 3000,
      flightPathAngle_rad: 0.4,
      course_rad: 1,
      stage: 0,
      stagePropellant_kg: 0,
      mass_kg: 1500,
    };
    const program = (duration_s: number): FlightProgram => ({
      start,
      controls,
      steps: [{ do: 'coast', until: { kind: 'duration', duration_s } }],
    });
    const energy = (y: Float64Array) =>
      (y[3]! ** 2 + y[4]! ** 2 + y[5]! ** 2) / 2 - 4e13 / Math.hypot(y[0]!, y[1]!, y[2]!);
    const spinAxis = (y: Float64Array) => y[0]! * y[4]! - y[1]! * y[3]!;
    const a = ascent.fly(program(0)).state;
    const b = ascent.fly(program(600)).state;
    expect(Math.abs(energy(b) / energy(a) - 1)).toBeLessThan(1e-10);
    expect(Math.abs(spinAxis(b) / spinAxis(a) - 1)).toBeLessThan(1e-10);
    const seen = ascent.observe(5, a);
    expect(seen.speed_m_s).toBeCloseTo(3000, 8);
    expect(seen.flightPathAngle_rad).toBeCloseTo(0.4, 10);
    expect(seen.course_rad).toBeCloseTo(1, 10);
    expect(seen.latitude_rad).toBeCloseTo(0.3, 12);
    expect(seen.longitude_rad).toBeCloseTo(1, 12);
  });

  test('the same flight to any heading on a world that does not turn', () => {
    const ascent = new Ascent(worldOf(0, airTo(80e3)), rocketWith([stageOf()]));
    const speeds = [0, 1, 2.5, 4].map((heading) => {
      const result = ascent.fly({
        start: padStart(),
        controls: { ...controls, heading: held(heading) },
        steps: toEmpty,
      });
      return ascent.observe(result.time_s, result.state).speed_m_s;
    });
    // Measured: 2e-6 m/s, the tolerance of the steps through the top of the air.
    for (const speed of speeds) expect(Math.abs(speed - speeds[0]!)).toBeLessThan(1e-5);
  });
});

describe('switches and drops', () => {
  const boosters = {
    name: 'strap-on',
    dryMass_kg: 300,
    propellantMass_kg: 2000,
    thrustVacuum_N: 200000,
    ispVacuum_s: 250,
    exitArea_m2: 0,
    ignitionTime_s: 1,
    separationTime_s: 40,
  };
  const burn_s = (2000 * g0 * 250) / 200000;

  test('boosters burn beside their stage and drop at their time; jettisons at a time and an altitude', () => {
    const rocket = rocketWith(
      [stageOf({ boosters: [boosters] })],
      [
        { name: 'tower', mass_kg: 50, time_s: 30, altitude_m: null },
        { name: 'fairing', mass_kg: 100, time_s: null, altitude_m: 20000 },
      ],
    );
    const ascent = new Ascent(worldOf(0), rocket);
    const result = ascent.fly({ start: padStart(), controls, steps: toEmpty });
    const at = (name: string) => result.events.filter((e) => e.name === name);
    expect(at('booster-ignition')[0]!.time_s).toBe(1);
    expect(at('booster-burnout')[0]!.time_s).toBeCloseTo(1 + burn_s, 9);
    expect(at('booster-separation')[0]!.time_s).toBe(40);
    expect(at('jettison').map((e) => e.subject)).toEqual(['tower', 'fairing']);
    const fairing = at('jettison')[1]!;
    expect(ascent.observe(fairing.time_s, fairing.state).altitude_m).toBeCloseTo(20000, 5);
    // Payload and the empty stage: everything else is burnt or dropped.
    expect(result.state[place.mass]).toBeCloseTo(1500, 6);
  });

  test('a separation takes the stage, what is left in it and its boosters along', () => {
    const ascent = new Ascent(worldOf(0), rocketWith([stageOf({ boosters: [boosters] }), stageOf()]));
    const result = ascent.fly({
      start: padStart(),
      controls,
      steps: [{ do: 'burn', until: { kind: 'time', time_s: 5 } }, { do: 'separate' }],
    });
    expect(result.state[place.mass]).toBeCloseTo(10500, 6);
  });

  test('a solid motor follows its thrust curve and ends with it', () => {
    const thrustCurve = [
      [0, 0],
      [1, 300000],
      [20, 250000],
      [22, 0],
    ] as const;
    const ascent = new Ascent(worldOf(0), rocketWith([stageOf({ thrustCurve })]));
    const result = ascent.fly({
      start: padStart(),
      controls: { ...controls, pitch: held(Math.PI / 2) },
      steps: toEmpty,
    });
    // Without thrust it sinks through its pad at once: held down for its first second it rises.
    expect(result.end).toBe('impact');
    const lifted = ascent.fly({ start: padStart(1), controls, steps: toEmpty });
    expect(lifted.end).toBe('flown');
    expect(lifted.time_s).toBeCloseTo(21, 9);
    const impulse = 150000 + 19 * 275000 + 250000;
    expect(lifted.state[place.mass]).toBeCloseTo(10500 - impulse / (g0 * 300), 6);
  });

  test('a condition is met exactly; a flight that comes down ends on the ground', () => {
    const ascent = new Ascent(worldOf(1e-4, airTo(90e3)), rocketWith([stageOf()]));
    const result = ascent.fly({
      start: padStart(),
      controls,
      steps: [
        { do: 'burn', until: { kind: 'condition', value: (s) => s.speed_m_s - 400, direction: 1 } },
        {
          do: 'coast',
          controls: { ...controls, pitch: alongPathPitch },
          until: { kind: 'time', time_s: 1e4 },
        },
      ],
    });
    const cutoff = result.events.find((e) => e.name === 'cutoff')!;
    expect(ascent.observe(cutoff.time_s, cutoff.state).speed_m_s).toBeCloseTo(400, 6);
    expect(result.end).toBe('impact');
    expect(ascent.observe(result.time_s, result.state).altitude_m).toBeCloseTo(0, 5);
  });

  test('a rocket too heavy to lift ends where it stands, and an end that never comes is given up', () => {
    const heavy = new Ascent(worldOf(0), rocketWith([stageOf({ thrustVacuum_N: 20000 })]));
    expect(heavy.fly({ start: padStart(), controls, steps: toEmpty })).toMatchObject({
      end: 'impact',
      time_s: 0,
    });
    const ascent = new Ascent(worldOf(0), rocketWith([stageOf()]));
    const circling: FlightProgram = {
      start: {
        kind: 'flight',
        time_s: 0,
        latitude_rad: 0,
        longitude_rad: 0,
        altitude_m: 1e6,
        speed_m_s: Math.sqrt(4e13 / 4e6),
        flightPathAngle_rad: 0,
        course_rad: 0,
        stage: 0,
        stagePropellant_kg: 0,
        mass_kg: 1000,
      },
      controls,
      steps: [{ do: 'coast', until: { kind: 'condition', value: (s) => s.altitude_m - 2e6, direction: 1 } }],
    };
    const quick = new Ascent(worldOf(0), ascent.rocket, { maxStep_s: 1000, relativeTolerance: 1e-6 });
    expect(quick.fly(circling).end).toBe('stalled');
  });
});

test('without carried losses the flight is the same', () => {
  const world = worldOf(1e-4, airTo(90e3));
  const program: FlightProgram = { start: padStart(), controls, steps: toEmpty };
  const full = new Ascent(world, rocketWith([stageOf()])).fly(program);
  const bare = new Ascent(world, rocketWith([stageOf()]), { carryLosses: false }).fly(program);
  expect(bare.state.length).toBe(place.ideal);
  for (let i = 0; i < bare.state.length; i++)
    expect(Math.abs(bare.state[i]! - full.state[i]!)).toBeLessThan(1e-3);
});
