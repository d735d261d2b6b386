import type { ChannelName, Log, QualityNote } from '../log/types.ts';
import type { Mission, Vehicle } from '../mission/types.ts';
import type { IdentifiedVehicle } from './identify/vehicleFromLog.ts';
import type { ThrustGaps } from './thrustGaps.ts';

/** How a quantity was come by (METHODS §3). */
export type QuantityBasis = 'measured' | 'derived' | 'identified' | 'assumed' | 'unavailable';

/** Where a quantity of the equation of motion comes from, in words. */
export interface Derivation {
  readonly quantity: string;
  readonly basis: QuantityBasis;
  readonly how: string;
}

/** A stretch of a burn in which the same engines are lit. */
export interface ThrustSegment {
  readonly start_s: number;
  readonly end_s: number;
  /** Effective vacuum specific impulse of all that burns; null where nothing tells it. */
  readonly isp_s: number | null;
  readonly exitArea_m2: number | null;
}

/** One burn; times from lift-off, indices into the flight's axis. */
export interface Burn {
  readonly start_s: number;
  readonly end_s: number;
  readonly startIndex: number;
  readonly endIndex: number;
  /** Index of the stage in the card's order, or the count of stages dropped before where there is no card. */
  readonly stage: number;
  readonly startMass_kg: number | null;
  readonly endMass_kg: number | null;
  /** True when the log begins, or ends, under thrust: the real edge lies outside it. */
  readonly startsBeforeLog: boolean;
  readonly endsAfterLog: boolean;
  readonly segments: readonly ThrustSegment[];
}

/** Mass that left the vehicle otherwise than through its engines. */
export interface MassDrop {
  readonly time_s: number;
  /** Axis index of the point just before; the point after it is the state without the mass. */
  readonly index: number;
  readonly mass_kg: number;
  readonly kind: 'separation' | 'booster-separation' | 'jettison';
  /** Name of what was dropped, where the card tells it. */
  readonly subject: string | null;
}

/** Which reading of an unlogged heading (METHODS §3). */
export type HeadingReading = 'logged' | 'held-azimuth' | 'great-circle';

/** Path direction and what follows from it, on the flight's axis. */
export interface GroundTrack {
  readonly reading: HeadingReading;
  /** Course of the ground-relative velocity, rad from north through east. */
  readonly course: Float64Array;
  /** Heading of the thrust axis, rad; NaN where nothing tells it. */
  readonly heading: Float64Array;
  readonly latitude: Float64Array;
  readonly longitude: Float64Array;
  readonly inertialSpeed: Float64Array;
  /** Horizontal component of the inertial velocity. */
  readonly inertialHorizontalSpeed: Float64Array;
  /** Components of the inertial velocity to the east and north. */
  readonly inertialEast: Float64Array;
  readonly inertialNorth: Float64Array;
}

/** One-sigma errors of the channels as the log shows them, SI; 0 = none seen. */
export interface ChannelNoise {
  readonly altitude_m: number;
  readonly speed_m_s: number;
  readonly verticalSpeed_m_s: number;
  /** Of one sample of a logged vertical speed, before any smoothing; 0 where none is logged. */
  readonly verticalSample_m_s: number;
  readonly pitch_rad: number;
  readonly mass_kg: number;
  /** Step to which the mass is rounded; one plateau's rounding does not average away. */
  readonly massStep_kg: number;
}

/** One-sigma errors of the state at a cutoff as the coast after it tells them; NaN where it does not. */
export interface CutoffState {
  /** Axis index of the cutoff. */
  readonly index: number;
  readonly altitude_m: number;
  readonly verticalSpeed_m_s: number;
  readonly speed_m_s: number;
}

/**
 * A log understood as a flight: every array lies on one strictly increasing axis, which is the log's rows plus
 * the instants of burn edges and mass drops (these two: one point before, one a microsecond after).
 * SI, radians, time from lift-off; NaN = missing. Immutable.
 */
export interface Flight {
  readonly log: Log;
  readonly mission: Mission;
  /** Log time of time zero. */
  readonly liftOffLogTime_s: number;
  /** True when the log's first sample is already in flight. */
  readonly startsInFlight: boolean;
  readonly time: Float64Array;
  /** 1 where the axis point is a row of the log, 0 where it was inserted. */
  readonly isRow: Uint8Array;
  readonly altitude: Float64Array;
  readonly radius: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly horizontalSpeed: Float64Array;
  readonly flightPathAngle: Float64Array;
  readonly track: GroundTrack;
  /** The other reading of the unseen heading; null where the log shows the direction. */
  readonly otherTrack: GroundTrack | null;
  readonly mass: Float64Array | null;
  readonly throttle: Float64Array | null;
  readonly pitch: Float64Array | null;
  readonly loggedThrust: Float64Array | null;
  readonly loggedDrag: Float64Array | null;
  /** Axis index of time zero; 0 where the log begins in flight. */
  readonly liftOffIndex: number;
  /** 0 without air. */
  readonly pressure: Float64Array;
  readonly density: Float64Array;
  readonly dynamicPressure: Float64Array;
  readonly mach: Float64Array;
  /** What the engines did between neighbouring points. */
  readonly gaps: ThrustGaps;
  readonly burns: readonly Burn[];
  readonly drops: readonly MassDrop[];
  /** Changes of the engines' force that only the path shows (logs without throttle, thrust and mass). */
  readonly seenThrottleSteps: readonly {
    readonly name: 'throttle-down' | 'throttle-up';
    readonly time_s: number;
  }[];
  /** Index of the lowest stage still attached at each point. */
  readonly stage: Int16Array;
  /** The vehicle as the log shows it; null where the log has too little for it. */
  readonly identified: IdentifiedVehicle | null;
  /** The vehicle in the books: the card's, with identified values where those were adopted. */
  readonly vehicle: Vehicle | null;
  readonly noise: ChannelNoise;
  readonly cutoffs: readonly CutoffState[];
  /** One-sigma error of the path's angle while it is gathered from the pitch, rad; NaN elsewhere. */
  readonly riseAngleSigma: Float64Array;
  /** One-sigma error of time zero; 0 where the log shows it. */
  readonly liftOffSigma_s: number;
  readonly derivations: readonly Derivation[];
  readonly notes: readonly QualityNote[];
  readonly channelsUsed: readonly ChannelName[];
}
