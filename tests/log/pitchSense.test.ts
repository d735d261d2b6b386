import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { pitchSense } from '../../src/log/pitchSense.ts';
import { readLog } from '../../src/log/readLog.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const of = (pick: (x: (typeof ascent)[0]) => number, from = 0): Float64Array =>
  Float64Array.from(ascent.slice(from), pick);

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
