import { expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import { describePlan } from '../../src/plan/describePlan.ts';
import { readPlan } from '../../src/plan/readPlan.ts';

test('says what is understood and what the plan leaves open', async () => {
  const plan = await readPlan('altitude_km,pitch_deg\n0,90\n40,35\n', 'x.csv', readMission({}));
  const { understood, missing } = describePlan(plan);
  expect(understood.join('; ')).toMatch(
    /altitude.*2 rows, altitude 0.0 to 40.0 km.*pitch from 35.0° to 90.0°/,
  );
  expect(missing.join(' ')).toMatch(/no throttle.*No cutoffs/);
});
