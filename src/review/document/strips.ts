import type { Basis } from './figure.ts';

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
  /** Half width of the 95 % interval where it is the same all along (a channel's noise, the altitude's rate). */
  readonly half?: number;
}

/** Sampled channels on the log's rows; time from lift-off. NaN = missing. */
export interface Strips {
  readonly time_s: Float64Array;
  readonly channels: Readonly<Partial<Record<StripName, Strip>>>;
}
