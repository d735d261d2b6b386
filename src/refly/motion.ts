import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { gravity_m_s2 } from '../world/gravity.ts';
import { radiusAt_m } from '../world/radius.ts';
import type { Air, World } from '../world/types.ts';
import type { Controls } from './controls.ts';
import { FlightState } from './flightState.ts';
import { solidThrust_N } from './solidMotor.ts';

/**
 * Places in the state vector. Position and velocity are inertial, Cartesian, z to the north pole, x through the
 * prime meridian at lift-off. The losses of METHODS §2 follow, each an integral in m/s.
 */
export const place = {
  x: 0,
  vx: 3,
  mass: 6,
  stagePropellant: 7,
  ideal: 8,
  backPressure: 9,
  steering: 10,
  drag: 11,
  gravity: 12,
  frame: 13,
  inertialSteering: 14,
  inertialDrag: 15,
  inertialGravity: 16,
  holdDown: 17,
} as const;

/** Length of the state vector without and with the carried losses. */
export const bareSize = 8;
export const fullSize = 18;

/** Speed under which a path has no direction yet. */
const atRest_m_s = 1e-9;

export interface MotionOptions {
  /**
   * `sphere` (default): central gravity μ/r². `flat`: the plane of the textbooks, uniform gravity μ/R² along −x,
   * altitude x − R, east along y; only for worlds that do not turn.
   */
  readonly shape?: 'sphere' | 'flat';
}

/**
 * Equations of motion of a 3-DoF point mass over a rotating world: gravity, thrust along a commanded axis, drag
 * against the velocity relative to the ground (METHODS §1 and §2). The driver sets the public fields at each
 * discontinuity; between them the right-hand side is smooth.
 */
export class Motion {
  readonly world: World;
  readonly state = new FlightState();
  controls: Controls | null = null;
  /** Drag area of the stack, m², at a Mach number. */
  dragArea: (mach: number) => number = () => 0;
  /** Present stage's engine: exit area is full whenever it is lit. */
  lit = false;
  ispVacuum_s = 1;
  exitArea_m2 = 0;
  thrustVacuum_N = 0;
  thrustCurve: readonly (readonly [number, number])[] | null = null;
  ignition_s = 0;
  /** Boosters burning now, all together. */
  boosterThrustVacuum_N = 0;
  boosterFlow_kg_s = 0;
  boosterExitArea_m2 = 0;
  /** Held on the pad: turns with the ground. */
  pinned = false;
  stage = 0;
  /** When the flight's present step began. */
  stepped_s = 0;
  /** Ends of the stretch without discontinuity; the programs see times inside it only. */
  stretchStart_s = Number.NEGATIVE_INFINITY;
  stretchEnd_s = Number.POSITIVE_INFINITY;
  private readonly flat: boolean;
  private readonly air: Air = { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 1 };

  constructor(world: World, options: MotionOptions = {}) {
    this.world = world;
    this.flat = options.shape === 'flat';
  }

  /** Right-hand side for the integrator; fills `state` on the way. */
  readonly rate = (t: number, y: Float64Array, rate: Float64Array): void => {
    const s = this.state;
    const spin = this.world.spin_rad_s;
    const x = y[0]!;
    const yy = y[1]!;
    const z = y[2]!;
    const vx = y[3]!;
    const vy = y[4]!;
    const vz = y[5]!;
    const mass = y[6]!;

    // Local axes: up, east, north.
    let upX = 1;
    let upY = 0;
    let upZ = 0;
    let eastX = 0;
    let eastY = 1;
    let radius = x;
    let axial = 1;
    if (!this.flat) {
      axial = Math.sqrt(x * x + yy * yy);
      radius = Math.sqrt(axial * axial + z * z);
      upX = x / radius;
      upY = yy / radius;
      upZ = z / radius;
      if (axial > 0) {
        eastX = -yy / axial;
        eastY = x / axial;
      }
    }
    // north = up × east, east having no z part
    const northX = -upZ * eastY;
    const northY = upZ * eastX;
    const northZ = upX * eastY - upY * eastX;

    // Velocity relative to the ground, v = V − ω × r.
    const wx = vx + spin * yy;
    const wy = vy - spin * x;
    const wz = vz;
    const speed = Math.sqrt(wx * wx + wy * wy + wz * wz);
    const climb = wx * upX + wy * upY + wz * upZ;
    const toEast = wx * eastX + wy * eastY;
    const toNorth = wx * northX + wy * northY + wz * northZ;
    const along = Math.sqrt(toEast * toEast + toNorth * toNorth);
    const inertialSpeed = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const inertialClimb = vx * upX + vy * upY + vz * upZ;

    s.time_s = Math.min(Math.max(t, this.stretchStart_s), this.stretchEnd_s);
    s.radius_m = radius;
    s.altitude_m =
      radius -
      (this.world.ellipsoid === null ? this.world.radius_m : radiusAt_m(this.world, 0, Math.asin(upZ)));
    s.speed_m_s = speed;
    s.verticalSpeed_m_s = climb;
    s.horizontalSpeed_m_s = along;
    s.flightPathAngle_rad = speed > atRest_m_s ? Math.atan2(climb, along) : Math.PI / 2;
    s.inertialSpeed_m_s = inertialSpeed;
    s.inertialHorizontalSpeed_m_s = Math.sqrt(Math.max(0, inertialSpeed ** 2 - inertialClimb ** 2));
    s.mass_kg = mass;
    s.stagePropellant_kg = y[7]!;
    s.stage = this.stage;
    s.lit = this.lit;
    s.sinceStep_s = s.time_s - this.stepped_s;
    // Straight up the path has no course; whoever follows it keeps the last one.
    if (along > 1e-6 * speed && along > atRest_m_s) s.course_rad = Math.atan2(toEast, toNorth);

    this.breathe(s);
    this.push(s);

    // Thrust axis.
    const burning = s.flow_kg_s > 0 || s.thrust_N !== 0;
    let ax = 0;
    let ay = 0;
    let az = 0;
    if (burning) {
      const flatPart = Math.cos(s.pitch_rad);
      const e = flatPart * Math.sin(s.heading_rad);
      const n = flatPart * Math.cos(s.heading_rad);
      const u = Math.sin(s.pitch_rad);
      ax = u * upX + e * eastX + n * northX;
      ay = u * upY + e * eastY + n * northY;
      az = u * upZ + n * northZ;
    }

    const pull = gravity_m_s2(this.world, this.flat ? this.world.radius_m : radius);
    const push = s.thrust_N / mass;
    const resist = s.drag_N / mass;
    // Unit vector of the path; at rest the way that it is about to take, so that a lift-off has a direction.
    const moving = speed > atRest_m_s;
    let ux = moving ? wx / speed : push * ax - pull * upX;
    let uy = moving ? wy / speed : push * ay - pull * upY;
    let uz = moving ? wz / speed : push * az - pull * upZ;
    if (!moving) {
      const size = Math.sqrt(ux * ux + uy * uy + uz * uz);
      ux = size > 0 ? ux / size : upX;
      uy = size > 0 ? uy / size : upY;
      uz = size > 0 ? uz / size : upZ;
    }

    rate[0] = vx;
    rate[1] = vy;
    rate[2] = vz;
    rate[6] = -s.flow_kg_s;
    rate[7] = -(s.flow_kg_s - this.boosterFlow_kg_s);
    if (this.pinned) {
      rate[3] = -spin * spin * x;
      rate[4] = -spin * spin * yy;
      rate[5] = 0;
      if (rate.length > bareSize) {
        rate.fill(0, bareSize);
        rate[place.ideal] = s.thrustVacuum_N / mass;
        rate[place.holdDown] = s.thrustVacuum_N / mass;
      }
      return;
    }
    rate[3] = push * ax - resist * ux - pull * upX;
    rate[4] = push * ay - resist * uy - pull * upY;
    rate[5] = push * az - resist * uz - pull * upZ;
    if (rate.length === bareSize) return;

    // The losses, METHODS §2; 1 − cos α as |t̂ − u|²/2, which keeps its digits at small angles.
    rate[place.ideal] = s.thrustVacuum_N / mass;
    rate[place.backPressure] = (s.thrustVacuum_N - s.thrust_N) / mass;
    rate[place.steering] = burning ? 0.5 * push * ((ax - ux) ** 2 + (ay - uy) ** 2 + (az - uz) ** 2) : 0;
    rate[place.drag] = resist;
    rate[place.gravity] = pull * (ux * upX + uy * upY + uz * upZ);
    rate[place.frame] = -spin * spin * (x * ux + yy * uy);
    const turning = inertialSpeed > atRest_m_s;
    const ix = turning ? vx / inertialSpeed : ux;
    const iy = turning ? vy / inertialSpeed : uy;
    const iz = turning ? vz / inertialSpeed : uz;
    rate[place.inertialSteering] = burning
      ? 0.5 * push * ((ax - ix) ** 2 + (ay - iy) ** 2 + (az - iz) ** 2)
      : 0;
    rate[place.inertialDrag] = resist * (ux * ix + uy * iy + uz * iz);
    rate[place.inertialGravity] = pull * (ix * upX + iy * upY + iz * upZ);
    rate[place.holdDown] = 0;
  };

  /** Fills `state` at a time and state vector, place on the ground included. */
  observe(t: number, y: Float64Array, scratch: Float64Array): FlightState {
    this.rate(t, y, scratch);
    const s = this.state;
    s.time_s = t;
    if (!this.flat) {
      s.latitude_rad = Math.atan2(y[2]!, Math.hypot(y[0]!, y[1]!));
      const longitude = Math.atan2(y[1]!, y[0]!) - this.world.spin_rad_s * t;
      s.longitude_rad = longitude - 2 * Math.PI * Math.round(longitude / (2 * Math.PI));
    }
    return s;
  }

  /** Air, dynamic pressure and drag. */
  private breathe(s: FlightState): void {
    const atmosphere = this.world.atmosphere;
    if (atmosphere === null) {
      s.pressure_Pa = 0;
      s.density_kg_m3 = 0;
      s.dynamicPressure_Pa = 0;
      s.drag_N = 0;
      s.mach = 0;
      return;
    }
    const air = atmosphere.at(s.altitude_m, this.air);
    s.pressure_Pa = air.pressure_Pa;
    s.density_kg_m3 = air.density_kg_m3;
    s.dynamicPressure_Pa = 0.5 * air.density_kg_m3 * s.speed_m_s ** 2;
    s.mach = s.speed_m_s / air.soundSpeed_m_s;
    s.drag_N = this.pinned ? 0 : s.dynamicPressure_Pa * this.dragArea(s.mach);
  }

  /** Commands and what the engines make of them: T = throttle·Tvac − p·Ae, ṁ = throttle·Tvac/(g0·Isp). */
  private push(s: FlightState): void {
    const controls = this.controls;
    s.throttle = this.lit && controls !== null ? controls.throttle.at(s) : 0;
    const curve = this.thrustCurve;
    const full = curve === null ? this.thrustVacuum_N : solidThrust_N(curve, s.time_s - this.ignition_s);
    const core = this.lit ? s.throttle * full : 0;
    s.thrustVacuum_N = core + this.boosterThrustVacuum_N;
    s.flow_kg_s = core / (STANDARD_GRAVITY_M_S2 * this.ispVacuum_s) + this.boosterFlow_kg_s;
    const exit = (core > 0 ? this.exitArea_m2 : 0) + this.boosterExitArea_m2;
    s.thrust_N = s.thrustVacuum_N - s.pressure_Pa * exit;
    if (controls !== null) {
      s.heading_rad = controls.heading.at(s);
      s.pitch_rad = controls.pitch.at(s);
    }
  }
}
