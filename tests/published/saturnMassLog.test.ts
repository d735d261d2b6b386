import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import type { Log } from '../../src/log/types.ts';
import { readMission } from '../../src/mission/readCard.ts';

/**
 * Masses of AS-506 (Apollo 11), actual column, kg: NASA MSFC, Saturn V Launch Vehicle Flight Evaluation Report
 * AS-506, MPR-SAT-FE-69-9, tables 20-1 to 20-9; interstage and escape tower as jettisoned at 192.3 and 197.9 s.
 * Straight lines between the table's rows make the log; altitude and speed only rise, so that it is a flight.
 */
const JETTISONS: readonly (readonly [number, number])[] = [
  [192.3, 3982],
  [197.9, 4042],
];
const ROWS: readonly (readonly [number, number])[] = [
  [-6.4, 2_938_315],
  [0.3, 2_899_008],
  [135.2, 1_110_189],
  [161.63, 827_292],
  [162.3, 823_625],
  // Separation of the first stage: what stands in the next row is the second stage alone.
  [162.3, 658_363],
  [164.0, 658_363],
  [166.2, 657_459],
  [548.22, 213_888],
  [549.0, 213_757],
  [549.0, 166_571],
  [552.2, 166_571],
  [699.34, 135_182],
  [760, 135_182],
];

function massAt(t: number): number {
  let k = 1;
  while (k < ROWS.length - 1 && ROWS[k]![0] < t) k++;
  const [t0, m0] = ROWS[k - 1]!;
  const [t1, m1] = ROWS[k]!;
  const dropped = (at: number): number =>
    JETTISONS.reduce((sum, [when, kg]) => sum + (at > when ? kg : 0), 0);
  const isSecond = t > 166.2 && t < 548.22;
  if (!isSecond) return t1 === t0 ? m1 : m0 + ((m1 - m0) * (t - t0)) / (t1 - t0);
  // The burn of the second stage is what is left of its fall when both jettisons are taken out.
  const burnt = m0 - m1 - dropped(1e9);
  return m0 - (burnt * (t - t0)) / (t1 - t0) - dropped(t);
}

function massLog(): Log {
  const time = Float64Array.from({ length: 7665 }, (_, i) => -6.4 + i * 0.1);
  return {
    source: { name: 'as-506', bytes: 0, form: 'delimited', rows: time.length, part: 1, parts: 1 },
    time,
    channels: {
      altitude: time.map((t) => Math.max(0, t) * 250),
      speed: time.map((t) => Math.max(0, t - 0.3) * 11),
      mass: time.map(massAt),
    },
    eventTexts: [],
    readings: [],
    unusedColumns: [],
    notes: [],
    resolution: {},
  };
}

describe('the mass ledger of AS-506', () => {
  const flight = buildFlight(massLog(), readMission({}));
  const burnt = flight.burns.map((burn) => {
    const thrown = flight.drops.filter((d) => d.index >= burn.startIndex && d.index < burn.endIndex);
    return burn.startMass_kg! - burn.endMass_kg! - thrown.reduce((sum, d) => sum + d.mass_kg, 0);
  });

  test('what was burnt and what was thrown off add up to what is gone, to the kilogram', () => {
    const gone = flight.mass![0]! - flight.mass![flight.mass!.length - 1]!;
    const thrown = flight.drops.reduce((sum, d) => sum + d.mass_kg, 0);
    const used = burnt.reduce((a, b) => a + b, 0);
    expect(Math.abs(gone - (2_938_315 - 135_182))).toBeLessThan(0.01);
    expect(Math.abs(gone - used - thrown)).toBeLessThan(1);
  });

  test('three burns, with the propellant that the table gives', () => {
    expect(burnt.length).toBe(3);
    // First stage with its decay to separation; second without the two jettisons, with its decay; third.
    expect(Math.abs(burnt[0]! - (2_938_315 - 823_625))).toBeLessThan(1);
    expect(Math.abs(burnt[1]! - (658_363 - 213_757 - 3982 - 4042))).toBeLessThan(1);
    expect(Math.abs(burnt[2]! - (166_571 - 135_182))).toBeLessThan(1);
  });

  test('the stages and both jettisons are seen as mass thrown off', () => {
    expect(flight.drops.map((d) => Math.round(d.mass_kg))).toEqual([165_262, 3982, 4042, 47_186]);
  });
});
