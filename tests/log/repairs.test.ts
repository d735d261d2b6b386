import { describe, expect, test } from 'vitest';
import { heldRuns } from '../../src/log/heldRuns.ts';
import { wildValues } from '../../src/log/outliers.ts';
import { repairChannels } from '../../src/log/repairs.ts';
import { unitChanges } from '../../src/log/unitChange.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const speed = Float64Array.from(ascent, (x) => x.speed_m_s);
const mass = Float64Array.from(ascent, (x) => x.mass_kg - (x.time_s > 155 ? 3000 : 0));
const rows = Int32Array.from(time.keys());
const edited = (values: Float64Array, edits: Readonly<Record<number, number>>): Float64Array => {
  const out = Float64Array.from(values);
  for (const [i, x] of Object.entries(edits)) out[Number(i)] = x;
  return out;
};

describe('a clean flight is left alone', () => {
  test.each([
    ['altitude', altitude],
    ['speed', speed],
    ['mass with a stage thrown off', mass],
    ['altitude in steps', altitude.map((x) => Math.round(x / 1000) * 1000)],
    ['speed in steps', speed.map((x) => Math.round(x / 10) * 10)],
  ])('%s', (_, values) => {
    expect(wildValues(time, values)).toEqual([]);
    expect(heldRuns(time, values, 0)).toEqual([]);
    expect(unitChanges(time, values)).toEqual([]);
  });

  test('with noise, at any rate', () => {
    let seed = 7;
    const random = (): number => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647 - 0.5;
    };
    for (const every of [1, 3, 10]) {
      const pick = (values: Float64Array): Float64Array => values.filter((_, i) => i % every === 0);
      const noisy = pick(altitude).map((x) => x + 40 * random());
      expect(wildValues(pick(time), noisy)).toEqual([]);
      expect(unitChanges(pick(time), noisy)).toEqual([]);
    }
  });

  test('nothing is noted', () => {
    expect(repairChannels(time, { altitude, speed, mass }, rows, {}).notes).toEqual([]);
  });
});

describe('what the vehicle cannot have done', () => {
  test('single and few wild values', () => {
    expect(wildValues(time, edited(altitude, { 50: 0, 120: 1e6, 121: 1e6 }))).toEqual([50, 120, 121]);
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

  test.each([1000, 0.001, 3.6, 1 / 3.6, 0.3048, 1 / 0.3048])('a unit that changes midway, by %d', (scale) => {
    const changed = altitude.map((x, i) => (i < 130 ? x : x / scale));
    const [change, ...more] = unitChanges(time, changed);
    expect([change?.row, more.length]).toEqual([130, 0]);
    expect(change?.scale).toBeCloseTo(scale, 9);
  });

  test('what is taken out is missing, the rest untouched', () => {
    const { channels, notes } = repairChannels(
      time,
      { altitude: edited(altitude, { 50: 0 }) },
      rows.map((i) => i + 100),
      {},
    );
    expect(channels.altitude?.[50]).toBeNaN();
    expect(channels.altitude?.[51]).toBe(altitude[51]);
    expect(notes).toMatchObject([{ code: 'outliers', channel: 'altitude', rows: [151, 151], count: 1 }]);
  });

  test('gaps are noted, not filled', () => {
    const kept = (values: Float64Array): Float64Array => values.filter((_, i) => i < 100 || i > 140);
    const { notes } = repairChannels(kept(time), { altitude: kept(altitude) }, rows, {});
    expect(notes).toMatchObject([{ code: 'gap', rows: [100, 101], count: 1 }]);
    expect(notes[0]?.text).toContain('42 s');
  });

  test('an angle that turns over is made to go on', () => {
    const longitude = time.map((t) => ((((170 + 0.1 * t + 180) % 360) - 180) * Math.PI) / 180);
    const { channels, notes } = repairChannels(time, { longitude }, rows, {});
    expect(notes.map((n) => n.code)).toEqual(['angle-turned-over']);
    expect(channels.longitude?.at(-1)).toBeCloseTo(((170 + 29.9) * Math.PI) / 180, 9);
  });
});
