import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { readLog } from '../../src/log/readLog.ts';
import { bytesOf, inventedAscent, tableOf } from './inventedAscent.ts';

const read = (text: string, more: Partial<Parameters<typeof readLog>[1]> = {}) =>
  readLog(bytesOf(text), { name: 'flight.csv', ...more });

async function codeOf(text: string, more: Partial<Parameters<typeof readLog>[1]> = {}): Promise<string> {
  try {
    await read(text, more);
  } catch (error) {
    if (error instanceof LossbookError) return error.code;
    throw error;
  }
  return 'read';
}

describe('reference flights', () => {
  test('osselby-nominal comes back in SI units with all its channels', async () => {
    const bytes = readFileSync(new URL('../flights/osselby-nominal.csv', import.meta.url));
    const log = await readLog(new Uint8Array(bytes), { name: 'osselby-nominal.csv' });
    expect(log.readings.map((r) => r.channel)).toEqual([
      'time',
      'altitude',
      'speed',
      'inertialSpeed',
      'verticalSpeed',
      'heading',
      'latitude',
      'longitude',
      'mass',
      'throttle',
      'pitch',
      'thrust',
      'drag',
      'dynamicPressure',
      'ambientPressure',
      'stage',
    ]);
    expect(log.unusedColumns).toEqual([]);
    expect(log.notes).toEqual([]);
    expect(log.source.rows).toBe(4554);
    expect(log.channels.pitch?.[0]).toBeCloseTo(Math.PI / 2, 12);
    expect(log.channels.ambientPressure?.[0]).toBe(78000);
    expect(log.channels.speed?.at(-1)).toBe(4182.65117);
    // Smooth columns: their last digit shapes nothing, and a steady propellant flow is no rounding.
    expect(log.resolution).toEqual({});
  });
});

describe('units that no header names', () => {
  // The traits of clocks, speeds and altitudes read off a public display, on an invented flight.
  const display = inventedAscent(9000, 1 / 30).map((x) => ({
    time: Number(x.time_s.toFixed(3)),
    velocity: Math.floor(x.speed_m_s * 3.6) / 3.6,
    altitude: x.altitude_m < 100_000 ? Math.floor(x.altitude_m / 100) / 10 : Math.floor(x.altitude_m / 1000),
  }));
  const asColumns = JSON.stringify({
    time: display.map((x) => x.time),
    velocity: display.map((x) => Number(x.velocity.toFixed(3))),
    altitude: display.map((x) => x.altitude),
  });

  test('altitude in km beside speed in m/s is noticed', async () => {
    const log = await read(asColumns);
    expect(log.source.form).toBe('json-columns');
    const altitude = log.readings.find((r) => r.channel === 'altitude');
    expect(altitude?.unit).toBe('km');
    expect(altitude?.unitFrom).toBe('inferred');
    expect(altitude?.reason).toContain('steepest climb');
    expect(log.readings.find((r) => r.channel === 'speed')?.unit).toBe('m/s');
    expect(log.notes.map((n) => [n.code, n.channel])).toEqual([
      ['rounded', 'altitude'],
      ['rounded', 'speed'],
    ]);
    expect(log.notes[0]?.text).toContain('steps of 100 m (1000 m in rows');
  });

  test('the steps of the display are found', async () => {
    const { resolution } = await read(asColumns);
    expect(resolution.altitude).toBeCloseTo(100, 6);
    // Three decimals of 1/3.6 leave the step sure to 0.1 %.
    expect(resolution.speed).toBeCloseTo(1 / 3.6, 3);
  });

  test.each([
    ['m', 1, 'm/s', 1],
    ['km', 1000, 'km/s', 1000],
    ['km', 1000, 'm/s', 1],
    ['m', 1, 'km/h', 1 / 3.6],
    ['ft', 0.3048, 'm/s', 1],
    ['ft', 0.3048, 'mph', 0.44704],
    ['km', 1000, 'km/h', 1 / 3.6],
  ])('altitude and speed in %s (%d m), %s', async (length, metres, speed, metresPerSecond) => {
    const log = await read(
      tableOf(inventedAscent(600, 0.5), {
        time: (x) => x.time_s,
        altitude: (x) => x.altitude_m / metres,
        speed: (x) => x.speed_m_s / metresPerSecond,
      }),
    );
    expect([log.readings[1]?.unit, log.readings[2]?.unit]).toEqual([length, speed]);
  });

  test('milliseconds without a unit', async () => {
    const log = await read(
      tableOf(inventedAscent(600, 0.5), {
        t: (x) => x.time_s * 1000,
        altitude: (x) => x.altitude_m,
        speed: (x) => x.speed_m_s,
      }),
    );
    expect(log.readings[0]?.unit).toBe('ms');
    expect(log.time.at(-1)).toBeCloseTo(299.5, 9);
  });
});

describe('senses that no header names', () => {
  const ascent = inventedAscent(600, 0.5);
  const motion = {
    'time [s]': (x: (typeof ascent)[0]) => x.time_s,
    'Altitude [ft]': (x: (typeof ascent)[0]) => x.altitude_m / 0.3048,
  };

  test('a speed of hundreds of m/s on the pad is inertial', async () => {
    const log = await read(
      tableOf(ascent, {
        ...motion,
        speed_m_s: (x) => Math.hypot(x.verticalSpeed_m_s, x.horizontalSpeed_m_s + 409),
        'ground speed (m/s)': (x) => x.speed_m_s,
      }),
    );
    expect(log.channels.inertialSpeed?.[0]).toBeCloseTo(409, 9);
    expect(log.channels.speed?.[0]).toBe(0);
  });

  test('an inertial speed alone is moved out of the speed channel, and said', async () => {
    const text = tableOf(ascent, {
      ...motion,
      speed_m_s: (x) => Math.hypot(x.verticalSpeed_m_s, x.horizontalSpeed_m_s + 409),
    });
    const log = await read(text);
    expect(log.channels.speed).toBeUndefined();
    expect(log.channels.inertialSpeed?.[0]).toBeCloseTo(409, 9);
    expect(log.notes.map((n) => n.code)).toEqual(['speed-frame']);
  });

  test('pitch from the vertical is turned, and said', async () => {
    const log = await read(
      tableOf(ascent, { ...motion, speed_m_s: (x) => x.speed_m_s, pitch_deg: (x) => 90 - x.pitch_deg }),
    );
    expect(log.channels.pitch?.[0]).toBeCloseTo(Math.PI / 2, 12);
    expect(log.notes.map((n) => n.code)).toEqual(['pitch-from-vertical']);
  });

  test('pitch in radians is noticed', async () => {
    const log = await read(
      tableOf(ascent, {
        ...motion,
        speed_m_s: (x) => x.speed_m_s,
        pitch: (x) => (x.pitch_deg * Math.PI) / 180,
      }),
    );
    expect(log.channels.pitch?.[0]).toBeCloseTo(Math.PI / 2, 12);
    expect(log.readings.find((r) => r.channel === 'pitch')?.unit).toBe('rad');
  });

  test('throttle in percent becomes a fraction', async () => {
    const log = await read(
      tableOf(ascent, { ...motion, speed_m_s: (x) => x.speed_m_s, throttle: (x) => x.throttle * 100 }),
    );
    expect(log.channels.throttle?.[3]).toBe(1);
  });
});

describe('time', () => {
  const ascent = inventedAscent(100, 1);
  const columns = {
    time_s: (x: (typeof ascent)[0]) => x.time_s,
    altitude_m: (x: (typeof ascent)[0]) => x.altitude_m,
    speed_m_s: (x: (typeof ascent)[0]) => x.speed_m_s,
  };

  test('rows out of order and doubled times are put right and noted with their rows', async () => {
    const rows = tableOf(ascent, columns).trim().split('\n');
    const [a = '', b = ''] = [rows[21], rows[22]];
    rows[21] = b;
    rows[22] = a;
    rows.splice(40, 0, rows[40] ?? '');
    const log = await read(rows.join('\n'));
    expect(log.notes.map((n) => [n.code, n.rows, n.count])).toEqual([
      ['time-backsteps', [22, 22], 1],
      ['time-duplicates', [41, 41], 1],
    ]);
    for (let i = 1; i < log.time.length; i++) expect(log.time[i]).toBeGreaterThan(log.time[i - 1] ?? 0);
  });

  test('a clock that begins again is another flight', async () => {
    const one = tableOf(ascent, columns);
    const two = tableOf(inventedAscent(60, 1), columns).split('\n').slice(1).join('\n');
    const first = await read(one + two);
    expect([first.source.parts, first.time.length]).toEqual([2, 100]);
    const second = await read(one + two, { part: 2 });
    expect([second.source.part, second.time.length]).toEqual([2, 60]);
    expect(await codeOf(one + two, { part: 3 })).toBe('part-missing');
  });

  test('whole seconds at 10 Hz are spread over their second', async () => {
    const log = await read(
      tableOf(inventedAscent(600, 0.1), { ...columns, time_s: (x) => Math.floor(x.time_s + 1e-9) }),
    );
    expect(log.notes.map((n) => n.code)).toContain('time-coarse');
    expect(log.time[15]).toBeCloseTo(1.5, 9);
  });
});

describe('errors', () => {
  const ascent = inventedAscent(50, 1);
  const full = {
    time_s: (x: (typeof ascent)[0]) => x.time_s,
    altitude_m: (x: (typeof ascent)[0]) => x.altitude_m,
    speed_m_s: (x: (typeof ascent)[0]) => x.speed_m_s,
  };

  test.each([
    ['', 'file-empty'],
    [' \n\n', 'file-empty'],
    ['just prose\nwithout any numbers\n', 'log-no-table'],
    ['{"mission": "Long Ladder", "world": "earth", "vehicle": {"stages": []}}', 'log-is-a-card'],
    ['time_s,pitch_deg,throttle\n0,90,1\n10,80,1\n60,45,0.8\n', 'log-is-a-plan'],
    ['altitude_m,pitch_deg\n0,90\n1000,80\n', 'log-is-a-plan'],
    ['{"time": [0, 1, 2', 'log-json-broken'],
    ['a,b,c\n1,2,3\n2,3,4\n', 'log-no-time'],
    ['time,b,c\n1,2,3\n2,3,4\n', 'log-no-motion'],
    ['time,altitude,speed\n1,2,3\n2,3,4\n', 'log-too-short'],
    ['%PDF-1.7\n1 0 obj\n', 'log-not-text'],
  ])('%j gives %s', async (text, code) => {
    expect(await codeOf(text)).toBe(code);
  });

  test.each([
    [{ channel: 'altitude', column: 'nope', unit: null }, 'map-unknown-column'],
    [{ channel: 'altitude', column: 'altitude_m', unit: 'furlong' }, 'map-unknown-unit'],
  ] as const)('--map %j gives %s', async (choice, code) => {
    expect(await codeOf(tableOf(ascent, full), { map: [choice] })).toBe(code);
  });

  test('a told unit overrules the header', async () => {
    const log = await read(tableOf(ascent, full), {
      map: [{ channel: 'altitude', column: 'altitude_m', unit: 'km' }],
    });
    expect(log.readings[1]?.unitFrom).toBe('told');
    expect(log.channels.altitude?.[20]).toBeCloseTo(1000 * (ascent[20]?.altitude_m ?? 0), 6);
  });
});
