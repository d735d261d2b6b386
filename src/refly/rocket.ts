/** Motors beside a stage, numbers of all of them together. They burn at full thrust from ignition until empty. */
export interface RocketBoosters {
  readonly name: string;
  readonly dryMass_kg: number;
  readonly propellantMass_kg: number;
  readonly thrustVacuum_N: number;
  readonly ispVacuum_s: number;
  readonly exitArea_m2: number;
  /** From lift-off. */
  readonly ignitionTime_s: number;
  /** From lift-off; null = when empty. */
  readonly separationTime_s: number | null;
}

/** A stage with every number that flying it takes. */
export interface RocketStage {
  readonly name: string;
  readonly dryMass_kg: number;
  readonly propellantMass_kg: number;
  readonly thrustVacuum_N: number;
  readonly ispVacuum_s: number;
  readonly exitArea_m2: number;
  /** Drag area Cd·A of the whole stack in m² at a Mach number. */
  readonly dragArea: (mach: number) => number;
  /** Vacuum thrust (N) against time since ignition (s), for solid motors; stands for `thrustVacuum_N`. */
  readonly thrustCurve: readonly (readonly [number, number])[] | null;
  readonly boosters: readonly RocketBoosters[];
}

/** A part thrown off at a time from lift-off or on the way up through an altitude. */
export interface RocketJettison {
  readonly name: string;
  readonly mass_kg: number;
  readonly time_s: number | null;
  readonly altitude_m: number | null;
}

/** A rocket as the equations of motion know it: from a card, or as identified from a log. */
export interface Rocket {
  readonly payload_kg: number;
  readonly stages: readonly RocketStage[];
  readonly jettisons: readonly RocketJettison[];
}

/** Mass of everything together before the first engine is lit, kg. */
export function fullMass_kg(rocket: Rocket): number {
  let mass = rocket.payload_kg;
  for (const s of rocket.stages) {
    mass += s.dryMass_kg + s.propellantMass_kg;
    for (const b of s.boosters) mass += b.dryMass_kg + b.propellantMass_kg;
  }
  for (const j of rocket.jettisons) mass += j.mass_kg;
  return mass;
}
