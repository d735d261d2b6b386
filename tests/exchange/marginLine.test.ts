import { describe, expect, test } from 'vitest';
import { marginLine } from '../../src/exchange/marginLine.ts';

describe('marginLine', () => {
  test('a falling line steps down through the blocks, then deeper through the shades', () => {
    expect(marginLine([0, 100], [100, -100], 50, 20).bar).toBe('██▇▆▅▄▃▃▂▁░░░▒▒▒▓▓▓▓');
  });
  test('the lost moment is marked at its column, its time beside it', () => {
    const { axis } = marginLine([0, 100], [100, -100], 50, 40);
    expect(axis.indexOf('▲')).toBe(20);
    expect(axis).toBe('0 s                 ▲ 50 s         100 s');
  });
  test('near the right edge the time stands before the mark', () => {
    expect(marginLine([0, 100], [100, -1], 80, 40).axis).toBe('0 s                        80 s ▲  100 s');
  });
  test('a mark at the left end keeps a moment that can be read', () => {
    expect(marginLine([0, 100], [-1, -100], 0, 40).axis).toBe('▲ 0 s                              100 s');
  });
  test('what is not available is a dot, never bridged', () => {
    expect(marginLine([0, 1, 2, 3, 4], [1, 1, null, 1, 1], null, 8).bar).toBe('██····██');
  });
  test('a curve that stays at zero is drawn as zero, a single time does not fail', () => {
    expect(marginLine([0, 1], [0, 0], null, 4).bar).toBe('▁▁▁▁');
    expect(marginLine([5], [1], null, 10).axis).toHaveLength(10);
    expect(marginLine([], [], null, 10).bar).toBe('··········');
  });
});
