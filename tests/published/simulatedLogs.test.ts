import { expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import { simulateCurtisGravityTurn } from './simulated/curtisGravityTurn.ts';
import { simulateLunarLinearTangent } from './simulated/lunarLinearTangent.ts';
import { csvOf } from './simulated/simulatedFlight.ts';
import { simulateVerticalRocket } from './simulated/verticalRocket.ts';

test.each([
  ['gravity turn', simulateCurtisGravityTurn],
  ['vertical rocket', simulateVerticalRocket],
  ['lunar ascent', simulateLunarLinearTangent],
])('%s: a log of six channels on a rising clock, past burnout, and a card that reads', (_name, simulate) => {
  const { log, card, burnout_s } = simulate();
  const rows = csvOf(log).trim().split('\n');
  expect(rows.length).toBe(log.time_s.length + 1);
  for (const row of rows) expect(row.split(',').length).toBe(6);
  for (let i = 1; i < log.time_s.length; i++) expect(log.time_s[i]).toBeGreaterThan(log.time_s[i - 1]!);
  expect(log.time_s.at(-1)! - burnout_s).toBeGreaterThan(70);
  const mission = readMission({ card: { name: 'card', text: card } });
  expect(mission.vehicle?.stages[0]?.ispVacuum_s).toBeGreaterThan(0);
  expect(mission.target.kind).toBe('suborbital');
});
