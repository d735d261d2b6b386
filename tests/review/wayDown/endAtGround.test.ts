import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import { sampleText } from '../../wayDownFlights.ts';

/** An airless ball; a body thrown up from it that brakes or not before the log ends at the ground. */
const g = 1.6;
const radius_m = 1e7;
const airless = {
  name: 'Threnby',
  gravitationalParameter_m3_s2: g * radius_m ** 2,
  radius_m,
  rotationPeriod_s: 1e9,
};

/** Rows at 10 Hz of `pieces` of constant acceleration, one after another from rest at the ground. */
function rowsOf(pieces: readonly (readonly [acceleration_m_s2: number, duration_s: number])[]): string[] {
  const rows = ['time_s,altitude_m,speed_m_s,vertical_speed_m_s'];
  let [t, h, v] = [0, 0, 0];
  for (const [a, duration_s] of pieces) {
    const n = Math.round(duration_s * 10);
    for (let k = 0; k < n; k++) {
      rows.push([t, h, Math.abs(v), v].map((x) => x.toFixed(3)).join(','));
      h += v * 0.1 + (a * 0.01) / 2;
      v += a * 0.1;
      t += 0.1;
    }
  }
  return rows;
}

async function wayDown(rows: readonly string[], world: object = airless) {
  const { review } = await reviewFlight({
    log: { name: 'hop.csv', bytes: new TextEncoder().encode(rows.join('\n')) },
    card: { name: 'hop.mission.json', text: JSON.stringify({ world }) },
  });
  return review.return;
}

describe('a log that ends at the ground', () => {
  test('while braking: the speed there, not that of half a second before', async () => {
    // Up under 4.4 m/s² for 8 s, a coast, then from 150 m on an even braking to 2 m/s.
    const up = rowsOf([
      [4.4, 8],
      [-g, 52],
    ]);
    const last = up.findIndex((row, i) => i > 300 && Number(row.split(',')[1]) < 150);
    const rows = up.slice(0, last);
    const [, height, speed] = rows.at(-1)!.split(',').map(Number);
    const way = await wayDown([...rows, ...brake(height!, speed!, rows.length)]);
    expect(way.text).toMatch(/log ends at the ground/u);
    expect(Math.abs(way.touchdownSpeed_m_s.value! - 2)).toBeLessThan(0.3);
  });

  test('and falls fast has crashed', async () => {
    const rows = rowsOf([
      [20, 10],
      [-g, 400],
    ]);
    const end = rows.findIndex((row, i) => i > 200 && Number(row.split(',')[1]) < 0);
    const way = await wayDown(rows.slice(0, end));
    expect(way.code).toBe('lost');
    // Thrown up at 200 m/s from 1,000 m: √(200² + 2·1.6·1000) at the ground.
    expect(way.text).toBe(
      `The log ends at the ground, falling at ${Math.sqrt(200 ** 2 + 2 * g * 1000).toFixed(0)} m/s: a crash.`,
    );
  });
});

/** Rows that brake evenly from a height and speed to 2 m/s at the ground. */
function brake(height_m: number, speed_m_s: number, count: number): string[] {
  const a = (speed_m_s ** 2 - 2 ** 2) / (2 * height_m);
  const rows: string[] = [];
  let [h, v, k] = [height_m, speed_m_s, 0];
  while (v > 2 && h > 0) {
    h -= v * 0.1 - (a * 0.01) / 2;
    v -= a * 0.1;
    rows.push([(count - 1 + k) / 10, h, v, -v].map((x) => x.toFixed(3)).join(','));
    k++;
  }
  return rows;
}

test('who never was in orbit is not advised on the deorbit burn', async () => {
  const { review } = await reviewFlight({
    log: { name: 'a.csv', bytes: new TextEncoder().encode(sampleText('bobstay-teasel-2.csv')) },
    card: { name: 'a.mission.json', text: sampleText('bobstay-teasel-2.mission.json') },
  });
  const steep = review.findings.find((f) => f.code === 'entry-too-steep')!;
  expect(steep.advice).toContain('without having been in orbit');
  expect(steep.advice).not.toContain('deorbit');
});
