import { expect, test } from 'vitest';
import { buildFlight } from '../../../src/flight/buildFlight.ts';
import { pitchAgainstPath } from '../../../src/flight/identify/pitchAgainstPath.ts';
import { dragAcceleration } from '../../../src/ledger/dragAcceleration.ts';
import { readLog } from '../../../src/log/readLog.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { doubtfulCard, instruments, noisyLog } from '../../noisyFlights.ts';
import { cutLog, type ReferenceName, readCardText, referenceNames } from '../../referenceFlights.ts';

const DEGREE = Math.PI / 180;

/** The angle that the path asks for, with a pitch column `off` degrees too high. */
async function asked(name: ReferenceName, log: string, card: string, off: number) {
  const text = log
    .split('\n')
    .map((line, i) => {
      const cells = line.split(',');
      return i === 0 ? line : [...cells.slice(0, 5), Number(cells[5]) + off].join(',');
    })
    .join('\n');
  const read = await readLog(new TextEncoder().encode(text), { name });
  const flight = buildFlight(read, readMission({ card: { name, text: card } }));
  return pitchAgainstPath(flight, dragAcceleration(flight))!;
}

test.each(referenceNames)('%s, clean: the bias comes back within its interval', async (name) => {
  for (const off of [0, 2, -2]) {
    const { bias_rad, sigma_rad, sense } = await asked(
      name,
      cutLog(name, undefined, 5),
      readCardText(name),
      off,
    );
    expect(sense).toBe('from-horizon');
    expect(Math.abs(bias_rad + off * DEGREE)).toBeLessThan(1.96 * sigma_rad);
    // Measured: 0.06°, where a pitch past the vertical bends the start.
    expect(1.96 * sigma_rad).toBeLessThan(0.15 * DEGREE);
  }
});

test('noisy flights with doubtful cards: 95 % intervals cover, and no estimate is drawn aside', async () => {
  const errors: number[] = [];
  let covered = 0;
  for (const name of referenceNames) {
    for (let seed = 0; seed < 5; seed++) {
      const off = [-2, -0.7, 0.4, 1.2, 2.5][seed]!;
      const found = await asked(name, noisyLog(name, instruments, 900 + seed), doubtfulCard(name, seed), off);
      const error = found.bias_rad / DEGREE + off;
      errors.push(error);
      if (Math.abs(error) < (1.96 * found.sigma_rad) / DEGREE) covered++;
    }
  }
  expect(covered / errors.length).toBeGreaterThanOrEqual(0.9);
  const mean = errors.reduce((sum, e) => sum + e, 0) / errors.length;
  // Measured: 0.00°.
  expect(Math.abs(mean)).toBeLessThan(0.01);
});
