import { expect, test } from 'vitest';
import { framedBand } from '../../../src/exchange/report/framedBand.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';

const frame = plotFrame(800);
const x = (t: number) => t;

test('reaches no farther than the plot, and is not drawn outside it', () => {
  const drawn = framedBand({ start_s: -50, end_s: 200 }, x, frame, 10, 60);
  expect(drawn?.attributes).toMatchObject({ x: frame.left, width: 200 - frame.left, y: 10, height: 50 });
  expect(framedBand({ start_s: -50, end_s: 0 }, x, frame, 10, 60)).toBeNull();
  expect(framedBand(null, x, frame, 10, 60)).toBeNull();
});
