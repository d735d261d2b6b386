import { expect, test } from 'vitest';
import { attemptOf } from '../../src/attempts/attempt.ts';
import { bestAttemptOf } from '../../src/attempts/bestAttempt.ts';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { LossbookError } from '../../src/errors.ts';
import { readRequest } from '../../src/review/readRequest.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { sampleText } from '../wayDownFlights.ts';

const request = (card: string) => ({
  log: {
    name: 'ladder-medlar-1.csv',
    bytes: new TextEncoder().encode(sampleText('ladder-medlar-1.csv')),
  },
  card: { name: 'card', text: card },
});

test('the best ascent stands as a reference that no attempt of its rocket beats', async () => {
  const asked = request(sampleText('ladder-medlar-1.mission.json'));
  const { log, mission } = await readRequest(asked);
  const best = await bestAttemptOf(log, mission);
  expect(best.name).toBe('the best ascent');
  const { review, strips } = await reviewFlight(asked);
  const own = attemptOf(review, strips);
  // The ladder's best run has 1,459 m/s; the search must not end below it.
  expect(best.scores.margin_m_s.value!).toBeGreaterThan(1459);
  const comparison = compareAttempts([own], { reference: best });
  expect(comparison.reference).toEqual({ name: 'the best ascent', why: 'as asked' });
  expect(comparison.rows[0]!.parting!.cost_m_s.value!).toBeGreaterThan(300);
}, 120_000);

test('a card without a vehicle has none, and says so', async () => {
  const { log, mission } = await readRequest(request('{"world":"earth"}'));
  await expect(bestAttemptOf(log, mission)).rejects.toThrow(LossbookError);
});
