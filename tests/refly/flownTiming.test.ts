import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { flownTiming, timedSteps, withDropTimes } from '../../src/refly/flownTiming.ts';
import { cutLog, readCardText, readTruth } from '../referenceFlights.ts';
import { rocketWith, stageOf } from './rockets.ts';

describe('flownTiming', () => {
  test.each([
    ['with mass', undefined],
    ['without mass', ['time_s', 'altitude_m', 'speed_m_s', 'throttle', 'pitch_deg']],
  ])('%s: burns and the separation between them', async (_, columns) => {
    const mission = readMission({ card: { name: 'card', text: readCardText('osselby-nominal') } });
    const log = await readLog(new TextEncoder().encode(cutLog('osselby-nominal', columns)), {
      name: 'a.csv',
    });
    const timing = flownTiming(buildFlight(log, mission));
    const { events, cutoff_time_s } = readTruth('osselby-nominal');
    const at = (name: string) => events.find((e) => e[1] === name)![0];
    expect(timing.burns.map((b) => b.stage)).toEqual([0, 1]);
    // Edges between samples of 10 Hz.
    expect(Math.abs(timing.burns[0]!.end_s - at('cutoff 1'))).toBeLessThan(0.1);
    expect(Math.abs(timing.burns[1]!.start_s - at('ignition 2'))).toBeLessThan(0.1);
    expect(Math.abs(timing.burns[1]!.end_s - cutoff_time_s)).toBeLessThan(0.1);
    expect(Math.abs(timing.separations_s.get(0)! - at('separation 1'))).toBeLessThan(0.2);
  });
});

describe('timedSteps', () => {
  test('drops every stage that lies between two burns', () => {
    const steps = timedSteps(
      {
        burns: [
          { stage: 0, start_s: 0, end_s: 10 },
          { stage: 2, start_s: 15, end_s: 30 },
        ],
        separations_s: new Map([
          [0, 11],
          [1, 12],
        ]),
        drops_s: new Map(),
      },
      0,
    );
    expect(steps.filter((s) => s.do === 'separate')).toHaveLength(2);
    expect(steps.map((s) => s.do).join(' ')).toBe(
      'coast burn coast coast separate coast separate coast burn coast',
    );
  });
});

test('withDropTimes puts the times seen in the place of the card’s', () => {
  const group = {
    name: 'strap-on',
    dryMass_kg: 1,
    propellantMass_kg: 1,
    thrustVacuum_N: 1,
    ispVacuum_s: 1,
    exitArea_m2: 0,
    ignitionTime_s: 0,
    separationTime_s: null,
  };
  const rocket = rocketWith(
    [stageOf({ boosters: [group] })],
    [
      { name: 'fairing', mass_kg: 5, time_s: null, altitude_m: 9e4 },
      { name: 'tower', mass_kg: 5, time_s: 100, altitude_m: null },
    ],
  );
  const seen = withDropTimes(
    rocket,
    new Map([
      ['strap-on', 33],
      ['fairing', 44],
    ]),
  );
  expect(seen.stages[0]!.boosters[0]!.separationTime_s).toBe(33);
  expect(seen.jettisons[0]).toEqual({ name: 'fairing', mass_kg: 5, time_s: 44, altitude_m: null });
  expect(seen.jettisons[1]).toEqual(rocket.jettisons[1]);
});
