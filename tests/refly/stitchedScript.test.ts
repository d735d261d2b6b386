import { expect, test } from 'vitest';
import { straightLines } from '../../src/refly/controls.ts';
import type { FlightScript } from '../../src/refly/flightScript.ts';
import { joins_kg, stitchedScript } from '../../src/refly/stitchedScript.ts';

/** Two stages of 100 kg each; pitch falls by `fall` rad a kg. */
function script(fall: number, thrust_N: number, payload_kg: number, coast_s: number): FlightScript {
  const stage = (name: string) => ({
    name,
    dryMass_kg: 10,
    propellantMass_kg: 100,
    thrustVacuum_N: thrust_N,
    ispVacuum_s: 300,
    exitArea_m2: 0,
    dragArea: () => 0,
    thrustCurve: null,
    boosters: [],
  });
  const used_kg = Float64Array.of(0, 25, 50, 100);
  const table = {
    used_kg,
    time_s: used_kg.map((u) => u / 2),
    pitch_rad: used_kg.map((u) => 1.5 - fall * u),
    throttle: Float64Array.of(1, 1, 0.5, 1),
  };
  const burn = (before_s: number) => [{ coast_s: before_s, left_kg: null }];
  return {
    rocket: { payload_kg, stages: [stage('lower'), stage('upper')], jettisons: [] },
    holdDown_s: fall * 100,
    relit: false,
    stages: [
      { ...table, stage: 0, burns: burn(0), separation_s: coast_s / 2 },
      { ...table, stage: 1, burns: burn(coast_s), separation_s: null },
    ],
  };
}

const a = script(0.001, 1000, 50, 4);
const b = script(0.002, 1100, 60, 8);

test('a part begins where the part before it ends, whatever its own flight had used by then', () => {
  const parts = [
    { script: a, from_kg: 0, to_kg: 30 },
    { script: b, from_kg: 40, to_kg: null },
  ];
  expect(joins_kg(parts)).toEqual([30]);
  const { stages } = stitchedScript([
    { parts, coast: null },
    { parts: [{ script: a, from_kg: 0, to_kg: null }], coast: b },
  ]);
  const pitch = straightLines(stages[0]!.used_kg, stages[0]!.pitch_rad);
  expect(pitch(0)).toBe(1.5);
  expect(pitch(29)).toBeCloseTo(1.5 - 0.001 * 29, 12);
  expect(pitch(31)).toBeCloseTo(1.5 - 0.002 * 41, 12);
  expect(stages[0]!.used_kg.at(-1)).toBe(90);
});

test('coasts, engines and load come from the flights that fly them', () => {
  const whole = (s: FlightScript) => [{ script: s, from_kg: 0, to_kg: null }];
  const made = stitchedScript([
    { parts: whole(a), coast: null },
    { parts: whole(b), coast: a },
  ]);
  expect(made.rocket.payload_kg).toBe(60);
  expect(made.rocket.stages.map((s) => s.thrustVacuum_N)).toEqual([1000, 1100]);
  expect(made.stages[1]!.burns[0]!.coast_s).toBe(4);
  expect(made.stages[0]!.separation_s).toBe(2);
  expect(made.holdDown_s).toBe(a.holdDown_s);
});

test('parts of one flight make that flight’s script', () => {
  const made = stitchedScript([
    {
      parts: [
        { script: a, from_kg: 0, to_kg: 30 },
        { script: a, from_kg: 30, to_kg: null },
      ],
      coast: null,
    },
    { parts: [{ script: a, from_kg: 0, to_kg: null }], coast: a },
  ]);
  for (const column of ['pitch_rad', 'throttle', 'time_s'] as const) {
    const own = straightLines(a.stages[0]!.used_kg, a.stages[0]![column]);
    const now = straightLines(made.stages[0]!.used_kg, made.stages[0]![column]);
    for (let used = 0; used <= 100; used += 2.5) expect(now(used)).toBeCloseTo(own(used), 12);
  }
  expect(made.stages[1]).toEqual(a.stages[1]);
});
