import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { AgainstPlan } from '../../src/review/types.ts';
import { cutLog, readCardText, referenceNames } from '../referenceFlights.ts';

/** A flight with its own log for a plan: the plan made from the flight, flown by its rocket. */
async function againstItself(name: string, bytes: Uint8Array, card: string): Promise<AgainstPlan> {
  const log = { name, bytes };
  const { review } = await reviewFlight({ log, card: { name: 'card', text: card }, plan: log });
  return review.againstPlan!;
}

const file = (name: string) => readFileSync(`${process.cwd()}/sample-logs/${name}`);
const index = JSON.parse(file('index.json').toString()) as { id: string; log: string; card: string }[];

/** Those with rows of exact figures: the difference is the rounding of the plan's controls. */
test.each(referenceNames)('%s against itself: every part is nothing', async (name) => {
  const own = await againstItself(name, new TextEncoder().encode(cutLog(name)), readCardText(name));
  expect(own.contributions.length).toBeGreaterThan(2);
  // Measured: 0.03 m/s at most.
  for (const c of own.contributions) expect(Math.abs(c.deltaV_m_s.value!), c.group).toBeLessThan(0.1);
  expect(Math.abs(own.avoidable.deltaV_m_s.value!)).toBeLessThan(0.1);
});

/** Sample flights as pilots log them, in orbit and short of it, in rows and in columns of JSON, with noise. */
test.each(index)('$id against itself: every part is nothing', async ({ id, log, card }) => {
  const own = await againstItself(log, file(log), file(card).toString());
  // The second stage of one was never lit: there is no last stage to compare.
  if (id === 'bobstay-teasel-2') expect(own.contributions).toEqual([]);
  else expect(own.contributions.length).toBeGreaterThan(2);
  expect(own.plan.form).toBe('flight');
  // Measured: 0.23 m/s at most, and 0.41 m/s of all together.
  for (const c of own.contributions) expect(Math.abs(c.deltaV_m_s.value!), c.group).toBeLessThan(0.6);
  expect(Math.abs(own.avoidable.deltaV_m_s.value!)).toBeLessThan(0.8);
});
