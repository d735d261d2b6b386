import { expect, test } from 'vitest';
import { type CurveChart, curveChart } from '../../../src/exchange/report/curveChart.ts';
import { drawingText } from '../../../src/exchange/report/drawing.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';

const chart: CurveChart = {
  at: [0, 1000, 2000],
  x: { label: 'altitude', unit: 'km', scale: 1e-3 },
  y: { label: 'margin', unit: 'm/s', scale: 1 },
  curves: [
    { name: 'planned', values: [10, 20, null], colour: '--muted', dash: '5 4' },
    { name: 'flown', values: [10, -40, -60], colour: '--ink', dash: null, bold: true },
  ],
  frame: plotFrame(640),
  height: 240,
  sentence: 'Margin',
};

/** Vertical places of a path's points. */
function heights(d: string): number[] {
  return [...d.matchAll(/[ML][\d.]+ ([\d.]+)/g)].map((m) => Number(m[1]));
}

test('one path a curve, the bold one last, on one scale that holds zero', () => {
  const drawing = curveChart(chart);
  const text = drawing === null ? '' : drawingText(drawing);
  const paths = [...text.matchAll(/<path d="([^"]+)"[^>]*stroke="var\((--\w+)\)"/g)];
  expect(paths.map((p) => p[2])).toEqual(['--muted', '--ink']);
  const [planned, flown] = paths.map((p) => heights(p[1] ?? ''));
  expect(planned).toHaveLength(2);
  expect(flown).toHaveLength(3);
  expect(planned?.[0]).toBe(flown?.[0]);
  // 50 down from the first to the second point is five times 10 up.
  const up = (planned?.[0] ?? 0) - (planned?.[1] ?? 0);
  const down = (flown?.[1] ?? 0) - (flown?.[0] ?? 0);
  expect(down / up).toBeCloseTo(5, 1);
  expect(text).toContain('>altitude, km<');
  expect(text).toContain('stroke="var(--ink)"');
});

test('nothing is drawn where no curve has a value, or all at one place', () => {
  const none = { name: 'a', values: [null, null, null], colour: '--ink', dash: null };
  expect(curveChart({ ...chart, curves: [none] })).toBeNull();
  expect(curveChart({ ...chart, curves: [{ ...none, values: [1, null, null] }] })).toBeNull();
});
