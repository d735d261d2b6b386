import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { consistencyNotes } from '../../src/review/consistency.ts';
import { instruments, noisyLog } from '../noisyFlights.ts';
import { cutLog, readCardText, referenceNames } from '../referenceFlights.ts';

async function notesOn(log: string, card: unknown) {
  const read = await readLog(new TextEncoder().encode(log), { name: 'log' });
  return consistencyNotes(
    buildFlight(read, readMission({ card: { name: 'card', text: JSON.stringify(card) } })),
  );
}

const name = 'osselby-short';
const cardOf = () => JSON.parse(readCardText(name));

/** The log with its pitch column changed, degrees. */
function pitched(change: (pitch_deg: number) => number, log = cutLog(name, undefined, 5)): string {
  return log
    .split('\n')
    .map((line, i) => {
      if (i === 0) return line;
      const cells = line.split(',');
      return [...cells.slice(0, 5), change(Number(cells[5]))].join(',');
    })
    .join('\n');
}

test.each(referenceNames)(
  '%s: a true card and a true log disagree in nothing, nor with noise',
  async (flight) => {
    const card = JSON.parse(readCardText(flight));
    expect(await notesOn(cutLog(flight, undefined, 5), card)).toEqual([]);
    expect(await notesOn(noisyLog(flight, instruments, 3), card)).toEqual([]);
  },
);

test('a log that begins in flight says so, with where and how fast', async () => {
  const [header, ...rows] = cutLog(name, undefined, 5).split('\n');
  const later = rows.filter((r) => Number.parseFloat(r) >= 60);
  const [, altitude, speed] = later[0]!.split(',').map(Number);
  const notes = await notesOn([header, ...later].join('\n'), cardOf());
  const told = /in flight, at ([\d.]+) km and ([\d,]+) m\/s/u.exec(notes[0]!.text)!;
  expect(notes[0]!.code).toBe('begins-in-flight');
  expect(Number(told[1]) * 1000).toBeCloseTo(altitude!, -2);
  expect(Math.abs(Number(told[2]!.replace(',', '')) - speed!)).toBeLessThan(2);
});

test('more speed than the whole vehicle has: a unit was taken wrongly', async () => {
  // Speed in km/h and altitude in feet under headers without units, as some loggers write them.
  const [, ...rows] = cutLog(name, ['time_s', 'altitude_m', 'speed_m_s'], 10).split('\n');
  const feet = rows
    .filter((r) => r !== '')
    .map((r) => r.split(',').map(Number))
    .map(([t, h, v]) => [t, (h! / 0.3048).toFixed(0), (v! * 3.6).toFixed(0)].join(','));
  const notes = await notesOn(['time,altitude,speed', ...feet].join('\n'), cardOf());
  const found = notes.find((n) => n.code === 'speed-over-card')!;
  // Tsiolkovsky over the card's two stages: 5,541 m/s.
  expect(found.text).toContain('has 5,541 m/s in all');
  expect(found.text).toMatch(/speed read in m\/s, altitude in m\)/u);
});

test('lift-off mass, dry mass at staging, burn time and specific impulse off the card', async () => {
  const card = cardOf();
  card.vehicle.stages[0].dryMass_kg = 4200;
  card.vehicle.stages[0].thrustVacuum_N *= 1.05;
  card.vehicle.stages[1].ispVacuum_s = 341;
  card.vehicle.payload_kg += 100;
  const notes = await notesOn(cutLog(name, undefined, 5), card);
  expect(notes.map((n) => n.code)).toEqual([
    'card-liftoff-mass',
    'card-dry-mass',
    'card-burn-time',
    'card-isp',
    'card-thrust',
  ]);
  expect(notes[0]!.text).toContain('62,700 kg, 0.3 % more');
  expect(notes[1]!.text).toContain('7.1 % more');
  expect(notes[2]!.text).toContain('5.0 % more');
  expect(notes[3]!.text).toContain('335.0 s');
});

test('thrust below rating is told by the flow, in kilonewtons with its interval', async () => {
  const card = cardOf();
  card.vehicle.stages[1].thrustVacuum_N *= 1.04;
  const notes = await notesOn(cutLog(name, undefined, 5), card);
  const thrust = notes.find((n) => n.code === 'card-thrust');
  expect(thrust?.text).toContain('3.8 % less');
});

test.each([2, -2, 0.8])('a pitch channel %s° off is told by the turn of the path', async (off) => {
  for (const log of [pitched((p) => p + off), pitched((p) => p + off, noisyLog(name, instruments, 11))]) {
    const notes = await notesOn(log, cardOf());
    const text = notes.find((n) => n.code === 'pitch-bias')!.text;
    const [, found, side, half] = text.match(/([\d.]+)° (above|below) the logged pitch \(± ([\d.]+)°/)!;
    // Printed to a tenth or a hundredth; measured: within 0.06°, which the interval says.
    expect(Math.abs(Number(found) - Math.abs(off))).toBeLessThanOrEqual(Number(half) + 0.006);
    expect(Number(half)).toBeLessThan(0.2);
    expect(side).toBe(off > 0 ? 'below' : 'above');
  }
});

test('a pitch channel in radians or counted from the vertical is read as such, and nothing disagrees', async () => {
  const rad = pitched((p) => (p * Math.PI) / 180).replace('pitch_deg', 'pitch');
  const vertical = pitched((p) => 90 - p).replace('pitch_deg', 'pitch_deg');
  for (const log of [rad, vertical]) expect(await notesOn(log, cardOf())).toEqual([]);
});

describe.each(['earth-nominal', 'osselby-short'] as const)(
  '%s, its speed column in another frame',
  (flight) => {
    /** Six channels from 40 s on, so that no pad tells the frame; `column` stands under the heading `named`. */
    const aloft = (column: string, named: string): string =>
      cutLog(flight, ['time_s', 'altitude_m', column, 'mass_kg', 'throttle', 'pitch_deg'], 5)
        .split('\n')
        .filter((line, i) => i === 0 || Number(line.split(',')[0]) >= 40)
        .join('\n')
        .replace(column, named);
    const card = JSON.parse(readCardText(flight));

    test.each([
      ['inertial_speed_m_s', 'speed_m_s', 'it is inertial'],
      ['speed_m_s', 'inertial_speed_m_s', 'it is over the ground'],
    ])('%s named %s: free fall tells, with the speed it asks for', async (column, named, verdict) => {
      const notes = await notesOn(aloft(column, named), card);
      const frame = notes.find((n) => n.code === 'speed-frame')!;
      expect(frame.text).toContain(verdict);
      const [, from, to, asked, half] = frame.text.match(
        /from (\d+) to (\d+) s asks for ([\d,]+) m\/s .*?\(± ([\d,]+) m\/s\)/,
      )!;
      const middle = cutLog(flight, ['time_s', 'inertial_speed_m_s', 'vertical_speed_m_s'])
        .split('\n')
        .map((line) => line.split(',').map(Number))
        // Times count from the first sample where the log begins aloft.
        .find(([t]) => t! >= 40 + (Number(from) + Number(to)) / 2)!;
      const exact = Math.sqrt(middle[1]! ** 2 - middle[2]! ** 2);
      expect(Math.abs(Number(asked!.replace(',', '')) - exact)).toBeLessThan(Number(half) / 2);
      expect(notes.map((n) => n.code)).not.toContain('pitch-bias');
    });

    test.each(['speed_m_s', 'inertial_speed_m_s'])(
      '%s under its own name: nothing to tell',
      async (column) => {
        expect((await notesOn(aloft(column, column), card)).map((n) => n.code)).not.toContain('speed-frame');
      },
    );
  },
);
