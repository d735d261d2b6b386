import type { Target } from '../mission/types.ts';
import { orbitFromPlanarState } from '../orbit/planar.ts';
import type { World } from '../world/types.ts';
import type { Controls, Program } from './controls.ts';
import { held } from './controls.ts';
import type { FlightProgram, FlightStep, Until } from './flightProgram.ts';
import type { FlightState } from './flightState.ts';
import type { Start } from './start.ts';
import { steered, withinAngleOfAttack } from './steering.ts';
import { targetEnergy_J_kg } from './targetEnergy.ts';

/** The numbers that a search for the best ascent varies (METHODS §7). */
export interface AscentShape {
  /** Time of the rise straight up. */
  readonly rise_s: number;
  /** Tilt from the vertical that the kick leads to and holds until the path has followed, rad; 0 = no kick. */
  readonly kick_rad: number;
  /** Angle of attack held in dense air, the nose above the path, rad; 0 = gravity turn. */
  readonly attack_rad: number;
  /** tan θ = tangent − fall·(t − reference), once the air is thin. */
  readonly tangent: number;
  readonly fall_per_s: number;
  /** Unpowered time before the last stage's first ignition, separation in it. */
  readonly coast_s: number;
  readonly ending: Ending;
}

/** How the last stage flies to the target. */
export type Ending =
  /** One burn, stopped at the target's energy (or peak). */
  | { readonly kind: 'direct' }
  /** One burn, stopped so that this speed is missing at the target's apoapsis, and a coast up to it. */
  | { readonly kind: 'transfer'; readonly missing_m_s: number }
  /** The same, a coast, and a level second burn to the target's energy. */
  | {
      readonly kind: 'relight';
      readonly missing_m_s: number;
      /** Vertical speed at which the second burn begins, on the way up. */
      readonly climb_m_s: number | ((s: FlightState) => number);
    };

/** What does not change while the shape is varied. */
export interface AscentFrame {
  readonly world: World;
  readonly start: Start;
  readonly heading_rad: number;
  /** Stages flown, the last of which inserts. */
  readonly stages: number;
  readonly reference_s: number;
  readonly throttle: Program;
  readonly angleOfAttackLimit_rad: number | null;
  readonly target: Target;
}

/** How fast the kick tilts, rad/s. */
const KICK_RATE_RAD_S = (1.5 * Math.PI) / 180;
/** From burn-out to separation, s; the rest of the unpowered time comes after it. */
const SEPARATION_DELAY_S = 1;
/** Shortest unpowered time between two stages, s. */
export const STAGING_S = 2;

/** The flight program of a shape. */
export function ascentProgram(frame: AscentFrame, shape: AscentShape): FlightProgram {
  const { world, stages } = frame;
  const steer = (pitch: Program): Controls => ({
    throttle: frame.throttle,
    pitch: withinAngleOfAttack(pitch, world.atmosphere === null ? null : frame.angleOfAttackLimit_rad),
    heading: held(frame.heading_rad),
  });
  const upright = steer(held(Math.PI / 2));
  if (frame.target.kind === 'suborbital') {
    return {
      start: frame.start,
      controls: upright,
      steps: stageSteps(stages, shape, [{ do: 'burn', until: insertion(frame) }]),
    };
  }
  const tilted = Math.PI / 2 - shape.kick_rad;
  const first: FlightStep[] = [
    { do: 'burn', controls: upright, until: { kind: 'duration', duration_s: shape.rise_s } },
  ];
  if (shape.kick_rad > 0)
    first.push({
      do: 'burn',
      controls: steer({ at: (s) => Math.max(tilted, Math.PI / 2 - KICK_RATE_RAD_S * s.sinceStep_s) }),
      until: {
        kind: 'condition',
        value: (s) => s.flightPathAngle_rad + shape.attack_rad - tilted,
        direction: -1,
      },
    });
  const controls = steer(
    steered(world, {
      attack_rad: shape.attack_rad,
      tangent: shape.tangent,
      fall_per_s: shape.fall_per_s,
      reference_s: frame.reference_s,
    }),
  );
  const last = lastBurns(frame, shape.ending, controls, steer(held(0)));
  if (stages > 1) first.push({ do: 'burn', controls, until: { kind: 'empty' } });
  return {
    start: frame.start,
    controls: upright,
    steps: [...first, ...stageSteps(stages, shape, last, controls)],
  };
}

/** The last stage's burns, by its ending. @param level controls of the second burn */
export function lastBurns(
  frame: Pick<AscentFrame, 'world' | 'target'>,
  ending: Ending,
  controls: Controls,
  level: Controls,
): FlightStep[] {
  if (ending.kind === 'direct') return [{ do: 'burn', controls, until: insertion(frame) }];
  const { world, target } = frame;
  const first: FlightStep = {
    do: 'burn',
    controls,
    until: transferEnergy(world, target, ending.missing_m_s),
  };
  const climb_m_s = ending.kind === 'transfer' ? 0 : ending.climb_m_s;
  const coast: FlightStep = { do: 'coast', until: atOnceOr(-1, apoapsisPassage(world, climb_m_s)) };
  if (ending.kind === 'transfer') return [first, coast];
  return [first, coast, { do: 'burn', controls: level, until: insertion(frame) }];
}

/** From the first stage's last burn to the insertion. */
function stageSteps(
  stages: number,
  shape: AscentShape,
  last: readonly FlightStep[],
  controls?: Controls,
): FlightStep[] {
  const steps: FlightStep[] = [];
  for (let stage = 0; stage < stages - 1; stage++) {
    const coast_s = stage === stages - 2 ? shape.coast_s : STAGING_S;
    if (controls === undefined || stage > 0)
      steps.push({ do: 'burn', until: { kind: 'empty' }, ...(controls === undefined ? {} : { controls }) });
    steps.push(
      { do: 'coast', until: { kind: 'duration', duration_s: SEPARATION_DELAY_S } },
      { do: 'separate' },
      { do: 'coast', until: { kind: 'duration', duration_s: coast_s - SEPARATION_DELAY_S } },
    );
  }
  return [...steps, ...last];
}

type Orbit = Extract<Target, { kind: 'orbit' }>;

function semiMajorAxis_m(world: World, target: Orbit): number {
  return world.radius_m + 0.5 * (target.apoapsisAltitude_m + target.periapsisAltitude_m);
}

/** Speed in the target orbit at an altitude of it (vis viva), m/s. */
export function targetSpeed_m_s(world: World, target: Orbit, altitude_m: number): number {
  return Math.sqrt(world.mu_m3_s2 * (2 / (world.radius_m + altitude_m) - 1 / semiMajorAxis_m(world, target)));
}

/** End of the last burn. */
function insertion({ world, target }: Pick<AscentFrame, 'world' | 'target'>): Until {
  const energy_J_kg = targetEnergy_J_kg(world, target);
  if (energy_J_kg !== null) return energyAt(world, energy_J_kg);
  const peak_m = world.radius_m + (target.kind === 'suborbital' ? target.peakAltitude_m : 0);
  return atOnceOr(1, (s) => apoapsis_m(world, s) - peak_m);
}

/** End of a first burn after which a speed is missing at the target's apoapsis. */
function transferEnergy(world: World, target: Target, missing_m_s: number): Until {
  if (target.kind !== 'orbit') return { kind: 'empty' };
  const speed = targetSpeed_m_s(world, target, target.apoapsisAltitude_m) - missing_m_s;
  const radius_m = world.radius_m + target.apoapsisAltitude_m;
  return energyAt(world, speed ** 2 / 2 - world.mu_m3_s2 / radius_m);
}

/** When the specific orbital energy rises to a value, J/kg. */
function energyAt(world: World, energy_J_kg: number): Until {
  return atOnceOr(1, (s) => s.inertialSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / s.radius_m - energy_J_kg);
}

/** Vertical speed over a value in the upper half of an orbit, where the coast to an apoapsis ends. */
function apoapsisPassage(
  world: World,
  climb: Extract<Ending, { kind: 'relight' }>['climb_m_s'],
): (s: FlightState) => number {
  return (s) => {
    const climb_m_s = typeof climb === 'number' ? climb : climb(s);
    // r over a, by vis viva; a path that begins just past its periapsis rises first.
    const height = 2 - (s.radius_m * s.inertialSpeed_m_s ** 2) / world.mu_m3_s2;
    return height > 1 || s.verticalSpeed_m_s > climb_m_s ? s.verticalSpeed_m_s - climb_m_s : 1;
  };
}

/** When a function passes zero in a direction, or at once where it is past zero already. */
function atOnceOr(direction: 1 | -1, value: (s: FlightState) => number): Until {
  return { kind: 'condition', value: (s) => (s.sinceStep_s > 0 ? value(s) : -direction), direction };
}

/** Apoapsis radius, held finite on an open path. */
function apoapsis_m(world: World, s: FlightState): number {
  const orbit = orbitFromPlanarState(
    world.mu_m3_s2,
    s.radius_m,
    s.verticalSpeed_m_s,
    s.inertialHorizontalSpeed_m_s,
  );
  return Math.min(orbit.apoapsisRadius_m, 1e3 * world.radius_m);
}
