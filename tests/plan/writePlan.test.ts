import { expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import { planOfAscent } from '../../src/plan/planOfAscent.ts';
import { readPlan } from '../../src/plan/readPlan.ts';
import { writePlan } from '../../src/plan/writePlan.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

const mission = readMission({ card: { name: 'card', text: readCardText('osselby-nominal') } });

test('a plan made from a flight comes back from its file', async () => {
  const plan = await readPlan(cutLog('osselby-nominal', undefined, 5), 'flight.csv', mission);
  const back = await readPlan(writePlan(plan), 'flight.plan.csv', mission);
  expect(back.form).toBe('table');
  // Events between rows have rows of their own.
  expect(back.axisValues.length).toBeGreaterThanOrEqual(plan.axisValues.length);
  expect(back.events.map((e) => e.name)).toEqual(plan.events.map((e) => e.name));
  expect(back.events.map((e) => e.subject)).toEqual(plan.events.map((e) => e.subject));
  back.events.forEach((e, i) => {
    expect(e.at).toBeCloseTo(plan.events[i]!.at, 5);
  });
});

test('a computed ascent becomes a plan; events that plans do not have are left out', () => {
  const plan = planOfAscent(
    {
      rows: [
        { time_s: 0, pitch_rad: Math.PI / 2, throttle: 1 },
        { time_s: 100, pitch_rad: 0.5, throttle: 0.8 },
      ],
      events: [
        { name: 'booster-burnout (strap-on)', time_s: 60 },
        { name: 'cutoff (core)', time_s: 100 },
      ],
    },
    'best ascent',
  );
  expect(plan.events).toEqual([{ name: 'cutoff', subject: 'core', at: 100 }]);
  expect(writePlan(plan)).toBe(
    'time_s,pitch_deg,throttle,event\r\n0,90,1,\r\n100,28.647890,0.8,cutoff (core)\r\n'.replace(
      '890,0',
      '89,0',
    ),
  );
});
