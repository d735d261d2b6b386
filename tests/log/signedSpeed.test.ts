import { expect, test } from 'vitest';
import { settleSignedSpeed } from '../../src/log/signedSpeed.ts';
import type { ChannelReading, QualityNote } from '../../src/log/types.ts';

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
