import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { oem } from '../../src/exchange/oem.ts';
import { fileKind } from '../../src/log/fileKind.ts';
import { looksLikeOem, worldOfOem } from '../../src/log/oemMark.ts';
import { readLog } from '../../src/log/readLog.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { readCardText, readTruth } from '../referenceFlights.ts';
import { reviewSix } from '../review/reviewSix.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const example = readFileSync(
  new URL('../exchange/ccsds/examples/oem-mars-global-surveyor.txt', import.meta.url),
  'utf8',
);

/** An ephemeris of a body that stands still in an inertial frame above the equator of a turning Earth. */
function standing(lines: readonly string[], change: (text: string) => string = (text) => text): Uint8Array {
  const head = [
    'CCSDS_OEM_VERS = 2.0',
    'CREATION_DATE = 2031-05-14T00:00:00',
    'ORIGINATOR = X',
    'META_START',
    'OBJECT_NAME = BOBSTAY',
    'OBJECT_ID = UNKNOWN',
    'CENTER_NAME = EARTH',
    'REF_FRAME = TEME',
    'TIME_SYSTEM = UTC',
    'START_TIME = 1992-08-20T12:14:00',
    'STOP_TIME = 1992-08-20T12:14:11',
    'META_STOP',
  ];
  return bytes(change([...head, ...lines].join('\n')));
}

const twelve = Array.from({ length: 12 }, (_, i) => `1992-08-20T12:14:${String(i).padStart(2, '0')}`);
const still = twelve.map((t) => `${t} 6478.137 0 0 0 0 0`);

describe('an ephemeris as a log', () => {
  test('is known by its content', () => {
    expect(looksLikeOem(`\ufeff${example}`)).toBe(true);
    expect(looksLikeOem('CCSDS_OPM_VERS = 2.0')).toBe(false);
    expect(fileKind(bytes(example))).toBe('log');
    expect([worldOfOem(example), worldOfOem('time,altitude')]).toEqual(['mars', null]);
  });

  test('gives altitude, and speed, course and place over the turning ground', async () => {
    const log = await readLog(standing(still), { name: 'still.oem' });
    expect(log.source).toMatchObject({ form: 'oem', rows: 12 });
    expect([...log.time]).toEqual(twelve.map((_, i) => i));
    expect(log.channels.altitude?.[5]).toBeCloseTo(100_000, 6);
    // What stands still in the inertial frame goes west at ω r: 7.292115e-5 rad/s × 6478.137 km.
    expect(log.channels.speed?.[5]).toBeCloseTo(472.393, 2);
    expect(log.channels.course?.[5]).toBeCloseTo(-Math.PI / 2, 9);
    // Greenwich stands at 152.57878781° (Vallado, example 3-5, from memory).
    expect(((log.channels.longitude?.[0] ?? 0) * 180) / Math.PI).toBeCloseTo(-152.578788, 5);
  });

  test('in a frame that turns with the world, velocities are the ground’s', async () => {
    const moving = twelve.map((t) => `${t} 6478.137 0 0 0.1 0 0.2`);
    const log = await readLog(
      standing(moving, (text) => text.replace('TEME', 'ITRF2000')),
      { name: 'x' },
    );
    expect(log.channels.verticalSpeed?.[3]).toBeCloseTo(100, 9);
    expect(log.channels.speed?.[3]).toBeCloseTo(Math.hypot(100, 200), 9);
    expect(log.channels.longitude?.[3]).toBeCloseTo(0, 12);
  });

  test('day-of-year epochs, accelerations, comments, covariances and CRLF are taken', async () => {
    const lines = still.map(
      (line, i) => `${line.replace('1992-08-20', '1992-233')} 0 0 0${i === 3 ? '\nCOMMENT x' : ''}`,
    );
    const log = await readLog(
      standing([...lines, 'COVARIANCE_START', '1 2 3', 'COVARIANCE_STOP'], (text) =>
        text.replaceAll('\n', '\r\n'),
      ),
      { name: 'x' },
    );
    expect(log.source.rows).toBe(12);
    expect(log.channels.altitude?.[11]).toBeCloseTo(100_000, 6);
  });

  test('the standard’s own example reads, until it proves to be too short for a flight', async () => {
    await expect(readLog(bytes(example), { name: 'mgs.oem' })).rejects.toThrow(
      /mgs\.oem: only 8 usable rows/,
    );
  });

  test('a second object is left out and named', async () => {
    const more = ['META_START', 'OBJECT_NAME = FAIRLEAD', 'OBJECT_ID = UNKNOWN', 'CENTER_NAME = EARTH'];
    const rest = ['REF_FRAME = TEME', 'TIME_SYSTEM = UTC', 'META_STOP', `${twelve[0]} 1 2 3 4 5 6`];
    const log = await readLog(standing([...still, ...more, ...rest]), { name: 'x' });
    expect(log.source.rows).toBe(12);
    expect(log.notes.find((n) => n.code === 'oem-other-objects')?.text).toContain('FAIRLEAD UNKNOWN');
  });

  test.each([
    ['CENTER_NAME = EARTH\n', '', /the metadata have no CENTER_NAME/],
    ['6478.137 0 0 0 0 0', '6478.137 0 0', /row 13: .*without its six numbers/],
    ['1992-08-20T12:14:03 ', 'noon ', /row 16: .*“noon” is not an epoch/],
    ['META_START', '', /META_STOP comes before META_START/],
    ['META_STOP', 'what is this', /not keyword = value/],
    ['CENTER_NAME = EARTH', 'CENTER_NAME = OSSELBY', /centre of OSSELBY, and no world of that name/],
  ])('%j → %j ends in a message', async (from, to, message) => {
    const broken = standing(still, (text) => text.replace(from, to));
    await expect(readLog(broken, { name: 'broken.oem' })).rejects.toThrow(message);
  });

  test('a message that breaks off before its first block is told', async () => {
    await expect(readLog(bytes('CCSDS_OEM_VERS = 2.0\n'), { name: 'x' })).rejects.toThrow(/no META_START/);
  });
});

describe('a flight written as an ephemeris and read back', () => {
  test.each(['earth-nominal', 'osselby-nominal'] as const)('%s keeps its orbit', async (name) => {
    const text = oem(await reviewSix(name), { created_ms: 0 });
    const { review } = await reviewFlight({
      log: { name: 'flight.oem', bytes: bytes(text) },
      card: { name: 'card', text: readCardText(name) },
    });
    const { apoapsisAltitude_m, periapsisAltitude_m, inclination_deg } = review.orbit.atCutoff;
    const truth = readTruth(name).orbit_at_cutoff;
    expect(review.verdict.code).toBe('in-orbit');
    // Measured: 0.5 m on Earth, 2.5 m on Osselby, 1.4e-6°.
    expect(Math.abs((apoapsisAltitude_m.value ?? 0) - truth.apoapsis_altitude_m)).toBeLessThan(5);
    expect(Math.abs((periapsisAltitude_m.value ?? 0) - truth.periapsis_altitude_m)).toBeLessThan(5);
    expect(Math.abs((inclination_deg.value ?? 0) - truth.inclination_deg)).toBeLessThan(5e-6);
  });

  test('the world that the message names is taken where nothing else names one', async () => {
    const text = oem(await reviewSix('earth-nominal', 10), { created_ms: 0 });
    const { review } = await reviewFlight({
      log: { name: 'x', bytes: bytes(text.replace('CENTER_NAME       = EARTH', 'CENTER_NAME = MOON')) },
    });
    expect(review.mission.world).toBe('Moon');
    expect(review.mission.assumed.join(' ')).toContain('Moon, which the log names as its centre');
  });

  test('another world than the message’s is used, and said', async () => {
    const text = oem(await reviewSix('earth-nominal', 10), { created_ms: 0 });
    const { review } = await reviewFlight({ log: { name: 'x', bytes: bytes(text) }, world: 'mars' });
    expect(review.quality.find((n) => n.code === 'oem-centre')?.text).toMatch(/centre of EARTH, but .* Mars/);
  });
});
