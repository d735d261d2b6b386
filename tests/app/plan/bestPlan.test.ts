import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { bestPlan } from '../../../src/app/plan/bestPlan.ts';
import { LossbookError } from '../../../src/errors.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { readPlan } from '../../../src/plan/readPlan.ts';

test('the best ascent comes as a plan that reads back; the search tells how far it is', async () => {
  const name = 'bobstay-medlar-4.mission.json';
  const card = { name, text: readFileSync(`sample-logs/${name}`, 'utf8') };
  const shares: number[] = [];
  const best = bestPlan({ card, name: 'bobstay-medlar-4.csv' }, (_, share) => shares.push(share));
  expect(best.reachesTarget).toBe(true);
  expect(best.plan.name).toBe('bobstay-medlar-4.best.plan.csv');
  expect(shares.length).toBeGreaterThan(2);
  expect(shares[0]).toBe(0);
  expect(shares.at(-1)).toBeLessThanOrEqual(1);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  const plan = await readPlan(best.plan.text, best.plan.name, readMission({ card }));
  expect(plan.events.map((e) => e.name)).toContain('cutoff');
});

test('a card without a vehicle is told so', () => {
  const card = { name: 'short.mission.json', text: '{ "world": "earth" }' };
  expect(() => bestPlan({ card, name: 'a.csv' }, () => {})).toThrow(LossbookError);
});
