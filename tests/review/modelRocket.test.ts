import { expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';

/** A model rocket flown in small Euler steps: 60 g, 3.2 N for 1.8 s, upright, a canopy from the peak on. Invented. */
function modelRocket(): { csv: string; peak_m: number; peak_s: number } {
  const [mass_kg, burn_s, step_s] = [0.06, 1.8, 0.001];
  const rows: string[] = [];
  let [t, h, v, peak_m, peak_s] = [0, 0, 0, 0, 0];
  for (let k = 0; h >= 0; k++) {
    if (k % 50 === 0) rows.push(`${t.toFixed(2)},${h.toFixed(2)},${Math.abs(v).toFixed(2)}`);
    const dragArea_m2 = v < 0 ? 0.075 : 0.75 * Math.PI * 0.0125 ** 2;
    const drag_N = 0.5 * 1.225 * dragArea_m2 * v * Math.abs(v);
    v += (((t < burn_s ? 3.2 : 0) - drag_N) / mass_kg - 9.81) * step_s;
    h += v * step_s;
    t += step_s;
    if (h > peak_m) [peak_m, peak_s] = [h, t];
  }
  return { csv: `time_s,altitude_m,speed_m_s\n${rows.join('\n')}\n`, peak_m, peak_s };
}

async function reviewOf(csv: string, target: object) {
  const { review } = await reviewFlight({
    log: { name: 'model.csv', bytes: new TextEncoder().encode(csv) },
    card: { name: 'card', text: JSON.stringify({ world: 'earth', target }) },
  });
  return review;
}

test('a burn of two seconds is found by the speed alone, and a canopy is no engine', async () => {
  const { csv, peak_m, peak_s } = modelRocket();
  const { burns, events } = await reviewOf(csv, { kind: 'suborbital', peakAltitude_m: 300 });
  expect(burns.map((b) => [Math.round(b.start_s * 10) / 10, Math.round(b.end_s * 10) / 10])).toEqual([
    [0, 1.8],
  ]);
  const peak = events.find((e) => e.name === 'apoapsis');
  expect(peak?.altitude_m).toBeCloseTo(peak_m, 0);
  expect(Math.abs(peak!.time_s - peak_s)).toBeLessThan(0.1);
});

test('a peak of a few hundred metres is met within a part of itself, not within a kilometre', async () => {
  const { csv, peak_m } = modelRocket();
  const missed = await reviewOf(csv, { kind: 'suborbital', peakAltitude_m: 300 });
  expect(missed.verdict.text).toMatch(/^Peak 198 m, 102 m under the 300 m wanted/u);
  const met = await reviewOf(csv, { kind: 'suborbital', peakAltitude_m: 1.04 * peak_m });
  expect(met.verdict.text).toMatch(/^Suborbital as planned/u);
});
