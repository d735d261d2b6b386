import { describe, expect, test } from 'vitest';
import { sparseControls } from '../../src/plan/sparseControls.ts';
import { straightLines } from '../../src/refly/controls.ts';

describe('sparseControls', () => {
  test('a straight line is its two ends', () => {
    const rows = Array.from({ length: 50 }, (_, i) => ({ time_s: i, pitch_rad: 1 - 0.01 * i, throttle: 1 }));
    expect(sparseControls(rows)).toEqual([rows[0], rows[49]]);
  });

  test('a curve keeps as many rows as stay within 0.05°', () => {
    const rows = Array.from({ length: 400 }, (_, i) => ({
      time_s: i,
      pitch_rad: Math.atan(2 - i / 150),
      throttle: 1,
    }));
    const few = sparseControls(rows);
    expect(few.length).toBeLessThan(40);
    const line = straightLines(
      few.map((r) => r.time_s),
      few.map((r) => r.pitch_rad),
    );
    for (const r of rows)
      expect(Math.abs(line(r.time_s) - r.pitch_rad)).toBeLessThan((0.0501 * Math.PI) / 180);
  });

  test('both sides of a step stay, and a throttle’s knee', () => {
    const rows = [
      { time_s: 0, pitch_rad: 1, throttle: 1 },
      { time_s: 5, pitch_rad: 1, throttle: 1 },
      { time_s: 6, pitch_rad: 1, throttle: 0.8 },
      { time_s: 10, pitch_rad: 1, throttle: 0.8 },
      { time_s: 10, pitch_rad: 1, throttle: 0 },
      { time_s: 12, pitch_rad: 1, throttle: 0 },
    ];
    expect(sparseControls(rows)).toEqual(rows);
  });

  test('of nothing comes nothing', () => {
    expect(sparseControls([])).toEqual([]);
  });
});
