import { expect, test } from 'vitest';
import { orbitChart, orbitView } from '../../../src/exchange/report/orbitChart.ts';
import { elements, sampleAnalysis } from './chartsOfFlight.ts';

/** Points of the path that is drawn in a stroke. */
function points(d: string): [number, number][] {
  return [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map((m) => [Number(m[1]), Number(m[2])]);
}

test.each(['bobstay-medlar-4', 'bobstay-tansy-1'])(
  'the drawn conic has the apsides of the review, %s',
  async (name) => {
    const { review, strips } = await sampleAnalysis(name);
    const view = orbitView({ review, strips });
    if (view === null) throw new Error('the orbit is known');
    const { semiLatusRectum_m: p, eccentricity: e } = view.achieved;
    const { apoapsisAltitude_m, periapsisAltitude_m } = review.orbit.atCutoff;
    // The review states the apsides at the cutoff itself, the picture takes the row at it.
    expect(p / (1 + e) - view.radius_m).toBeCloseTo(periapsisAltitude_m.value ?? Number.NaN, -4);
    expect(p / (1 - e) - view.radius_m).toBeCloseTo(apoapsisAltitude_m.value ?? Number.NaN, -4);
  },
);

test('the flown arc ends on the drawn conic, which meets it in the same direction', async () => {
  const view = orbitView(await sampleAnalysis('bobstay-medlar-4'));
  if (view === null) throw new Error('the orbit is known');
  const { semiLatusRectum_m: p, eccentricity: e, periapsis_rad } = view.achieved;
  const radiusTowards = ([x, y]: readonly [number, number]) =>
    p / (1 + e * Math.cos(periapsis_rad - Math.atan2(y, x)));
  const [before, end] = view.flown.slice(-2);
  if (before === undefined || end === undefined) throw new Error('the arc has points');
  expect(Math.hypot(...end) / radiusTowards(end)).toBeCloseTo(1, 9);
  // A moment before cutoff the conic is left only by what thrust did meanwhile.
  expect(Math.hypot(...before) / radiusTowards(before)).toBeCloseTo(1, 4);
  expect(end[0]).toBeGreaterThan(before[0]);
});

test('lift-off is on top; equal axes: surface and air are circles to scale', async () => {
  const view = orbitView(await sampleAnalysis('bobstay-medlar-4'));
  if (view === null) throw new Error('the orbit is known');
  const [lift] = view.flown;
  expect(lift?.[0]).toBeCloseTo(0, 6);
  expect(lift?.[1]).toBeCloseTo(view.radius_m, -3);
  const drawing = orbitChart(view, 400, 'o');
  const rings = elements(drawing).filter((e) => e.tag === 'circle' && e.attributes.cx === 200);
  const [air, ground] = rings.map((r) => Number(r.attributes.r));
  expect((air ?? 0) / (ground ?? 1)).toBeCloseTo((view.radius_m + (view.airTop_m ?? 0)) / view.radius_m, 9);
});

test('nothing of the orbit is cut off: every bound conic lies inside the picture', async () => {
  const view = orbitView(await sampleAnalysis('bobstay-tansy-1'));
  if (view === null) throw new Error('the orbit is known');
  const paths = elements(orbitChart(view, 400, 'o')).filter(
    (e) => e.tag === 'path' && e.attributes.fill === 'none',
  );
  for (const [x, y] of paths.flatMap((e) => points(String(e.attributes.d)))) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
    expect(Math.max(x, y)).toBeLessThanOrEqual(400);
  }
});
