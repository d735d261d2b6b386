/**
 * What a control program, a cutoff condition or a recorder sees of the flight at one instant. One object is
 * filled anew at every evaluation: read it, never keep it. SI, radians; speeds without a word before them are
 * relative to the rotating ground.
 */
export class FlightState {
  /** From lift-off; negative while held down. */
  time_s = 0;
  radius_m = 0;
  altitude_m = 0;
  speed_m_s = 0;
  verticalSpeed_m_s = 0;
  horizontalSpeed_m_s = 0;
  /** Of the path above the local horizontal; π/2 at rest. */
  flightPathAngle_rad = 0;
  /** Of the path from north through east; the thrust axis' heading where the path has no horizontal part. */
  course_rad = 0;
  latitude_rad = 0;
  /** East, in the rotating frame. */
  longitude_rad = 0;
  inertialSpeed_m_s = 0;
  inertialHorizontalSpeed_m_s = 0;
  mass_kg = 0;
  /** Propellant left in the present stage, its boosters' not counted. */
  stagePropellant_kg = 0;
  pressure_Pa = 0;
  density_kg_m3 = 0;
  dynamicPressure_Pa = 0;
  mach = 0;
  drag_N = 0;
  /** 0-based present stage. */
  stage = 0;
  /** True while the present stage's engine is lit. */
  lit = false;
  /** Since the flight's present step began. */
  sinceStep_s = 0;
  /** Set after the programs have run: 0 while no engine is lit. */
  throttle = 0;
  pitch_rad = 0;
  heading_rad = 0;
  /** Thrust at ambient pressure and in vacuum, boosters included. */
  thrust_N = 0;
  thrustVacuum_N = 0;
  flow_kg_s = 0;
}
