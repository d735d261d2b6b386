import { rememberedColumns } from './book/book.ts';
import type { FlightFiles } from './flightSources.ts';
import type { PageReviewRequest } from './protocol.ts';

/**
 * What the worker is asked to review a flight with.
 * @param key names the log, whose content never changes, so that it is read once for many reviews
 */
export function reviewRequest(key: string, { log, card, plan, part }: FlightFiles): PageReviewRequest {
  return {
    log,
    key,
    part,
    remembered: rememberedColumns.peek(),
    ...(card === null ? {} : { card }),
    ...(plan === null ? {} : { plan: { name: plan.name, bytes: new TextEncoder().encode(plan.text) } }),
  };
}
