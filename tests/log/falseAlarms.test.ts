import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readLog } from '../../src/log/readLog.ts';
import type { Log } from '../../src/log/types.ts';

// Reference flights are sound: whatever rate, noise or steps they are written with, nothing may be taken out.
const flights = [
  'earth-nominal',
  'earth-lofted',
  'osselby-nominal',
  'osselby-short',
  'osselby-throttled',
].map((name) => {
  const lines = readFileSync(new URL(`../flights/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split(/\r?\n/u);
  const [head = '', ...rows] = lines;
  return { name, head: head.split(','), rows: rows.map((row) => row.split(',').map(Number)) };
});
type Flight = (typeof flights)[0];
const six = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle', 'pitch_deg'];

function written(
  flight: Flight,
  columns: readonly string[],
  every: number,
  as: (column: string, x: number) => number = (_, x) => x,
  named: (column: string) => string = (column) => column,
): Promise<Log> {
  const at = columns.map((column) => flight.head.indexOf(column));
  const rows = flight.rows.filter((_, i) => i % every === 0);
  const text = [
    columns.map(named).join(','),
    ...rows.map((row) => at.map((k, c) => as(columns[c] ?? '', row[k] ?? Number.NaN)).join(',')),
  ].join('\n');
  return readLog(new TextEncoder().encode(text), { name: flight.name });
}

/** Normal deviates of a fixed seed (Box and Muller 1958). */
function noise(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

describe.each(flights)('$name', (flight) => {
  test.each([1, 2, 10, 50])('one row in %d', async (every) => {
    const log = await written(flight, flight.head, every);
    // A throttle that moves slowly shows its fourth decimal.
    const steps = Object.keys(log.resolution).filter((channel) => channel !== 'throttle');
    expect([log.notes, steps]).toEqual([[], []]);
  });

  test.each([2, 10])('with noise, one row in %d', async (every) => {
    const random = noise(every);
    const sigmas: Readonly<Record<string, number>> = {
      altitude_m: 6,
      speed_m_s: 0.5,
      pitch_deg: 0.3,
      mass_kg: 15,
    };
    const log = await written(flight, six, every, (column, x) => x + (sigmas[column] ?? 0) * random());
    expect([log.notes, log.resolution]).toEqual([[], {}]);
  });

  test.each([1, 3, 10])('in steps, one row in %d', async (every) => {
    const steps: Readonly<Record<string, number>> = {
      altitude_m: 100,
      speed_m_s: 1,
      mass_kg: 100,
      pitch_deg: 1,
    };
    const log = await written(flight, six, every, (column, x) => {
      const step = steps[column];
      return step === undefined ? x : Math.round(x / step) * step;
    });
    for (const note of log.notes) expect(note.code).toBe('rounded');
    if (every === 1) expect(log.resolution.altitude).toBeCloseTo(100, 6);
  });

  test('without a unit anywhere', async () => {
    const log = await written(
      flight,
      six,
      5,
      (_, x) => x,
      (column) => column.replace(/_(?:s|m|m_s|kg|deg)$/u, ''),
    );
    expect(log.readings.map((r) => r.unit)).toEqual(['s', 'm', 'm/s', 'kg', '1', '°']);
    expect(log.notes).toEqual([]);
  });

  test('as a display shows it: km in steps, km/h whole, no units', async () => {
    const log = await written(
      flight,
      ['time_s', 'altitude_m', 'speed_m_s'],
      1,
      (column, x) => {
        if (column === 'speed_m_s') return Math.floor(x * 3.6);
        if (column !== 'altitude_m') return x;
        return x < 100_000 ? Math.floor(x / 100) / 10 : Math.floor(x / 1000);
      },
      (column) => column.replace(/_.*$/u, ''),
    );
    expect(log.readings.map((r) => r.unit)).toEqual(['s', 'km', 'km/h']);
    for (const note of log.notes) expect(note.code).toBe('rounded');
    expect(log.resolution.speed).toBeCloseTo(1 / 3.6, 6);
  });
});
