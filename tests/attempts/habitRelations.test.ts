import { expect, test } from 'vitest';
import { habitRelations, pText } from '../../src/attempts/habitRelations.ts';
import { invented } from './inventedAttempts.ts';

const angles = [5, 6, 7, 8, 9, 10, 11, 12];
const noise = [3, 1, 4, 1.5, 9, 2.6, 5, 3.5];

test('a habit that goes with the margin stands first, with its p corrected by Holm', () => {
  const attempts = angles.map((angle, k) =>
    invented({
      name: `a${k}`,
      margin: 100 + 10 * angle,
      habits: { pitchOverAngle_deg: angle, pitchOverTime_s: noise[k]! },
    }),
  );
  const [first, second] = habitRelations(attempts);
  expect(first).toMatchObject({ habit: 'pitchOverAngle_deg', attempts: 8 });
  expect(first!.rho).toBeCloseTo(1, 12);
  // Two of 8! orders; twice that for the two habits asked.
  expect(first!.p).toBeCloseTo(2 / 40320, 12);
  expect(first!.correctedP).toBeCloseTo(4 / 40320, 12);
  expect(first!.text).toContain('no proof');
  expect(second!.text).toContain('not beyond chance');
  expect(second!.correctedP).toBeGreaterThanOrEqual(first!.correctedP);
});

test('habits that nobody shows, or margins that are missing, are left out', () => {
  expect(habitRelations([invented({ name: 'a' }), invented({ name: 'b', margin: null })])).toEqual([]);
});

test('a small p is not written as zero', () => {
  expect([pText(0.00002), pText(0.012), pText(0.4)]).toEqual(['below 0.001', '0.012', '0.40']);
});
