import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';

/** Findings of a synthetic flight of the repository, judged by another target. */
async function findingsOf(path: string, target: Record<string, unknown>) {
  const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url));
  const card = JSON.parse(read(`${path}.mission.json`).toString());
  const { review } = await reviewFlight({
    log: { name: 'flight.csv', bytes: read(`${path}.csv`) },
    card: { name: 'flight.mission.json', text: JSON.stringify({ ...card, target }) },
  });
  return review.findings;
}

const circle = (altitude_m: number) => ({ apoapsisAltitude_m: altitude_m, periapsisAltitude_m: altitude_m });

describe('what a pilot is told about the moment of cutoff', () => {
  test('an orbit that lies over its target all round was not left too early', async () => {
    const found = await findingsOf('tests/flights/osselby-nominal', circle(112_000));
    expect(found.map((f) => f.code)).toContain('cutoff-late');
    expect(found.map((f) => f.code)).not.toContain('cutoff-early');
  });

  test('the figures of a late cutoff add up to its cost', async () => {
    const found = await findingsOf('sample-logs/bobstay-medlar-2', circle(112_000));
    const late = found.find((f) => f.code === 'cutoff-late')!;
    const told =
      /only (\d+) m\/s were to go; after it (\d+) m\/s were burnt .*, and (\d+) m\/s to go were left/u;
    const [before, burnt, after] = told.exec(late.evidence)!.slice(1).map(Number);
    expect(Math.abs(burnt! + after! - before! - late.cost_m_s!.value!)).toBeLessThanOrEqual(1.5);
    expect(late.advice).toContain('when the lower apsis reaches it');
  });

  test('where the apoapsis was there long before the periapsis, it is the apoapsis to watch', async () => {
    const found = await findingsOf('tests/review/flights/clean-relit', circle(125_000));
    const late = found.find((f) => f.code === 'cutoff-late')!;
    expect(late.advice).toMatch(/^Cut off when the apoapsis reaches the target, coast up to it/u);
  });

  test('for a peak altitude the apoapsis is to be watched', async () => {
    const found = await findingsOf('sample-logs/bobstay-teasel-1', {
      kind: 'suborbital',
      peakAltitude_m: 400_000,
      tolerance_m: 1000,
    });
    const early = found.find((f) => f.code === 'cutoff-early')!;
    expect(early.evidence).toMatch(/apoapsis was at \d+ km/u);
    expect(early.advice).toContain('watch the apoapsis');
    expect(early.advice).not.toContain('periapsis');
  });
});
