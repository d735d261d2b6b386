import { expect, test } from 'vitest';
import { readLog } from '../../src/log/readLog.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

const name = 'osselby-nominal';
const [header, ...all] = cutLog(name, undefined, 5).split('\n');
const flown = all.filter((row) => row !== '' && Number.parseFloat(row) <= 60);

/** Rows after the last, the state standing still where it was, the columns named set to zero. */
function after(count: number, zero: readonly string[]): string[] {
  const names = header!.split(',');
  const cells = flown.at(-1)!.split(',');
  return Array.from({ length: count }, (_, k) =>
    names
      .map((column, i) =>
        i === 0 ? (Number(cells[0]) + 0.2 * (k + 1)).toFixed(1) : zero.includes(column) ? '0' : cells[i],
      )
      .join(','),
  );
}

const bytes = (rows: readonly string[]) => new TextEncoder().encode([header, ...rows].join('\n'));

test('rows without any mass at the end are left out, with a note of which', async () => {
  const log = await readLog(bytes([...flown, ...after(15, ['mass_kg', 'speed_m_s'])]), { name: 'boom.csv' });
  expect(log.time.length).toBe(flown.length);
  const note = log.notes.find((n) => n.code === 'vehicle-gone')!;
  expect(note).toMatchObject({ count: 15, rows: [flown.length + 1, flown.length + 15] });
  expect(log.time).toEqual((await readLog(bytes(flown), { name: 'whole.csv' })).time);
});

test('a column of zeros from the start, or a zero between, ends no flight', async () => {
  const zeros = flown.map((row) => row.split(',').with(header!.split(',').indexOf('mass_kg'), '0').join(','));
  const empty = await readLog(bytes(zeros), { name: 'no-mass.csv' });
  expect(empty.time.length).toBe(flown.length);
  const between = [...flown.slice(0, 100), zeros[100]!, ...flown.slice(101)];
  expect((await readLog(bytes(between), { name: 'x.csv' })).time.length).toBe(flown.length);
});

test('a flight that blew up is lost in flight, not out of thrust with stages unlit', async () => {
  const { review } = await reviewFlight({
    log: { name: 'boom.csv', bytes: bytes([...flown, ...after(15, ['mass_kg', 'speed_m_s'])]) },
    card: { name: 'card', text: readCardText(name) },
  });
  expect(review.verdict.code).toBe('suborbital-lost-in-flight');
  expect(Math.abs(review.ledger.ground.unexplained.value!)).toBeLessThan(0.5);
});
