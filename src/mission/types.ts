import type { World } from '../world/types.ts';

/** A burn-out step of the rocket, resolved from the card; null = the card does not say. SI throughout. */
export interface Stage {
  readonly name: string;
  readonly dryMass_kg: number | null;
  readonly propellantMass_kg: number | null;
  /** Total of the stage's engines, at full throttle, in vacuum. */
  readonly thrustVacuum_N: number | null;
  readonly ispVacuum_s: number | null;
  readonly exitArea_m2: number | null;
  readonly engines: number;
  /** Lowest throttle as a fraction of full; 1 = cannot throttle. */
  readonly throttleMin: number;
  readonly ignitions: number | null;
  /** Area and drag coefficient of the whole stack while this stage burns. */
  readonly referenceArea_m2: number | null;
  /** Drag coefficient nodes [Mach, Cd], Mach rising; linear between, constant beyond. */
  readonly dragCoefficient: readonly (readonly [number, number])[] | null;
  /** Vacuum thrust of a solid motor against time from its ignition. */
  readonly thrustCurve: readonly (readonly [number, number])[] | null;
  readonly boosters: readonly Booster[];
}

/** Motors that burn beside a stage and drop; masses, thrust and area are of each. Times from lift-off. */
export interface Booster {
  readonly name: string;
  readonly count: number;
  readonly dryMass_kg: number;
  readonly propellantMass_kg: number;
  readonly thrustVacuum_N: number;
  readonly ispVacuum_s: number;
  readonly exitArea_m2: number;
  readonly ignitionTime_s: number;
  /** null = when empty. */
  readonly separationTime_s: number | null;
}

/** A part thrown off besides the stages; exactly one of time (from lift-off) and altitude is set. */
export interface Jettison {
  readonly name: string;
  readonly mass_kg: number;
  readonly time_s: number | null;
  readonly altitude_m: number | null;
}

export interface Vehicle {
  readonly name: string | null;
  readonly payload_kg: number | null;
  /** In burning order, first stage first. */
  readonly stages: readonly Stage[];
  readonly jettisons: readonly Jettison[];
  /**
   * How sure the card says it is of its own values; absent where it does not say. A vehicle that states it is
   * identified from the log with the card's values as priors.
   */
  readonly standardErrors?: StandardErrors;
}

/** One-sigma relative errors of a card's values; null = not stated. */
export interface StandardErrors {
  readonly isp: number | null;
  readonly exitArea: number | null;
  readonly dragArea: number | null;
}

/** Angles in radians here; the card's degrees end at the reader. */
export type Target =
  | {
      readonly kind: 'orbit';
      readonly apoapsisAltitude_m: number;
      readonly periapsisAltitude_m: number;
      readonly tolerance_m: number;
      readonly inclination_rad: number | null;
      readonly argumentOfPeriapsis_rad: number | null;
      readonly ascendingNode_rad: number | null;
    }
  | { readonly kind: 'suborbital'; readonly peakAltitude_m: number; readonly tolerance_m: number }
  | { readonly kind: 'escape'; readonly c3_m2_s2: number }
  | { readonly kind: 'landing' };

export interface Limits {
  readonly dynamicPressure_Pa: number | null;
  readonly acceleration_m_s2: number | null;
  readonly angleOfAttackInAir_rad: number | null;
}

export interface ReturnVehicle {
  readonly mass_kg: number | null;
  readonly referenceArea_m2: number | null;
  readonly dragCoefficient: number | null;
  readonly noseRadius_m: number | null;
  readonly parachutes: readonly {
    readonly count: number;
    readonly dragArea_m2: number;
    readonly openAltitude_m: number | null;
    readonly fullAltitude_m: number | null;
  }[];
}

/** A mission card after reading, with its gaps filled by stated assumptions. Immutable. */
export interface Mission {
  readonly name: string | null;
  readonly world: World;
  readonly site: {
    readonly latitude_rad: number;
    readonly longitude_rad: number;
    readonly altitude_m: number;
    readonly launchAzimuth_rad: number;
    /** True where the card gives it; figures that lean on an assumed one say so. */
    readonly latitudeKnown: boolean;
    readonly longitudeKnown: boolean;
    readonly azimuthKnown: boolean;
  };
  readonly target: Target;
  /** True where the card (or the caller) gives the target, false for the lowest orbit above the floor. */
  readonly targetKnown: boolean;
  readonly vehicle: Vehicle | null;
  readonly limits: Limits;
  readonly flight: {
    readonly pilot: string | null;
    readonly attempt: number | null;
    readonly date: string | null;
    readonly notes: string | null;
  };
  readonly returnVehicle: ReturnVehicle | null;
  /** One sentence for each thing that was assumed because nothing said it. */
  readonly assumed: readonly string[];
}
