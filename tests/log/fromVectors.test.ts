import { describe, expect, test } from 'vitest';
import { fillFromVectors } from '../../src/log/fromVectors.ts';
import type { ChannelName, ChannelReading, QualityNote } from '../../src/log/types.ts';
import { EARTH } from '../../src/world/bodies.ts';

const time = Float64Array.from({ length: 50 }, (_, i) => i);

function fill(channels: Partial<Record<ChannelName, Float64Array>>) {
  const filled = { ...channels };
  const readings = (Object.keys(channels) as ChannelName[]).map(
    (channel, columnIndex): ChannelReading => ({
      channel,
      column: channel,
      columnIndex,
      unit: 'm',
      factor: 1,
      offset: 0,
      unitFrom: 'header',
      confidence: 0.9,
      reason: 'The header says so.',
      missing: 0,
    }),
  );
  const notes: QualityNote[] = [];
  fillFromVectors(time, filled, readings, notes);
  return { filled, readings, notes };
}

const zero = new Float64Array(50);

describe('fillFromVectors', () => {
  test('from the pad the axis of the first motion is up, also where it points down', () => {
    const down = time.map((t) => -5 * t * t);
    const { filled } = fill({
      positionX: time.map((t) => 0.01 * t),
      positionY: zero,
      positionZ: down,
      velocityX: zero,
      velocityY: zero,
      velocityZ: time.map((t) => -10 * t),
    });
    expect(filled.altitude?.[10]).toBe(500);
    expect(filled.verticalSpeed?.[10]).toBe(100);
    expect(filled.speed?.[10]).toBe(100);
  });

  test('from the centre, at rest: the pad is altitude nothing', () => {
    const { filled, notes } = fill({
      positionX: time.map((t) => 3_390_500 + 5 * t * t),
      positionY: zero,
      positionZ: zero,
      velocityX: time.map((t) => 10 * t),
      velocityY: zero,
      velocityZ: zero,
    });
    expect(filled.altitude?.[10]).toBe(500);
    expect(notes[0]?.text).toContain('3390.500 km, where the log begins on the ground');
  });

  test('from the centre, in orbit: the radius of a known world', () => {
    const { filled, notes } = fill({
      positionX: time.map(() => EARTH.radius_m + 200_000),
      positionY: zero,
      positionZ: zero,
      velocityX: zero,
      velocityY: time.map(() => 7784),
      velocityZ: zero,
    });
    expect(filled.altitude?.[0]).toBeCloseTo(200_000, 6);
    expect(notes.map((n) => n.code)).toEqual(['altitude-from-position']);
  });

  test('what the log has itself is kept', () => {
    const { filled, readings } = fill({ altitude: zero, speed: zero, positionX: time, positionY: zero });
    expect([filled.altitude, filled.speed, readings.length]).toEqual([zero, zero, 4]);
  });
});
