import { expect, test } from 'vitest';
import type { QualityNote } from '../../src/log/types.ts';
import { settleVerticalSign } from '../../src/log/verticalSign.ts';
import { inventedAscent } from './inventedAscent.ts';

const ascent = inventedAscent(300, 1);
const time = Float64Array.from(ascent, (x) => x.time_s);
const altitude = Float64Array.from(ascent, (x) => x.altitude_m);
const up = Float64Array.from(ascent, (x) => x.verticalSpeed_m_s);

test.each([
  ['upward', up, up, 0],
  ['downward', up.map((x) => -x), up, 1],
  ['nothing', new Float64Array(300), new Float64Array(300), 0],
])('a vertical speed that counts %s', (_, written, wanted, noted) => {
  const channels = { altitude, verticalSpeed: written };
  const notes: QualityNote[] = [];
  settleVerticalSign(time, channels, notes);
  expect([[...channels.verticalSpeed].map(Math.abs), notes.length]).toEqual([
    [...wanted].map(Math.abs),
    noted,
  ]);
  expect(channels.verticalSpeed[100]).toBe(wanted[100]);
});
