import { describe, expect, test } from 'vitest';
import { roundingNote } from '../../src/log/roundingNote.ts';

const climb = (n: number, rate: number): number[] =>
  Array.from({ length: n }, (_, i) => rate * i + 0.0003 * i * i);

describe('roundingNote', () => {
  test('names the step, and where it is ten times as coarse', () => {
    const values = Float64Array.from(climb(3000, 37), (x) =>
      x < 60_000 ? Math.floor(x / 100) * 100 : Math.floor(x / 1000) * 1000,
    );
    const rows = Int32Array.from(values.keys());
    const note = roundingNote('altitude', values, 100, rows);
    expect(note?.text).toMatch(/steps of 100 m \(1000 m in rows 1\d\d\d to 29\d\d\)/u);
  });

  test('says nothing of steps that do not matter', () => {
    expect(roundingNote('altitude', new Float64Array(9), 0.1, new Int32Array(9))).toBeNull();
    expect(roundingNote('mass', new Float64Array(9), 100, new Int32Array(9))).toBeNull();
  });
});
