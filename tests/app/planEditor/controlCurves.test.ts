import { describe, expect, test } from 'vitest';
import { onAxis } from '../../../src/app/planEditor/axisChange.ts';
import { controlCurves } from '../../../src/app/planEditor/controlCurves.ts';
import { flownControls, valueOn } from '../../../src/app/planEditor/flownControls.ts';
import { row } from '../../../src/app/planEditor/planSheet.ts';
import { readLog } from '../../../src/log/readLog.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { reviewLog } from '../../../src/review/reviewFlight.ts';
import { cutLog, readCardText } from '../../referenceFlights.ts';

describe('valueOn', () => {
  const at = [0, 10, 10, 20];
  const values = [90, 80, 60, null];
  test.each([
    [-1, null],
    [0, 90],
    [5, 85],
    [10, 80],
    [15, null],
    [21, null],
  ])('at %f: %s', (x, value) => {
    expect(valueOn(at, values, x)).toBe(value);
  });
});

test('planned and flown are laid over one axis; steps of the plan stay, places of both stand once', () => {
  const curves = controlCurves(
    { at: [0, 10, 10], pitch_deg: [90, 80, 60], throttle_percent: null },
    {
      time_s: [0, 5, 10, 15],
      at: [0, 5, 10, 15],
      pitch_deg: [90, 88, 86, 84],
      throttle_percent: [100, 100, null, 90],
    },
  );
  expect(curves.at).toEqual([0, 5, 10, 10, 15]);
  expect(curves.pitch).toEqual({ planned: [90, 85, 80, 60, null], flown: [90, 88, 86, 86, 84] });
  expect(curves.throttle).toEqual({
    planned: [null, null, null, null, null],
    flown: [100, 100, null, null, 90],
  });
});

describe('a flight along each axis', () => {
  const card = { name: 'card', text: readCardText('osselby-nominal') };
  const analysis = readLog(new TextEncoder().encode(cutLog('osselby-nominal')), { name: 'log.csv' }).then(
    (log) => reviewLog(log, readMission({ card }), 'card', null),
  );

  test.each(['time', 'altitude', 'speed'] as const)(
    '%s rises, from lift-off to the last cutoff',
    async (axis) => {
      const { at, time_s, pitch_deg } = flownControls(await analysis, axis);
      expect(at.length).toBeGreaterThan(100);
      expect(at.every((x, i) => i === 0 || x > (at[i - 1] ?? 0))).toBe(true);
      expect(time_s[0]).toBeGreaterThanOrEqual(0);
      // Truth: the upper stage is cut off at 415.3827 s.
      expect(time_s.at(-1)).toBeLessThan(415.39);
      expect(pitch_deg[0]).toBeCloseTo(90, 3);
    },
  );

  test('rows that change their axis go to where the flight was, and come back', async () => {
    const sheet = {
      name: 'x',
      axis: 'time' as const,
      rows: [row({ at: 20, pitch: 80 }), row({ at: 150 }), row({ at: 5000 }), row({ at: 'soon' })],
    };
    const high = onAxis(sheet, 'altitude', await analysis);
    expect(high.rows.map((r) => r.pitch)).toEqual([80, null, null, null]);
    expect(high.rows.slice(2).map((r) => r.at)).toEqual([null, null]);
    const back = onAxis(high, 'time', await analysis);
    // Whole metres and tenths of a second are kept.
    expect(back.rows.slice(0, 2).map((r) => r.at)).toEqual([20, 150]);
  });

  test('without a flight nobody knows where they belong', () => {
    const sheet = { name: 'x', axis: 'time' as const, rows: [row({ at: 20, pitch: 80 })] };
    expect(onAxis(sheet, 'speed', null).rows).toMatchObject([{ at: null, pitch: 80 }]);
    expect(onAxis(sheet, 'time', null)).toBe(sheet);
  });
});
