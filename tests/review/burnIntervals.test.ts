import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Figure } from '../../src/review/types.ts';

async function reviewOf(path: string) {
  const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url));
  const { review } = await reviewFlight({
    log: { name: 'flight.csv', bytes: read(`${path}.csv`) },
    card: { name: 'flight.mission.json', text: read(`${path}.mission.json`).toString() },
  });
  return review;
}

const half = ({ low, high }: Figure) => (high! - low!) / 2;
const rootSum = (halves: readonly number[]) => Math.hypot(...halves);

describe('a burn’s delta-v is as sure as the ledger’s ideal, which is their sum', () => {
  test.each(['sample-logs/bobstay-medlar-4', 'sample-logs/bobstay-teasel-1', 'tests/flights/earth-nominal'])(
    '%s: masses at the edges, by the card’s engines',
    async (path) => {
      const { burns, ledger } = await reviewOf(path);
      const ascent = burns.filter((b) => b.ascent).map((b) => b.deltaV);
      expect(ascent.reduce((sum, f) => sum + f.value!, 0)).toBeCloseTo(ledger.ground.ideal.value!, 1);
      expect(half(ledger.ground.ideal)).toBeGreaterThan(0);
      // Edges err apart from each other: squares add up.
      expect(rootSum(ascent.map(half)) / half(ledger.ground.ideal)).toBeCloseTo(1, 6);
    },
  );

  test('with engines identified from the log their error is in it', async () => {
    const { burns, vehicle } = await reviewOf('sample-logs/homeward-tansy-1');
    expect(vehicle?.inBooks).toBe('identified');
    const [first] = burns;
    const isp = vehicle!.stages[0]!.isp_s;
    expect(first!.deltaV.basis).toBe('identified');
    // δ(Δv)/Δv = δIsp/Isp, and the edges' masses on top.
    expect(half(first!.deltaV) / first!.deltaV.value!).toBeGreaterThanOrEqual(
      (half(isp) / isp.value!) * 0.999,
    );
    expect(half(first!.deltaV)).toBeLessThan(0.001 * first!.deltaV.value!);
  });
});
