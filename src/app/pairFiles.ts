/** Anything with a file name. */
interface Named {
  readonly name: string;
}

export interface PairedFiles<F extends Named> {
  readonly flights: readonly { readonly log: F; readonly card: F | null; readonly plan: F | null }[];
  /** Mission cards whose log is not among the files. */
  readonly loneCards: readonly F[];
  /** Plans whose log is not among the files. */
  readonly lonePlans: readonly F[];
}

const cardEnding = /\.mission\.json$/i;
const planEnding = /\.plan\.(csv|json)$/i;

/** `NAME` of `NAME.csv`, `NAME.csv.gz`, `NAME.plan.csv` and `NAME.mission.json`. */
function baseName(name: string): string {
  for (const ending of [cardEnding, planEnding]) if (ending.test(name)) return name.replace(ending, '');
  return name.replace(/\.gz$/i, '').replace(/\.[^.]*$/, '');
}

/**
 * Sorts files given together into flights: a card or plan belongs to the log of its own base name; one log and one
 * card (or plan) that are alone with each other belong together whatever their names.
 * @param isCard knows cards by more than their names
 */
export function pairFiles<F extends Named>(
  files: readonly F[],
  isCard: (file: F) => boolean = () => false,
): PairedFiles<F> {
  const cards = files.filter((f) => cardEnding.test(f.name) || isCard(f));
  const plans = files.filter((f) => planEnding.test(f.name) && !cards.includes(f));
  const logs = files.filter((f) => !cards.includes(f) && !plans.includes(f));
  const belonging = (log: F, others: readonly F[]) =>
    logs.length === 1 && others.length === 1
      ? (others[0] ?? null)
      : (others.find((c) => baseName(c.name) === baseName(log.name)) ?? null);
  const flights = logs.map((log) => ({ log, card: belonging(log, cards), plan: belonging(log, plans) }));
  return {
    flights,
    loneCards: cards.filter((c) => !flights.some((f) => f.card === c)),
    lonePlans: plans.filter((p) => !flights.some((f) => f.plan === p)),
  };
}
