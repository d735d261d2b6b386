import { LossbookError } from '../errors.ts';
import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import { planOfAscent } from '../plan/planOfAscent.ts';
import { bestAscent, type SearchOptions } from '../refly/bestAscent.ts';
import { reviewLog } from '../review/reviewFlight.ts';
import { planAttemptOf } from './planAttempt.ts';
import type { Attempt } from './types.ts';

const NAME = 'the best ascent';

/**
 * The best ascent of a flight's rocket, target and limits in the form of an attempt, to hold others against.
 * @throws LossbookError `ascent-not-found` where the search finds none
 */
export async function bestAttemptOf(
  log: Log,
  mission: Mission,
  options: SearchOptions = {},
): Promise<Attempt> {
  const file = log.source.name;
  const found = bestAscent(mission, options);
  if (found.kind !== 'found') {
    const reason = found.kind === 'stopped' ? 'the search was stopped' : found.reason;
    throw new LossbookError('ascent-not-found', { reason }, { file });
  }
  const { review, planStrips } = await reviewLog(log, mission, null, planOfAscent(found.plan, NAME));
  const attempt = planAttemptOf(review, planStrips ?? null, NAME);
  if (attempt === null)
    throw new LossbookError('ascent-not-found', { reason: 'it could not be reviewed' }, { file });
  return attempt;
}
