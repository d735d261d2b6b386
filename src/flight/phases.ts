import { orbitFromPlanarState } from '../orbit/planar.ts';
import { type FlightEvent, stageName } from './events.ts';
import type { Burn, Flight } from './types.ts';

export type FlightPhaseName =
  | 'pad'
  | 'rise'
  | 'turn'
  | 'powered'
  | 'coast'
  | 'orbit'
  | 'deorbit'
  | 'entry'
  | 'parachute'
  | 'landed';

export interface FlightPhase {
  readonly name: FlightPhaseName;
  readonly start_s: number;
  readonly end_s: number;
  readonly label: string;
}

/**
 * Cuts the flight into phases without gaps. `inOrbitFrom_s` is the cutoff that left it in orbit, null where none
 * did. The first burn is `rise` to pitch-over and `turn` after it; burns after orbit was reached that end below
 * it are `deorbit`.
 */
export function findPhases(
  flight: Flight,
  events: readonly FlightEvent[],
  inOrbitFrom_s: number | null,
): FlightPhase[] {
  const { time } = flight;
  const first = time[0]!;
  const last = time[time.length - 1]!;
  const touchdown = events.find((e) => e.name === 'touchdown')?.time_s ?? null;
  const pitchOver = events.find((e) => e.name === 'pitch-over')?.time_s ?? null;
  const entry = events.filter((e) => e.name === 'air-entry').at(-1)?.time_s ?? null;
  const peak = events.filter((e) => e.name === 'apoapsis').at(-1)?.time_s ?? null;
  const cuts = new Set<number>([first, last]);
  const cut = (t: number | null): void => {
    if (t !== null && t > first && t < last) cuts.add(t);
  };
  const canopy = events.find((e) => e.name === 'parachute-open')?.time_s ?? null;
  cut(0);
  cut(canopy);
  cut(touchdown);
  cut(entry);
  const firstBurn = flight.burns[0];
  if (firstBurn !== undefined && pitchOver !== null && pitchOver < firstBurn.end_s) cut(pitchOver);
  for (const burn of flight.burns) {
    cut(burn.start_s);
    cut(burn.end_s);
  }
  const lastBurn = flight.burns.findLast((b) => inOrbitFrom_s !== null && b.start_s > inOrbitFrom_s);
  const leaving_s = lastBurn !== undefined && endsBelowOrbit(flight, lastBurn) ? lastBurn.end_s : null;
  const times = [...cuts].sort((a, b) => a - b);
  const phases: FlightPhase[] = [];
  for (let k = 0; k + 1 < times.length; k++) {
    const start_s = times[k]!;
    const end_s = times[k + 1]!;
    const mid = (start_s + end_s) / 2;
    const burn = flight.burns.find((b) => b.start_s <= mid && mid < b.end_s);
    let name: FlightPhaseName;
    let label: string;
    if (mid < 0) [name, label] = ['pad', 'pad'];
    else if (touchdown !== null && mid > touchdown) [name, label] = ['landed', 'landed'];
    else if (burn !== undefined) {
      const isFirst = burn === firstBurn && !flight.startsInFlight;
      const lowers = inOrbitFrom_s !== null && burn.start_s > inOrbitFrom_s && endsBelowOrbit(flight, burn);
      label = stageName(flight, burn.stage);
      name = isFirst
        ? pitchOver !== null && mid >= pitchOver
          ? 'turn'
          : 'rise'
        : lowers
          ? 'deorbit'
          : 'powered';
      if (isFirst && name === 'rise' && pitchOver !== null) label = 'rise';
    } else if (canopy !== null && mid > canopy) [name, label] = ['parachute', 'parachute'];
    else if (entry !== null && mid > entry && (peak === null || mid > peak))
      [name, label] = ['entry', 'entry'];
    else if (inOrbitFrom_s !== null && mid > inOrbitFrom_s && !(leaving_s !== null && mid > leaving_s))
      [name, label] = ['orbit', 'orbit'];
    else [name, label] = ['coast', 'coast'];
    const previous = phases.at(-1);
    if (previous !== undefined && previous.name === name && previous.label === label) {
      phases[phases.length - 1] = { ...previous, end_s };
    } else phases.push({ name, start_s, end_s, label });
  }
  return phases;
}

/** True for a burn whose end leaves periapsis under the orbit floor. */
function endsBelowOrbit(flight: Flight, burn: Burn): boolean {
  const { world } = flight.mission;
  const i = burn.endIndex;
  const orbit = orbitFromPlanarState(
    world.mu_m3_s2,
    flight.radius[i]!,
    flight.verticalSpeed[i]!,
    flight.track.inertialHorizontalSpeed[i]!,
  );
  return orbit.periapsisRadius_m < world.radius_m + world.orbitFloor_m;
}
