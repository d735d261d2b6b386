/** Anything with a file name. */
interface Named {
  readonly name: string;
}

export interface PairedFiles<F extends Named> {
  readonly flights: readonly { readonly log: F; readonly card: F | null }[];
  /** Mission cards whose log is not among the files. */
  readonly loneCards: readonly F[];
  /** Plans: not logs, not cards. */
  readonly plans: readonly F[];
}

const cardEnding = /\.mission\.json$/i;
const planEnding = /\.plan\.(csv|json)$/i;

/** `NAME` of `NAME.csv`, `NAME.csv.gz` and `NAME.mission.json`. */
function baseName(name: string): string {
  return cardEnding.test(name)
    ? name.replace(cardEnding, '')
    : name.replace(/\.gz$/i, '').replace(/\.[^.]*$/, '');
}

/**
 * Sorts files given together into flights: a card belongs to the log of its own base name; one log and one card
 * that are alone with each other belong together whatever their names.
 */
export function pairFiles<F extends Named>(files: readonly F[]): PairedFiles<F> {
  const cards = files.filter((f) => cardEnding.test(f.name));
  const plans = files.filter((f) => planEnding.test(f.name));
  const logs = files.filter((f) => !cards.includes(f) && !plans.includes(f));
  const only = logs.length === 1 && cards.length === 1 ? cards[0] : undefined;
  const flights = logs.map((log) => ({
    log,
    card: only ?? cards.find((c) => baseName(c.name) === baseName(log.name)) ?? null,
  }));
  return { flights, loneCards: cards.filter((c) => !flights.some((f) => f.card === c)), plans };
}
