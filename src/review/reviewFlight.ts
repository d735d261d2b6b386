import type { ColumnChoice } from '../log/types.ts';
import type { Analysis } from './types.ts';

/** What a review is made from. Texts and bytes only: the engine never opens a file. */
export interface ReviewRequest {
  readonly log: { readonly name: string; readonly bytes: Uint8Array };
  readonly card?: { readonly name: string; readonly text: string };
  /** `earth`, `moon`, `mars`; over the card's. */
  readonly world?: string;
  /** Altitude of a circular target orbit, m; over the card's. */
  readonly targetAltitude_m?: number;
  readonly map?: readonly ColumnChoice[];
  /** 1-based flight in a file that holds several. */
  readonly part?: number;
}

/**
 * Reviews one flight.
 * @throws LossbookError for input that cannot be read or from which nothing can be derived.
 */
export async function reviewFlight(_request: ReviewRequest): Promise<Analysis> {
  throw new Error('not built yet');
}
