import { expect, test } from 'vitest';
import { delimitedTable } from '../../src/log/delimitedTable.ts';
import { guessColumns } from '../../src/log/guessColumns.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(200, 1);

/** Channels by the place where they are found. */
function guessed(columns: readonly ((x: (typeof ascent)[0]) => number)[]): Record<string, number> {
  const text = ascent.map((x) => columns.map((of) => of(x).toFixed(3)).join(',')).join('\n');
  return Object.fromEntries(
    guessColumns(delimitedTable(text, 'x'), []).map((a) => [a.channel, a.columnIndex]),
  );
}

test('time, altitude and speed by what they do, wherever they stand', () => {
  const [t, h, v, m, p] = [
    (x: (typeof ascent)[0]) => x.time_s,
    (x: (typeof ascent)[0]) => x.altitude_m / 1000,
    (x: (typeof ascent)[0]) => x.speed_m_s,
    (x: (typeof ascent)[0]) => x.mass_kg,
    (x: (typeof ascent)[0]) => x.pitch_deg,
  ];
  expect(guessed([t, h, v])).toEqual({ time: 0, altitude: 1, speed: 2 });
  expect(guessed([p, v, m, h, t])).toEqual({ time: 4, altitude: 3, speed: 1 });
});

test('columns that no motion explains stay unknown', () => {
  expect(guessed([(x) => x.time_s, (x) => Math.sin(x.time_s), (x) => Math.cos(3 * x.time_s)])).toEqual({
    time: 0,
  });
  expect(guessed([(x) => Math.sin(x.time_s), (x) => x.mass_kg])).toEqual({});
});
