import type { Mission } from '../mission/types.ts';
import { Ascent } from './ascent.ts';
import { type Controls, held, type Program, straightLines } from './controls.ts';
import type { FlightProgram, FlightResult, FlightStep, Until } from './flightProgram.ts';
import type { FlightScript, StageScript } from './flightScript.ts';
import { place } from './motion.ts';
import type { Start } from './start.ts';

/** Which script each group of a flight's properties is taken from. */
export interface Mix {
  readonly pitch: FlightScript;
  readonly throttle: FlightScript;
  readonly timing: FlightScript;
  readonly vehicle: FlightScript;
  /**
   * From this time on, up to the last stage, a gravity turn instead of the script's pitch, the nose at first so far
   * under the path.
   */
  readonly turn?: { readonly from_s: number; readonly lead_rad: number };
}

/** Where a flight stands when its last stage is about to be lit. */
export interface Handover {
  readonly start: Extract<Start, { kind: 'flight' }>;
  /** Vacuum delta-v spent until then, m/s. */
  readonly spent_m_s: number;
}

/** How fast a lead of the nose fades, s. */
const LEAD_S = 15;
/** Between two stages where a script has no separation, s. */
const SEPARATION_S = 1;

/** The last stage that both scripts flew, 0-based. */
export function lastStage(...scripts: readonly FlightScript[]): number {
  return Math.min(...scripts.map((s) => s.stages.length)) - 1;
}

/** From the pad to the ignition of stage `until`: the start, the controls and the steps of a mix. */
export function programToStage(mission: Mission, mix: Mix, until: number): FlightProgram {
  const steps: FlightStep[] = [];
  for (let s = 0; s < until; s++) {
    const timing = mix.timing.stages[s]!;
    steps.push(...burnSteps(mix, s, mission));
    // Two parts of one stage follow each other without a break.
    if (mix.timing.stages[s + 1]?.stage === timing.stage) continue;
    const gap = timing.separation_s ?? SEPARATION_S;
    const next = mix.timing.stages[s + 1]?.burns[0]?.coast_s ?? 2 * gap;
    steps.push(
      { do: 'coast', until: { kind: 'duration', duration_s: gap } },
      { do: 'separate' },
      { do: 'coast', until: { kind: 'duration', duration_s: Math.max(0, next - gap) } },
    );
  }
  const { site } = mission;
  return {
    start: {
      kind: 'pad',
      latitude_rad: site.latitude_rad,
      longitude_rad: 0,
      altitude_m: site.altitude_m,
      course_rad: site.launchAzimuth_rad,
      holdDown_s: mix.timing.holdDown_s,
    },
    controls: stageControls(mix, 0, mission),
    steps,
  };
}

/** Flies a mix up to the ignition of stage `until`; null when it comes down before. */
export function flyToStage(mission: Mission, mix: Mix, until: number): Handover | null {
  const ascent = new Ascent(mission.world, mix.vehicle.rocket, { relativeTolerance: 1e-8 });
  const result = ascent.fly(programToStage(mission, mix, until));
  return result.end === 'flown' ? handover(ascent, result, mix.vehicle.stages[until]!.stage) : null;
}

/** The state that a flight has come to, as the start of what follows. */
function handover(ascent: Ascent, result: FlightResult, stage: number): Handover {
  const s = ascent.observe(result.time_s, result.state);
  return {
    start: {
      kind: 'flight',
      time_s: result.time_s,
      latitude_rad: s.latitude_rad,
      longitude_rad: s.longitude_rad,
      altitude_m: s.altitude_m,
      speed_m_s: s.speed_m_s,
      flightPathAngle_rad: s.flightPathAngle_rad,
      course_rad: s.course_rad,
      stage,
      stagePropellant_kg: s.stagePropellant_kg,
      mass_kg: s.mass_kg,
    },
    spent_m_s: result.state.length > place.ideal ? result.state[place.ideal]! : 0,
  };
}

/** Burns of one stage with the coasts between them. */
export function burnSteps(mix: Mix, stage: number, mission: Mission): FlightStep[] {
  const steps: FlightStep[] = [];
  const controls = stageControls(mix, stage, mission);
  mix.timing.stages[stage]!.burns.forEach((burn, k) => {
    if (k > 0) steps.push({ do: 'coast', until: { kind: 'duration', duration_s: burn.coast_s } });
    steps.push({ do: 'burn', controls, until: downTo(burn.left_kg) });
  });
  return steps;
}

/** A burn that leaves so much in the stage. */
function downTo(left_kg: number | null): Until {
  if (left_kg === null) return { kind: 'empty' };
  return { kind: 'condition', value: (s) => s.stagePropellant_kg - left_kg, direction: -1 };
}

function stageControls(mix: Mix, stage: number, mission: Mission): Controls {
  const scripted = overUsed(mix, mix.pitch.stages[stage]!, 'pitch_rad');
  const { turn } = mix;
  return {
    pitch:
      turn === undefined
        ? scripted
        : {
            at: (s) =>
              s.time_s < turn.from_s
                ? scripted.at(s)
                : Math.max(
                    0,
                    Math.min(s.flightPathAngle_rad, Math.PI / 2) -
                      turn.lead_rad * Math.exp((turn.from_s - s.time_s) / LEAD_S),
                  ),
            breaks_s: [turn.from_s],
          },
    throttle: overUsed(mix, mix.throttle.stages[stage]!, 'throttle'),
    heading: held(mission.site.launchAzimuth_rad),
  };
}

/** A control of a script as a function of what the stage has used. */
export function overUsed(
  mix: Pick<Mix, 'vehicle'>,
  script: StageScript,
  control: 'pitch_rad' | 'throttle',
): Program {
  const full = mix.vehicle.rocket.stages[script.stage]!.propellantMass_kg;
  const line = straightLines(script.used_kg, script[control]);
  return { at: (s) => line(full - s.stagePropellant_kg) };
}
