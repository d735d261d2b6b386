import { expect, test } from 'vitest';
import { ascentSpan } from '../../../src/ledger/ascentEnd.ts';
import { orbitFindings } from '../../../src/review/orbitWork/findings.ts';
import { orbitWork } from '../../../src/review/orbitWork/orbitWork.ts';
import { reviewFlight } from '../../../src/review/reviewFlight.ts';
import { cutLog, readCardText } from '../../referenceFlights.ts';
import { flightOf, onlyColumns, sampleText } from '../../wayDownFlights.ts';

const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');

async function workOf(log: string) {
  const flight = await flightOf(log, card);
  return orbitWork(flight, ascentSpan(flight));
}

test('spent is optimum, place and length together', async () => {
  for (const burn of (await workOf(text)).burns) {
    const sum = burn.optimum_m_s.value! + burn.placeLoss_m_s.value! + burn.finiteBurnLoss_m_s.value!;
    expect(sum).toBeCloseTo(burn.deltaV_m_s.value!, 9);
    expect(burn.efficiency.value!).toBeLessThanOrEqual(1.001);
    // Burns of seconds in an orbit of 75 minutes lose nothing to speak of: measured −0.014 to 0.033 m/s.
    expect(burn.finiteBurnLoss_m_s.value!).toBeLessThan(0.06);
    expect(burn.finiteBurnLoss_m_s.value!).toBeGreaterThan(-0.03);
  }
});

test('a log without directions says that it cannot show a turn of the plane', async () => {
  const six = onlyColumns(text, [
    'Time (s)',
    'Altitude (m)',
    'Speed (m/s)',
    'Mass (kg)',
    'Throttle (%)',
    'Pitch (°)',
  ]);
  const work = await workOf(six);
  expect(work.burns.map((b) => b.kind)).toEqual(['raise', 'circularise', 'plane-change', 'deorbit']);
  const turn = work.burns[2]!;
  expect(turn.optimum_m_s.basis).toBe('unavailable');
  expect(turn.text).toContain('cannot show');
  expect(work.burns[1]!.placeLoss_m_s.value!).toBeCloseTo(12, 0);
  expect(orbitFindings(work).length).toBe(1);
});

test('altitude and speed alone still tell what the burns did, and what they would have needed', async () => {
  const work = await workOf(onlyColumns(text, ['Time (s)', 'Altitude (m)', 'Speed (m/s)']));
  expect(work.burns.map((b) => b.kind)).toEqual(['raise', 'circularise', 'deorbit']);
  expect(work.burns[0]!.deltaV_m_s.reason).toContain('engine');
  expect(work.burns[0]!.optimum_m_s.value!).toBeCloseTo(34.4, 0);
  expect(orbitFindings(work)).toEqual([]);
});

test('a log that begins in orbit has orbit work, and no faults of an ascent', async () => {
  const [head, ...rows] = text.trimEnd().split('\n');
  const later = [head, ...rows.filter((row) => Number(row.split(',')[0]) >= 900)].join('\n');
  const { review } = await reviewFlight({
    log: { name: 'later.csv', bytes: new TextEncoder().encode(later) },
    card: { name: 'card', text: card },
  });
  expect(review.verdict.code).toBe('started-in-orbit');
  expect(review.orbitWork.history[0]!.after).toBe('start of the log');
  expect(review.orbitWork.burns.length).toBe(4);
  expect(review.findings.map((f) => f.code)).toEqual(['orbit-burn-place', 'deorbit-place']);
  expect(review.phases.map((p) => p.name)).toEqual(
    expect.arrayContaining(['orbit', 'deorbit', 'coast', 'entry']),
  );
});

test('an ascent alone has a history of one orbit and no work', async () => {
  const flight = await flightOf(cutLog('osselby-nominal'), readCardText('osselby-nominal'));
  const work = await orbitWork(flight, ascentSpan(flight));
  expect(work.burns).toEqual([]);
  expect(work.history.length).toBe(1);
  expect(work.deltaV_m_s.basis).toBe('unavailable');
});
