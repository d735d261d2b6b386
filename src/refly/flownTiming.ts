import type { Flight } from '../flight/types.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import type { FlightStep } from './flightProgram.ts';
import type { Rocket } from './rocket.ts';

/** When a flight's engines were lit and its stages dropped, s from lift-off. */
export interface FlownTiming {
  readonly burns: readonly { readonly stage: number; readonly start_s: number; readonly end_s: number }[];
  /** Time of each stage's separation, by the stage's place; a stage that was kept has none. */
  readonly separations_s: ReadonlyMap<number, number>;
  /** Times at which boosters and other parts were seen to leave, by name. */
  readonly drops_s: ReadonlyMap<string, number>;
}

/** The timing of a flight's ascent, as the log shows it. */
export function flownTiming(flight: Flight): FlownTiming {
  const span = ascentSpan(flight);
  const burns = flight.burns.filter((b) => b.startIndex <= span.end);
  const separations = new Map<number, number>();
  const drops = new Map<string, number>();
  for (const drop of flight.drops) {
    if (drop.kind === 'separation') separations.set(flight.stage[drop.index]!, drop.time_s);
    else if (drop.subject !== null) drops.set(drop.subject, drop.time_s);
  }
  // Where the mass does not show it, a stage is dropped half-way between its last burn and the next stage's first.
  for (let k = 1; k < burns.length; k++) {
    const before = burns[k - 1]!;
    const after = burns[k]!;
    for (let stage = before.stage; stage < after.stage; stage++)
      if (!separations.has(stage)) separations.set(stage, (before.end_s + after.start_s) / 2);
  }
  return { burns, separations_s: separations, drops_s: drops };
}

/** The steps of a flight with that timing. @param stage attached at the start, 0-based */
export function timedSteps(timing: FlownTiming, stage: number): FlightStep[] {
  const steps: FlightStep[] = [];
  let attached = stage;
  for (const burn of timing.burns) {
    for (; attached < burn.stage; attached++) {
      const time_s = timing.separations_s.get(attached) ?? burn.start_s;
      steps.push({ do: 'coast', until: { kind: 'time', time_s } }, { do: 'separate' });
    }
    steps.push(
      { do: 'coast', until: { kind: 'time', time_s: burn.start_s } },
      { do: 'burn', until: { kind: 'time', time_s: burn.end_s } },
      // An engine that runs dry before the logged cutoff coasts to it.
      { do: 'coast', until: { kind: 'time', time_s: burn.end_s } },
    );
  }
  return steps;
}

/** A rocket whose boosters and parts leave when they were seen to. */
export function withDropTimes(rocket: Rocket, drops_s: ReadonlyMap<string, number>): Rocket {
  return {
    ...rocket,
    stages: rocket.stages.map((stage) => ({
      ...stage,
      boosters: stage.boosters.map((b) => ({
        ...b,
        separationTime_s: drops_s.get(b.name) ?? b.separationTime_s,
      })),
    })),
    jettisons: rocket.jettisons.map((j) => {
      const time_s = drops_s.get(j.name);
      return time_s === undefined ? j : { ...j, time_s, altitude_m: null };
    }),
  };
}
