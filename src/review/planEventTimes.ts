import type { FlightEvent } from '../flight/events.ts';

/** Pairs of the same event of two flights: equal name and subject, counted in order of time. */
export function pairedEvents(
  flown: readonly FlightEvent[],
  planned: readonly FlightEvent[],
): { readonly flown: FlightEvent | null; readonly planned: FlightEvent | null }[] {
  const left = [...planned];
  const pairs: { flown: FlightEvent | null; planned: FlightEvent | null }[] = flown.map((event) => {
    const at = left.findIndex((p) => p.name === event.name && p.subject === event.subject);
    return { flown: event, planned: at < 0 ? null : left.splice(at, 1)[0]! };
  });
  for (const event of left) pairs.push({ flown: null, planned: event });
  const time = (p: (typeof pairs)[number]): number => (p.flown ?? p.planned)!.time_s;
  return pairs.sort((a, b) => time(a) - time(b));
}

/** Planned time of one of the flown events, s from lift-off; null where the plan does not have it. */
export function plannedTime_s(
  flown: readonly FlightEvent[],
  planned: readonly FlightEvent[],
  event: FlightEvent,
): number | null {
  return pairedEvents(flown, planned).find((p) => p.flown === event)?.planned?.time_s ?? null;
}
