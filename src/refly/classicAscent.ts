import type { Controls, Program } from './controls.ts';
import { alongPathPitch, held, linearTangent } from './controls.ts';
import type { FlightProgram, FlightStep, Until } from './flightProgram.ts';
import type { Start } from './start.ts';

/** The few numbers that decide a classic ascent: rise, kick, gravity turn, linear tangent to the end. */
export interface ClassicAscent {
  readonly start: Start;
  /** Compass heading of the thrust axis throughout, rad. */
  readonly heading_rad: number;
  readonly stages: number;
  /** Ground speed at which the rise straight up ends, m/s. */
  readonly kickSpeed_m_s: number;
  /** Tilt from the vertical that the kick leads to and holds until the path has followed, rad. */
  readonly kick_rad: number;
  /** How fast the kick tilts, rad/s. */
  readonly kickRate_rad_s: number;
  /** Last stage: tan θ = a − b·t (Lawden 1963), t since its ignition. */
  readonly a: number;
  readonly b: number;
  readonly separationDelay_s: number;
  readonly ignitionDelay_s: number;
  /** End of the last stage's burn. */
  readonly cutoff: Until;
  /** Full where nothing is said. */
  readonly throttle?: Program;
}

/** A flight program for a rocket of one or more stages, from those numbers. */
export function classicAscent(shape: ClassicAscent): FlightProgram {
  const heading = held(shape.heading_rad);
  const throttle = shape.throttle ?? held(1);
  const steer = (pitch: Program): Controls => ({ throttle, pitch, heading });
  const upright = Math.PI / 2;
  const tilted = upright - shape.kick_rad;
  const tilting: Program = {
    at: (s) => Math.max(tilted, upright - shape.kickRate_rad_s * s.sinceStep_s),
  };
  const steps: FlightStep[] = [
    {
      do: 'burn',
      controls: steer(held(upright)),
      until: { kind: 'condition', value: (s) => s.speed_m_s - shape.kickSpeed_m_s, direction: 1 },
    },
  ];
  const last: FlightStep = {
    do: 'burn',
    controls: steer(linearTangent(shape.a, shape.b)),
    until: shape.cutoff,
  };
  if (shape.stages > 1)
    steps.push({
      do: 'burn',
      controls: steer(tilting),
      until: { kind: 'condition', value: (s) => s.flightPathAngle_rad - tilted, direction: -1 },
    });
  for (let stage = 0; stage < shape.stages - 1; stage++) {
    const follow = steer(alongPathPitch);
    steps.push(
      { do: 'burn', controls: follow, until: { kind: 'empty' } },
      { do: 'coast', until: { kind: 'duration', duration_s: shape.separationDelay_s } },
      { do: 'separate' },
      { do: 'coast', until: { kind: 'duration', duration_s: shape.ignitionDelay_s } },
    );
  }
  steps.push(last);
  return { start: shape.start, controls: steer(held(upright)), steps };
}
