import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { pitchSense } from '../../src/log/pitchSense.ts';
import { readLog } from '../../src/log/readLog.ts';
import { settleSignedSpeed } from '../../src/log/signedSpeed.ts';
import { speedFrame } from '../../src/log/speedFrame.ts';
import type { ChannelReading, QualityNote } from '../../src/log/types.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const of = (pick: (x: (typeof ascent)[0]) => number, from = 0): Float64Array =>
  Float64Array.from(ascent.slice(from), pick);

describe('speedFrame', () => {
  test('at rest on the pad: over the ground', () => {
    expect(
      speedFrame(
        of((x) => x.time_s),
        of((x) => x.altitude_m),
        of((x) => x.speed_m_s),
      )?.frame,
    ).toBe('ground');
  });

  test('hundreds of m/s on the pad: inertial', () => {
    const inertial = of((x) => Math.hypot(x.verticalSpeed_m_s, x.horizontalSpeed_m_s + 409));
    expect(
      speedFrame(
        of((x) => x.time_s),
        of((x) => x.altitude_m),
        inertial,
      )?.frame,
    ).toBe('inertial');
  });

  test('a log that starts in flight tells nothing', () => {
    const late = (pick: (x: (typeof ascent)[0]) => number): Float64Array => of(pick, 60);
    expect(
      speedFrame(
        late((x) => x.time_s),
        late((x) => x.altitude_m),
        late((x) => x.speed_m_s),
      ),
    ).toBeNull();
  });
});

describe('pitchSense', () => {
  const sense = (pitch: (x: (typeof ascent)[0]) => number, from = 0): string =>
    pitchSense(
      of((x) => x.time_s, from),
      of((x) => x.altitude_m, from),
      of((x) => x.speed_m_s, from),
      of((x) => (pitch(x) * Math.PI) / 180, from),
    ).from;

  test('90° on the pad counts from the horizon, 0° from the vertical', () => {
    expect(sense((x) => x.pitch_deg)).toBe('horizon');
    expect(sense((x) => 90 - x.pitch_deg)).toBe('vertical');
  });

  test('in flight the path tells', async () => {
    const bytes = readFileSync(new URL('../flights/osselby-nominal.csv', import.meta.url));
    const { time, channels } = await readLog(new Uint8Array(bytes), { name: 'osselby-nominal.csv' });
    const late = (values: Float64Array | undefined): Float64Array =>
      (values ?? new Float64Array(0)).slice(300, 3000);
    const [h, v, pitch] = [late(channels.altitude), late(channels.speed), late(channels.pitch)];
    expect(pitchSense(late(time), h, v, pitch).from).toBe('horizon');
    expect(
      pitchSense(
        late(time),
        h,
        v,
        pitch.map((x) => Math.PI / 2 - x),
      ).from,
    ).toBe('vertical');
  });

  test('a pitch that stays at nothing is left alone', () => {
    expect(sense(() => 0)).toBe('horizon');
  });
});

test('a speed with a sign is a vertical speed', () => {
  const reading: ChannelReading = {
    channel: 'speed',
    column: 'v',
    columnIndex: 2,
    unit: 'm/s',
    factor: 1,
    offset: 0,
    unitFrom: 'header',
    confidence: 0.9,
    reason: 'The header says “v”.',
    missing: 0,
  };
  const channels = { speed: Float64Array.from({ length: 50 }, (_, i) => 100 - 5 * i) };
  const readings = [reading];
  const notes: QualityNote[] = [];
  settleSignedSpeed(channels, readings, notes);
  expect(readings.map((r) => r.channel)).toEqual(['speed', 'verticalSpeed']);
  expect([channels.speed[49], notes[0]?.code]).toEqual([145, 'speed-signed']);
  const straight = { speed: Float64Array.from({ length: 50 }, (_, i) => i - 0.3) };
  settleSignedSpeed(straight, [reading], notes);
  expect([straight.speed[0], notes.length]).toEqual([-0.3, 1]);
});
