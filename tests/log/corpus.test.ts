import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { columnsCsv } from '../../src/exchange/columnsCsv.ts';
import { readLog, readLogStream } from '../../src/log/readLog.ts';
import type { ChannelName, Log } from '../../src/log/types.ts';

/** What a file of the corpus must be read as; written by hand or from the numbers that the file was made of. */
interface Expected {
  readonly error?: string;
  readonly form: string;
  /** Data rows in the file and rows in the log. */
  readonly rows: number;
  readonly used: number;
  readonly parts: number;
  readonly part?: number;
  readonly map?: readonly (readonly [ChannelName, string, string | null])[];
  readonly channels: Readonly<
    Record<
      string,
      {
        readonly column: string;
        readonly unit: string;
        readonly from: string;
        /** SI values at the first, the middle and the last row of the log. */
        readonly values?: readonly number[];
        readonly missing?: number;
      }
    >
  >;
  readonly unused: readonly string[];
  readonly notes: readonly string[];
  readonly events?: readonly (readonly [number, string])[];
  readonly resolution?: Readonly<Record<string, number>>;
  /** Relative; the files' own digits are exact. */
  readonly tolerance?: number;
  /** Where given, the file's columns can be shuffled by cutting its lines here. */
  readonly separator?: string;
}

const folder = new URL('../corpus/', import.meta.url);
const ending = '.expected.json';
const cases = readdirSync(folder)
  .filter((name) => name.endsWith(ending))
  .map((name) => {
    const file = name.slice(0, -ending.length);
    return {
      file,
      bytes: new Uint8Array(readFileSync(new URL(file, folder))),
      expected: JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as Expected,
    };
  });

function options(expected: Expected, name: string): Parameters<typeof readLog>[1] {
  return {
    name,
    ...(expected.part === undefined ? {} : { part: expected.part }),
    ...(expected.map === undefined
      ? {}
      : { map: expected.map.map(([channel, column, unit]) => ({ channel, column, unit })) }),
  };
}

/** A log without what may differ between two files of the same content. */
function essence(log: Log): unknown {
  return {
    ...log,
    source: { ...log.source, name: '', bytes: 0 },
    readings: log.readings.map((reading) => ({ ...reading, columnIndex: 0 })),
    unusedColumns: log.unusedColumns.toSorted(),
  };
}

function compare(log: Log, expected: Expected): void {
  const read = Object.fromEntries(
    log.readings.map((r) => [
      r.channel,
      { column: r.column, unit: r.unit, from: r.unitFrom, missing: r.missing },
    ]),
  );
  const wanted = Object.fromEntries(
    Object.entries(expected.channels).map(([channel, { values: _, ...rest }]) => [
      channel,
      { ...rest, missing: rest.missing ?? read[channel]?.missing },
    ]),
  );
  expect(read).toEqual(wanted);
  expect(log.notes.map((note) => note.code).toSorted()).toEqual(expected.notes.toSorted());
  // A note speaks of one or of many, never of “row(s)”, and of a second flight tells how it is read.
  for (const { text } of log.notes) expect(text).not.toMatch(/\(s\)|^1 \w+s /u);
  if (expected.parts > 1) expect(log.notes.map((n) => n.text).join(' ')).toMatch(/--part \d/u);
  expect(log.source).toMatchObject({ form: expected.form, rows: expected.rows, parts: expected.parts });
  expect(log.time.length).toBe(expected.used);
  expect(log.unusedColumns.toSorted()).toEqual(expected.unused.toSorted());
  const last = log.time.length - 1;
  for (const [channel, { values }] of Object.entries(expected.channels)) {
    const got = channel === 'time' ? log.time : log.channels[channel as ChannelName];
    const at = [0, (last + 1) >> 1, last].map((i) => got?.[i] ?? Number.NaN);
    values?.forEach((value, k) => {
      const allowed = (expected.tolerance ?? 1e-9) * Math.max(1, Math.abs(value));
      expect(Math.abs((at[k] ?? Number.NaN) - value), `${channel} ${at} for ${values}`).toBeLessThanOrEqual(
        allowed,
      );
    });
  }
  for (const channel of Object.values(log.channels)) expect(channel.length).toBe(log.time.length);
  for (let i = 1; i <= last; i++) expect(log.time[i]).toBeGreaterThan(log.time[i - 1] ?? 0);
  if (expected.events !== undefined)
    expect(log.eventTexts.map((e) => [e.time_s, e.text])).toEqual(expected.events);
  for (const [channel, step] of Object.entries(expected.resolution ?? {})) {
    expect(log.resolution[channel as ChannelName]).toBeCloseTo(step, 6);
  }
}

/** The bytes a hundred at a time. */
async function* hundreds(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += 100) yield bytes.slice(at, at + 100);
}

/** Channels whose SI unit needs no spelling in a header. */
const siUnits: Readonly<Partial<Record<ChannelName, string>>> = {
  altitude: 'm',
  speed: 'm/s',
  inertialSpeed: 'm/s',
  verticalSpeed: 'm/s',
  horizontalSpeed: 'm/s',
  flightPathAngle: 'rad',
  heading: 'rad',
  course: 'rad',
  latitude: 'rad',
  longitude: 'rad',
  downrange: 'm',
  positionX: 'm',
  positionY: 'm',
  positionZ: 'm',
  velocityX: 'm/s',
  velocityY: 'm/s',
  velocityZ: 'm/s',
  mass: 'kg',
  propellantMass: 'kg',
  throttle: '1',
  pitch: 'rad',
  roll: 'rad',
  thrust: 'N',
  drag: 'N',
  acceleration: 'm/s²',
  dynamicPressure: 'Pa',
  ambientPressure: 'Pa',
  temperature: 'K',
  mach: '1',
  angleOfAttack: 'rad',
  apoapsisAltitude: 'm',
  periapsisAltitude: 'm',
  stage: '1',
};

/** A log as a plain table in SI units, and the choices that read it. */
function exported(log: Log): { bytes: Uint8Array; map: NonNullable<Parameters<typeof readLog>[1]['map']> } {
  const names = Object.keys(log.channels) as ChannelName[];
  const columns = [
    { name: 'time_s', values: log.time },
    ...names.map((name) => ({ name, values: log.channels[name] ?? [] })),
  ];
  return {
    bytes: new TextEncoder().encode(columnsCsv(columns)),
    map: [
      { channel: 'time', column: 'time_s', unit: 's' },
      ...names.map((name) => ({ channel: name, column: name, unit: siUnits[name] ?? null })),
    ],
  };
}

/** The file with its columns in another order; null where lines cannot simply be cut. */
function shuffled(bytes: Uint8Array, separator: string | undefined): Uint8Array | null {
  if (separator === undefined) return null;
  const lines = new TextDecoder().decode(bytes).split('\n');
  const counts = lines.map((line) => line.split(separator).length);
  const width = counts.toSorted((a, b) => a - b)[counts.length >> 1] ?? 0;
  const turned = lines.map((line) => {
    const cells = line.split(separator);
    return cells.length === width ? [...cells.slice(1).reverse(), cells[0]].join(separator) : line;
  });
  return new TextEncoder().encode(turned.join('\n'));
}

test('the corpus is there', () => {
  expect(cases.length).toBeGreaterThanOrEqual(60);
});

describe.each(cases)('$file', ({ bytes, expected }) => {
  if (expected.error !== undefined) {
    test.each(['whole', 'in pieces'])('is refused %s', async (how) => {
      const read =
        how === 'whole'
          ? readLog(bytes, { name: 'x' })
          : readLogStream(hundreds(bytes), { name: 'x', totalBytes: bytes.length });
      const refused = await read.then(
        () => 'read',
        (error: unknown) => (error instanceof LossbookError ? error.code : String(error)),
      );
      expect(refused).toBe(expected.error);
    });
    return;
  }

  test('is read as expected', async () => {
    compare(await readLog(bytes, options(expected, 'flight.csv')), expected);
  });

  test('reads the same in pieces of a hundred bytes', async () => {
    const whole = await readLog(bytes, options(expected, 'flight.csv'));
    expect(await readLogStream(hundreds(bytes), options(expected, 'flight.csv'))).toEqual(whole);
    const watched = { ...options(expected, 'flight.csv'), totalBytes: bytes.length, onProgress: () => {} };
    expect(await readLogStream(new Blob([bytes]).stream(), watched)).toEqual(whole);
  });

  test('comes back the same when it is written out and read', async () => {
    const log = await readLog(bytes, options(expected, 'flight.csv'));
    const { bytes: written, map } = exported(log);
    const again = await readLog(written, { name: 'again.csv', map });
    expect([...again.time]).toEqual([...log.time]);
    expect(Object.keys(again.channels).toSorted()).toEqual(Object.keys(log.channels).toSorted());
    for (const [name, values] of Object.entries(log.channels))
      expect([...(again.channels[name as ChannelName] ?? [])], name).toEqual([...values]);
  });

  test('reads the same under another name, compressed and with its columns shuffled', async () => {
    const log = essence(await readLog(bytes, options(expected, 'flight.csv')));
    expect(essence(await readLog(bytes, options(expected, 'unknown')))).toEqual(log);
    if (bytes[0] !== 0x1f) {
      expect(essence(await readLog(new Uint8Array(gzipSync(bytes)), options(expected, 'x.json')))).toEqual(
        log,
      );
    }
    const turned = expected.map === undefined ? shuffled(bytes, expected.separator) : null;
    if (turned !== null) expect(essence(await readLog(turned, options(expected, 'flight.csv')))).toEqual(log);
  });
});
