import { expect, test } from 'vitest';
import { heldRuns } from '../../src/log/heldRuns.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const mass = Float64Array.from(ascent, (x) => x.mass_kg - (x.time_s > 155 ? 3000 : 0));
const edited = (values: Float64Array, edits: Readonly<Record<number, number>>): Float64Array => {
  const out = Float64Array.from(values);
  for (const [i, x] of Object.entries(edits)) out[Number(i)] = x;
  return out;
};

test.each([
  ['altitude', altitude],
  ['speed', speed],
  ['mass with a stage thrown off', mass],
  ['altitude in steps', altitude.map((x) => Math.round(x / 1000) * 1000)],
  ['speed in steps', speed.map((x) => Math.round(x / 10) * 10)],
])('a clean %s is left alone', (_, values) => {
  expect(heldRuns(time, values, 0)).toEqual([]);
});

test('a frozen stretch that catches up', () => {
  const held = Object.fromEntries(Array.from({ length: 15 }, (_, k) => [60 + k, altitude[60] ?? 0]));
  expect(heldRuns(time, edited(altitude, held), 0)).toEqual([{ kind: 'frozen', from: 61, to: 74 }]);
});

test('a dropout to one value and back', () => {
  const zero = Object.fromEntries(Array.from({ length: 20 }, (_, k) => [60 + k, 0]));
  expect(heldRuns(time, edited(altitude, zero), 0)).toEqual([{ kind: 'dropout', from: 60, to: 79 }]);
});

test('a sentinel from the start', () => {
  const none = Object.fromEntries(Array.from({ length: 10 }, (_, k) => [k, -9999 * 0.3048]));
  expect(heldRuns(time, edited(altitude, none), 0, (x) => x / 0.3048)).toEqual([
    { kind: 'dropout', from: 0, to: 9 },
  ]);
});

test('a vehicle at rest at the end is no dropout', () => {
  const landed = Object.fromEntries(Array.from({ length: 100 }, (_, k) => [200 + k, 0]));
  expect(heldRuns(time, edited(altitude, landed), 0)).toEqual([]);
});
