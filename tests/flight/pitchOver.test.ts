import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { findEvents } from '../../src/flight/events.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

async function pitchOver(log: string, card?: string): Promise<number | undefined> {
  const read = await readLog(new TextEncoder().encode(log), { name: 'log' });
  const mission = readMission(
    card === undefined ? { world: 'earth' } : { card: { name: 'card', text: card } },
  );
  return findEvents(buildFlight(read, mission)).find((e) => e.name === 'pitch-over')?.time_s;
}

test('a sounding rocket’s turn over its peak is no pitch-over', async () => {
  // Straight up at 15 m/s² for 40 s, then a fall free of drag; a breath of wind carries it 2 m/s aside.
  const rows = ['time_s,altitude_m,speed_m_s'];
  for (let k = 0; k <= 1800; k++) {
    const t = k / 10;
    const [up, free] = [Math.min(t, 40), Math.max(0, t - 40)];
    const v = 15 * up - 9.7 * free;
    const h = 7.5 * up ** 2 + 15 * up * free - 4.85 * free ** 2;
    if (h >= 0) rows.push([t, h, Math.hypot(v, free > 0 ? 2 : 0)].map((x) => x.toFixed(3)).join(','));
  }
  expect(await pitchOver(rows.join('\n'))).toBeUndefined();
});

test('the pilot’s is seen in the path where the log has no pitch', async () => {
  const card = readCardText('osselby-nominal');
  const seen = await pitchOver(
    cutLog('osselby-nominal', ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg']),
    card,
  );
  const logged = await pitchOver(cutLog('osselby-nominal'), card);
  // The path follows the nose, some seconds behind.
  expect(seen! - logged!).toBeGreaterThanOrEqual(0);
  expect(seen! - logged!).toBeLessThan(15);
});
