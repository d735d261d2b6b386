import { describe, expect, test } from 'vitest';
import { buildFlight } from '../../../src/flight/buildFlight.ts';
import type { Flight } from '../../../src/flight/types.ts';
import { ascentSpan } from '../../../src/ledger/ascentEnd.ts';
import { readLog } from '../../../src/log/readLog.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { frameLedger } from '../../../src/review/ledgerFigures.ts';
import { vehicleFigures } from '../../../src/review/vehicleFigures.ts';
import { entryNames, entryOfTruth, NEGLIGIBLE_M_S } from '../../ledgerErrors.ts';
import { doubtfulCard, instruments, noisyLog } from '../../noisyFlights.ts';
import {
  cutLog,
  type ReferenceName,
  readCardText,
  readTruth,
  referenceNames,
} from '../../referenceFlights.ts';

type Card = {
  vehicle?: {
    stages: { ispVacuum_s?: number; exitArea_m2?: number; referenceArea_m2?: number }[];
  };
};

/** The flight's six channels at 5 Hz with its card changed. */
async function flown(name: ReferenceName, change: (card: Card) => void): Promise<Flight> {
  const card: Card = JSON.parse(readCardText(name));
  change(card);
  const log = await readLog(new TextEncoder().encode(cutLog(name, undefined, 2)), { name });
  return buildFlight(log, readMission({ card: { name, text: JSON.stringify(card) } }));
}

const upperIsp_s = (name: ReferenceName): number => (name.startsWith('earth') ? 348 : 335);

describe.each(referenceNames)('%s with no vehicle in the card', (name) => {
  test('the upper stage’s specific impulse, the ledger, and intervals that cover the truth', async () => {
    const flight = await flown(name, (card) => {
      delete card.vehicle;
    });
    expect(flight.identified?.reason).toBe('card-silent');
    const review = vehicleFigures(flight)!;
    const upper = review.stages.find((s) => s.name.includes('2')) ?? review.stages[1]!;
    // Measured: within 0.001 %. Asked for: 0.1 %.
    expect(Math.abs(upper.isp_s.value! / upperIsp_s(name) - 1)).toBeLessThan(5e-5);
    expect(upper.exitArea_m2.basis).toBe('assumed');
    expect(review.unseparated.some((text) => text.includes('no exit area'))).toBe(true);
    const truth = readTruth(name).ground;
    const { entries } = frameLedger(flight, ascentSpan(flight), 'ground');
    for (const entry of entryNames) {
      const key = entryOfTruth[entry];
      const exact = key === null ? 0 : truth[key]!;
      const figure = entries[entry];
      // Measured: within 0.2 m/s. Asked for: 5.
      expect(Math.abs(figure.value! - exact), entry).toBeLessThan(0.6);
      const covered = figure.low! <= exact && exact <= figure.high!;
      expect(covered || Math.abs(figure.value! - exact) < NEGLIGIBLE_M_S, entry).toBe(true);
    }
    expect(entries.ideal.basis).toBe('identified');
    expect(entries.gravity.basis).toBe('derived');
  });
});

describe('the card and the log', () => {
  test('a true card holds, and the identified values agree with it', async () => {
    const flight = await flown('osselby-nominal', () => {});
    expect(flight.identified?.reason).toBe('card-holds');
    expect(flight.identified?.adopted).toBe(false);
    expect(flight.vehicle).toBe(flight.mission.vehicle);
    const review = vehicleFigures(flight)!;
    expect(review.inBooks).toBe('card');
    expect(review.stages[0]!.isp_s.value!).toBeCloseTo(285, 1);
    // Measured: 700,000 N within 20.
    expect(Math.abs(review.stages[0]!.thrustVacuum_N.value! - 700000)).toBeLessThan(100);
    expect(Math.abs(review.stages[0]!.exitArea_m2.value! - 0.62)).toBeLessThan(0.005);
  });

  test('a card that is 2 % off in Isp is overruled, and the books are right again', async () => {
    const flight = await flown('osselby-nominal', (card) => {
      card.vehicle!.stages[0]!.ispVacuum_s = 285 * 1.02;
      card.vehicle!.stages[1]!.ispVacuum_s = 335 * 0.98;
    });
    expect(flight.identified?.reason).toBe('card-contradicted');
    expect(flight.vehicle!.stages[1]!.ispVacuum_s).toBeCloseTo(335, 1);
    const { entries } = frameLedger(flight, ascentSpan(flight), 'ground');
    expect(Math.abs(entries.ideal.value! - readTruth('osselby-nominal').ground.ideal!)).toBeLessThan(0.3);
  });

  test('what a card gives stands while only what it lacks is looked for', async () => {
    const flight = await flown('osselby-nominal', (card) => {
      delete card.vehicle!.stages[0]!.exitArea_m2;
    });
    expect(flight.identified?.reason).toBe('card-silent');
    const { engines, factors } = flight.identified!.fit;
    expect(Math.abs(factors[0]! - 1)).toBeLessThan(1e-4);
    // The one unknown: 0.62 m² within 2 %.
    expect(Math.abs(engines[0]!.areaReference_m2 * factors[engines.length]! - 0.62)).toBeLessThan(0.012);
  });

  test('without pitch nothing is identified', async () => {
    const card = JSON.parse(readCardText('osselby-nominal'));
    delete card.vehicle;
    const columns = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle'];
    const log = await readLog(new TextEncoder().encode(cutLog('osselby-nominal', columns, 5)), { name: 'x' });
    const flight = buildFlight(log, readMission({ card: { name: 'c', text: JSON.stringify(card) } }));
    expect(flight.identified).toBeNull();
    expect(vehicleFigures(flight)).toBeNull();
  });

  /** Half-widths and errors of the booster's values without a vehicle on the card, thrust logged `scale` times. */
  const withThrust = async (scale: number | null) => {
    const columns = ['time_s', 'altitude_m', 'speed_m_s', 'mass_kg', 'throttle', 'pitch_deg'];
    const text = cutLog('osselby-nominal', scale === null ? columns : [...columns, 'thrust_N'], 2)
      .split('\n')
      .map((line, i) => {
        const cells = line.split(',');
        if (i === 0 || scale === null) return line;
        return [...cells.slice(0, 6), Number(cells[6]) * scale].join(',');
      })
      .join('\n');
    const log = await readLog(new TextEncoder().encode(text), { name: 'x' });
    const card = JSON.parse(readCardText('osselby-nominal'));
    delete card.vehicle;
    const flight = buildFlight(log, readMission({ card: { name: 'c', text: JSON.stringify(card) } }));
    const { drag } = frameLedger(flight, ascentSpan(flight), 'ground').entries;
    return { vehicle: vehicleFigures(flight)!, dragHalf: (drag.high! - drag.low!) / 2 };
  };

  test('what trades is told with the combination that is fixed; a logged thrust tells them apart', async () => {
    const silent = await withThrust(null);
    const joined = silent.vehicle.unseparated.find((text) => text.includes('trade against each other'))!;
    const [, value, half] = joined.match(
      /ideal less back pressure and drag, ([\d,.]+) m\/s, .*?± ([\d.]+) m/,
    )!;
    const { ideal, pressure, drag } = readTruth('osselby-nominal').ground;
    expect(Math.abs(Number(value!.replace(',', '')) - (ideal! - pressure! - drag!))).toBeLessThan(
      Number(half),
    );
    expect(Number(half)).toBeLessThan(silent.dragHalf / 4);
    const told = await withThrust(1);
    expect(told.vehicle.unseparated.join()).not.toContain('trade against');
    // Measured: ± 0.55 m/s instead of ± 1.05.
    expect(told.dragHalf).toBeLessThan(0.6 * silent.dragHalf);
  });

  test('a thrust channel 1.5 % too high does not lead the specific impulse astray', async () => {
    const { vehicle } = await withThrust(1.015);
    // Measured: 0.001 %.
    expect(Math.abs(vehicle.stages[0]!.isp_s.value! / 285 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(vehicle.stages[1]!.isp_s.value! / 335 - 1)).toBeLessThan(1e-3);
  });
});

test('through a hand pilot’s instruments the interval of an upper stage’s specific impulse covers the truth', async () => {
  let covered = 0;
  let count = 0;
  const squares: number[] = [];
  for (const name of referenceNames) {
    for (let seed = 500; seed < 506; seed++) {
      const log = await readLog(new TextEncoder().encode(noisyLog(name, instruments, seed)), { name });
      const flight = buildFlight(log, readMission({ card: { name, text: doubtfulCard(name, seed) } }));
      const isp = vehicleFigures(flight)!.stages[1]!.isp_s;
      const truth = upperIsp_s(name);
      if (isp.low! <= truth && truth <= isp.high!) covered++;
      squares.push((((isp.value! - truth) / (isp.high! - isp.low!)) * 2 * 1.96) ** 2);
      count++;
    }
  }
  expect(covered / count).toBeGreaterThanOrEqual(0.9);
  // Errors as large as the interval says: one sigma on the root mean square, neither far less nor more.
  const sigmas = Math.sqrt(squares.reduce((a, b) => a + b) / count);
  expect(sigmas).toBeGreaterThan(0.6);
  expect(sigmas).toBeLessThan(1.3);
});
