import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blockMeans } from '../../src/flight/blockMeans.ts';
import type { ChannelName, Log } from '../../src/log/types.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { denseLog } from '../bench/denseLog.ts';

const ROWS = 100_000;
const RATE_HZ = 1000;

function logOf(channels: Partial<Record<ChannelName, Float64Array>>, rows = ROWS): Log {
  return {
    source: { name: 'dense', bytes: 0, form: 'delimited', rows, part: 1, parts: 1 },
    time: Float64Array.from({ length: rows }, (_, i) => i / RATE_HZ),
    channels,
    eventTexts: [],
    readings: [],
    unusedColumns: [],
    notes: [],
    resolution: {},
  };
}
const channel = (f: (i: number) => number): Float64Array =>
  Float64Array.from({ length: ROWS }, (_, i) => f(i));

describe('means of blocks of rows', () => {
  test('a line stays itself, at a fraction of the rows', () => {
    const { log, note } = blockMeans(logOf({ speed: channel((i) => 3 + 0.25 * i) }));
    expect(log.time.length).toBeLessThan(ROWS / 9);
    expect(log.time.length).toBeGreaterThanOrEqual(ROWS / 10);
    expect(note?.code).toBe('rows-averaged');
    log.time.forEach((t, b) => {
      expect(log.channels.speed![b]).toBeCloseTo(3 + 0.25 * RATE_HZ * t, 7);
    });
  });

  test('both sides of a jump stay as logged, and no mean reaches over it', () => {
    const at = 43_217;
    const { log } = blockMeans(
      logOf({
        mass: channel((i) => 50_000 - 0.2 * i - (i >= at ? 2000 : 0)),
        throttle: channel((i) => (i >= at ? 0 : 1)),
      }),
    );
    const b = log.time.indexOf(at / RATE_HZ);
    expect(log.time[b - 1]).toBe((at - 1) / RATE_HZ);
    expect(log.channels.mass![b - 1]).toBe(50_000 - 0.2 * (at - 1));
    expect(log.channels.mass![b]).toBe(48_000 - 0.2 * at);
    expect(new Set(log.channels.throttle)).toEqual(new Set([0, 1]));
  });

  test('an angle that passes from 360° to 0° is not averaged across', () => {
    const turn = 2 * Math.PI;
    const { log } = blockMeans(logOf({ heading: channel((i) => (6.2 + i * 1e-5) % turn) }));
    log.time.forEach((t, b) => {
      const off = log.channels.heading![b]! - ((6.2 + RATE_HZ * t * 1e-5) % turn);
      expect(Math.abs(off)).toBeLessThan(1e-9);
    });
  });

  test('noise falls with the root of the block; a value that is missing stays missing', () => {
    let state = 1;
    const uniform = (): number => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647 - 0.5;
    };
    const gone = (i: number): boolean => i >= 30_000 && i < 40_000;
    const { log } = blockMeans(
      logOf({ speed: channel(uniform), altitude: channel((i) => (gone(i) ? Number.NaN : i)) }),
    );
    const speed = log.channels.speed!;
    // Ten rows a block: variance 1/12/10, known from 10,000 blocks to 1.4 %.
    expect(speed.reduce((sum, v) => sum + v * v, 0) / speed.length).toBeCloseTo(1 / 120, 3);
    log.time.forEach((t, b) => {
      expect(Number.isNaN(log.channels.altitude![b]!)).toBe(gone(Math.round(t * RATE_HZ)));
    });
  });

  test('a log no denser than its flight moves is left alone', () => {
    const short = logOf({}, 30_000);
    expect(blockMeans(short)).toEqual({ log: short, note: null });
    const slow = { ...logOf({}), time: channel((i) => i / 20) };
    expect(blockMeans(slow).log).toBe(slow);
  });
});

test('a reference flight written down 112 times a second keeps its true ledger', async () => {
  const card = 'tests/flights/osselby-short.mission.json';
  const truth = JSON.parse(readFileSync('tests/flights/osselby-short.truth.json', 'utf8')) as {
    ground: Record<string, number>;
  };
  const { review } = await reviewFlight({
    log: { name: 'dense.csv', bytes: new TextEncoder().encode(denseLog(60_000)) },
    card: { name: card, text: readFileSync(card, 'utf8') },
  });
  expect(review.quality.map((q) => q.code)).toContain('rows-averaged');
  const { ideal, backPressure, steering, drag, gravity } = review.ledger.ground;
  // Straight lines between the flight's own rows cost steering 0.07 m/s, with and without averaging.
  for (const [figure, value] of [
    [ideal, truth.ground.ideal],
    [backPressure, truth.ground.pressure],
    [steering, truth.ground.steering],
    [drag, truth.ground.drag],
    [gravity, truth.ground.gravity],
  ] as const) {
    expect(Math.abs(figure.value! - value!)).toBeLessThan(0.1);
  }
});
