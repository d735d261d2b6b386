import type { FlightEventName } from '../flight/events.ts';
import type { FlightPhaseName } from '../flight/phases.ts';
import type { ChannelReading, QualityNote } from '../log/types.ts';
import type { OrbitWork } from './orbitWork/types.ts';
import type { WayDownReview } from './wayDown/types.ts';

/** How a figure was come by. */
export type Basis = 'measured' | 'derived' | 'identified' | 'assumed' | 'unavailable';

/**
 * A number with its honesty: unit in the name of the field that holds it; low and high are the 95 % interval.
 * `unavailable` has nulls and a reason.
 */
export interface Figure {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly basis: Basis;
  readonly reason?: string;
  /** What an assumption could move the value to (its own unit), named and separate from the interval. */
  readonly assumptions?: readonly { readonly what: string; readonly low: number; readonly high: number }[];
}

export type FrameName = 'ground' | 'inertial';

/** Entries of METHODS §2 in m/s. In the inertial frame `frame` is unavailable (there is none). */
export interface LedgerEntries {
  readonly ideal: Figure;
  readonly backPressure: Figure;
  readonly steering: Figure;
  readonly drag: Figure;
  readonly gravity: Figure;
  readonly frame: Figure;
  readonly holdDown: Figure;
  readonly speedGained: Figure;
  readonly unexplained: Figure;
}

/** Names that others build on; the flight room finds the events and cuts the phases. */
export type EventName = FlightEventName;
export type PhaseName = FlightPhaseName;

export type VerdictCode =
  | 'in-orbit'
  | 'orbit-off-target'
  | 'orbit-decaying'
  | 'suborbital-out-of-propellant'
  | 'suborbital-early-cutoff'
  | 'suborbital-stage-not-lit'
  | 'suborbital-lost-in-flight'
  | 'suborbital-as-planned'
  | 'escape'
  | 'started-in-orbit'
  | 'undetermined';

export interface OrbitFigures {
  readonly apoapsisAltitude_m: Figure;
  readonly periapsisAltitude_m: Figure;
  readonly eccentricity: Figure;
  readonly inclination_deg: Figure;
  readonly semiMajorAxis_m: Figure;
  readonly period_s: Figure;
}

export interface BudgetFigures {
  readonly deltaVSpent: Figure;
  readonly deltaVToGo: Figure;
  readonly deltaVRemaining: Figure;
  readonly vehicleDeltaV: Figure;
  readonly projectedTotal: Figure;
  readonly margin: Figure;
  readonly shortfall: Figure;
}

export interface ReviewEvent {
  readonly name: EventName;
  /** From lift-off. */
  readonly time_s: number;
  readonly planned_s: number | null;
  /** Stage or part concerned, where there is one. */
  readonly subject: string | null;
  /** State at the event, null where unknown. */
  readonly altitude_m: number | null;
  readonly speed_m_s: number | null;
}

export interface ReviewBurn {
  readonly start_s: number;
  readonly end_s: number;
  readonly stage: string;
  /** True for burns of the ascent, false for later ones. */
  readonly ascent: boolean;
  readonly deltaV: Figure;
  readonly efficiency: Figure;
  readonly propellant_kg: Figure;
}

export interface Finding {
  readonly code: string;
  readonly start_s: number;
  readonly end_s: number;
  readonly cost_m_s: Figure;
  readonly propellant_kg: Figure;
  readonly text: string;
  readonly evidence: string;
  readonly advice: string;
}

/** Curves of METHODS §5 on their own (adaptive) time grid, s from lift-off and m/s; null = not available there. */
export interface BudgetCurves {
  readonly time_s: readonly number[];
  readonly spent: readonly (number | null)[];
  readonly toGo: readonly (number | null)[];
  readonly projectedTotal: readonly (number | null)[];
  readonly margin: readonly (number | null)[];
}

/** Constants of the world flown from. */
export interface WorldConstants {
  readonly gravitationalParameter_m3_s2: number;
  /** Radius from which apsis altitudes are counted. */
  readonly radius_m: number;
  /** Distance from the centre of a point at altitude zero: `radius_m` on a sphere, else the ellipsoid's at the site. */
  readonly radiusAtSite_m: number;
  /** Spin about the pole, positive eastward. */
  readonly spin_rad_s: number;
  /** Geometric altitude above which there is no air; null without air. */
  readonly airTop_m: number | null;
}

/** Causes of the projected total's rise (METHODS §5); these are not the ledger's entries. */
export type WasteCauseName = 'backPressure' | 'drag' | 'offDirection' | 'offTime' | 'drift';

/** Where the margin went, moment by moment: the projected total's rise split with the primer vector. */
export interface ReviewWaste {
  /** Running sums from lift-off in m/s on nodes of their own; `remainder` is what the quadrature leaves over. */
  readonly curves: Readonly<Record<WasteCauseName | 'total' | 'remainder', readonly number[]>> & {
    readonly time_s: readonly number[];
  };
  /** Mean rate in m/s² over the stretch that ends at each node; the first is 0. */
  readonly rates: Readonly<Record<WasteCauseName | 'total', readonly number[]>>;
  /** At the end of the ascent; kilograms at the masses at which the waste arose. */
  readonly totals: Readonly<
    Record<
      WasteCauseName | 'total' | 'remainder',
      { readonly deltaV_m_s: Figure; readonly propellant_kg: Figure }
    >
  >;
}

/** A quantity of the flight and of the plan on one axis. null = not reached or not known there. */
export interface DeviationCurve {
  readonly quantity: 'pitch_deg' | 'throttle' | 'thrustToWeight' | 'dynamicPressure_Pa';
  /** What the axis counts, in the unit that its name says. */
  readonly axis: 'altitude_m' | 'time_s';
  readonly at: readonly number[];
  readonly planned: readonly (number | null)[];
  readonly flown: readonly (number | null)[];
}

/** State at an event: flown − planned is the difference. */
export interface ComparedState {
  readonly planned: number | null;
  readonly flown: number | null;
  readonly difference: number | null;
}

/** The flight against the plan, which is flown by the same rocket with the same payload (METHODS §6). */
export interface AgainstPlan {
  readonly plan: {
    readonly name: string;
    /** `table` = sparse controls, `flight` = a full profile or another flight. */
    readonly form: 'table' | 'flight';
    /** What was taken because plan or card do not say it, one sentence each. */
    readonly assumed: readonly string[];
    /** Whether the plan, as flown by this rocket, reaches the target; in words. */
    readonly text: string;
  };
  readonly events: readonly {
    readonly name: EventName;
    readonly subject: string | null;
    readonly time_s: ComparedState;
    readonly altitude_m: ComparedState;
    readonly speed_m_s: ComparedState;
    readonly mass_kg: ComparedState;
    /** Aboard the whole vehicle. */
    readonly propellant_kg: ComparedState;
  }[];
  readonly cutoffs: readonly {
    /** Stage that was cut off. */
    readonly subject: string;
    readonly states: Readonly<
      Record<
        | 'time_s'
        | 'altitude_m'
        | 'speed_m_s'
        | 'inertialSpeed_m_s'
        | 'flightPathAngle_deg'
        | 'apoapsisAltitude_m'
        | 'periapsisAltitude_m'
        | 'mass_kg',
        ComparedState
      >
    >;
  }[];
  readonly deviations: readonly DeviationCurve[];
  /** Margin and projected total against delta-v spent, m/s. */
  readonly margin: {
    readonly spent: readonly number[];
    readonly planned: readonly (number | null)[];
    readonly flown: readonly (number | null)[];
    readonly plannedTotal: readonly (number | null)[];
    readonly flownTotal: readonly (number | null)[];
  };
  /** The plan's own margin curve against time, for charts. */
  readonly plannedCurves: BudgetCurves;
  /** Budget at the end of the plan's ascent, m/s. */
  readonly planned: {
    readonly spent: number | null;
    readonly toGo: number | null;
    readonly projectedTotal: number | null;
    readonly margin: number | null;
  };
  /** Projected total flown less planned, at the end of each ascent. */
  readonly avoidable: { readonly deltaV_m_s: Figure; readonly propellant_kg: Figure };
  /** What makes up the avoidable waste, by re-flying; sums to it. */
  readonly contributions: readonly Contribution[];
}

/** One group of controls or properties and what it did to the projected total. */
export interface Contribution {
  readonly group:
    | 'pitch'
    | 'throttle'
    | 'timing'
    | 'vehicle'
    | 'last-stage-pitch'
    | 'last-stage-throttle'
    | 'cutoff'
    /** What the plan itself loses in its last stage with this rocket and payload; less than zero. */
    | 'plan'
    /** What the re-flown flight misses the log by. */
    | 'model';
  readonly text: string;
  readonly deltaV_m_s: Figure;
  readonly propellant_kg: Figure;
}

/** Why a flight is not in orbit, by re-flying. */
export interface WhyNot {
  /** From the margin: out of reach from this time at the latest; null where the margin stays positive. */
  readonly latest_s: number | null;
  /** Last instant from which the best continuation still reaches orbit; 0 = none does; null = in reach to the end. */
  readonly outOfReach_s: number | null;
  readonly spentThen_m_s: number | null;
  /** Projected total above the plan's by then; null without a plan. */
  readonly wastedThen_m_s: number | null;
  /** The smallest change of each kind that reaches orbit, smallest first. */
  readonly changes: readonly {
    readonly kind:
      | 'steer-last-stage'
      | 'pitch-earlier'
      | 'more-tilt'
      | 'less-tilt'
      | 'less-payload'
      | 'burn-longer'
      /** `amount` is the moment, s from lift-off. */
      | 'turn-in-time';
    /** In `unit`; 0 where it has none. */
    readonly amount: number;
    readonly unit: 's' | 'kg' | 'share' | null;
    /** What to do, as a clause. */
    readonly text: string;
    /** The orbit of the flight with the change, and the periapsis with nine tenths of it. */
    readonly apoapsisAltitude_m: number;
    readonly periapsisAltitude_m: number;
    readonly nineTenthsPeriapsisAltitude_m: number | null;
  }[];
  readonly text: string;
}

/** One stage's engines as identified, the card's values beside; null = the card does not say. */
export interface VehicleStage {
  readonly name: string;
  /** Which stretch of the burn, where boosters drop and no card tells what remains; 0 otherwise. */
  readonly stretch: number;
  readonly isp_s: Figure;
  readonly exitArea_m2: Figure;
  /** In vacuum at full throttle. */
  readonly thrustVacuum_N: Figure;
  readonly card: {
    readonly isp_s: number | null;
    readonly exitArea_m2: number | null;
    readonly thrustVacuum_N: number | null;
  };
}

/** The vehicle as the log shows it (METHODS §3). A figure that only its prior fixes has the basis `assumed`. */
export interface ReviewVehicle {
  /** Whose values stand in the ledger. */
  readonly inBooks: 'card' | 'identified';
  /** Why, one sentence. */
  readonly text: string;
  readonly stages: readonly VehicleStage[];
  /** Drag coefficient × area of the stack at Mach numbers; null on a world without air or with logged drag. */
  readonly dragArea:
    | readonly { readonly mach: number; readonly dragArea_m2: Figure; readonly card_m2: number | null }[]
    | null;
  /** What the log cannot tell apart, one sentence each. */
  readonly unseparated: readonly string[];
  /** Root mean square of what the equation of motion leaves of the logged speed, m/s. */
  readonly residual_m_s: number;
}

/** One flight's review: plain data, versioned, the same on page, terminal, report and JSON. */
export interface Review {
  readonly schema: 'lossbook-review/1';
  readonly source: {
    readonly file: string;
    readonly rows: number;
    readonly start_s: number;
    readonly end_s: number;
    /** Median sampling rate. */
    readonly rate_Hz: number;
    readonly part: number;
    readonly parts: number;
    /** Log time of lift-off: time zero of everything else here. */
    readonly liftOffLogTime_s: number;
    readonly card: string | null;
    readonly plan: string | null;
  };
  readonly mission: {
    readonly name: string | null;
    readonly world: string;
    readonly worldSource: string;
    readonly orbitFloor_m: number;
    /** The world's constants that the figures rest on. */
    readonly constants: WorldConstants;
    /** Launch site and azimuth in degrees, longitude east; null = nothing tells it, and an assumption stands in. */
    readonly site: {
      readonly latitude_deg: number | null;
      readonly longitude_deg: number | null;
      readonly launchAzimuth_deg: number | null;
    };
    /** One line: "orbit 160 × 160 km ± 8 km". */
    readonly target: string;
    /** Apsides of the target orbit; null for a target that is no orbit. */
    readonly targetOrbit: {
      readonly apoapsisAltitude_m: number;
      readonly periapsisAltitude_m: number;
    } | null;
    readonly vehicle: string | null;
    readonly payload_kg: number | null;
    readonly pilot: string | null;
    readonly attempt: number | null;
    readonly date: string | null;
    readonly notes: string | null;
    readonly assumed: readonly string[];
  };
  /** Null where the log has too little to identify a vehicle from. */
  readonly vehicle: ReviewVehicle | null;
  readonly channels: readonly ChannelReading[];
  readonly quality: readonly QualityNote[];
  readonly events: readonly ReviewEvent[];
  readonly phases: readonly {
    readonly name: PhaseName;
    readonly start_s: number;
    readonly end_s: number;
    readonly label: string;
  }[];
  readonly ledger: {
    readonly start_s: number;
    readonly end_s: number;
    readonly ground: LedgerEntries;
    readonly inertial: LedgerEntries;
    /** |V| − |v| at the end, m/s, shown beside the ledger. */
    readonly rotationHelp: Figure;
    /** Which reading of the unseen heading was taken and why; null where the log shows it. */
    readonly headingReading: string | null;
  };
  readonly orbit: { readonly atCutoff: OrbitFigures; readonly cutoff_s: number | null };
  readonly budget: BudgetFigures & {
    /** In all tanks at the end of the ascent. */
    readonly propellantLeft_kg: Figure;
    /** Last crossing of zero margin; null when the margin stays positive or is unavailable. */
    readonly lostAt_s: number | null;
    readonly curves: BudgetCurves;
  };
  readonly burns: readonly ReviewBurn[];
  /** Quantities of the equation of motion and where they come from. */
  readonly derivation: readonly { readonly quantity: string; readonly basis: Basis; readonly how: string }[];
  readonly verdict: { readonly code: VerdictCode; readonly text: string; readonly detail: string };
  readonly return: WayDownReview;
  /** Burns after the ascent weighed against impulses, and the orbits that they led to. */
  readonly orbitWork: OrbitWork;
  /** Whether costs were found by re-flying; without it only what the books alone tell is among the findings. */
  readonly causesSought: boolean;
  readonly findings: readonly Finding[];
  /** Null for flights that are in orbit, and where the flight cannot be flown again. */
  readonly whyNot: WhyNot | null;
  /** Null where engine, pitch, drag or target are not known. */
  readonly waste: ReviewWaste | null;
  /** Null without a plan. */
  readonly againstPlan: AgainstPlan | null;
  readonly cautions: readonly string[];
}

/** Names of the sampled channels that charts and exports draw from. SI, degrees for angles. */
export type StripName =
  | 'altitude_m'
  | 'apoapsisAltitude_m'
  | 'periapsisAltitude_m'
  | 'speed_m_s'
  | 'inertialSpeed_m_s'
  | 'verticalSpeed_m_s'
  | 'horizontalSpeed_m_s'
  | 'pitch_deg'
  | 'flightPathAngle_deg'
  | 'angleOfAttack_deg'
  | 'course_deg'
  | 'latitude_deg'
  | 'longitude_deg'
  | 'downrange_m'
  | 'throttle'
  | 'thrustToWeight'
  | 'thrust_N'
  | 'drag_N'
  | 'dynamicPressure_Pa'
  | 'mach'
  | 'acceleration_m_s2'
  | 'mass_kg'
  | 'gravityLossRate_m_s2'
  | 'dragLossRate_m_s2'
  | 'steeringLossRate_m_s2'
  | 'backPressureLossRate_m_s2'
  /** Logged speed less the equation of motion's with the identified vehicle, inside burns. */
  | 'equationResidual_m_s';

export interface Strip {
  readonly values: Float64Array;
  readonly basis: Basis;
  /** Half width of the 95 % interval where it is the same all along (a measured channel's noise). */
  readonly half?: number;
}

/** Sampled channels on the log's rows; time from lift-off. NaN = missing. */
export interface Strips {
  readonly time_s: Float64Array;
  readonly channels: Readonly<Partial<Record<StripName, Strip>>>;
}

/** What `reviewFlight` hands on: the document and the curves to draw. */
export interface Analysis {
  readonly review: Review;
  readonly strips: Strips;
  /** The plan's channels as flown by the same rocket, on a time axis of their own; absent without a plan. */
  readonly planStrips?: Strips;
}
