import { comingDownIndex } from '../flight/comingDown.ts';
import type { Burn, Flight } from '../flight/types.ts';
import { isBraking } from '../ledger/ascentEnd.ts';
import { massAbove_kg } from '../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { makingsOf } from './flightMakings.ts';
import { fullMass_kg, type Rocket, type RocketStage } from './rocket.ts';
import { rocketOf } from './rocketOf.ts';
import { handoverUsed_kg, splitStage } from './singleStage.ts';

/**
 * How one stage was flown, or one part of a rocket's only stage. Controls are laid out against the propellant that
 * the stage had used, kg, rising.
 */
export interface StageScript {
  /** Which of the rocket's stages it is, 0-based. */
  readonly stage: number;
  readonly used_kg: Float64Array;
  readonly time_s: Float64Array;
  readonly pitch_rad: Float64Array;
  readonly throttle: Float64Array;
  readonly burns: readonly {
    /** From the end of the burn before, of whatever stage, to this ignition, s; 0 at lift-off. */
    readonly coast_s: number;
    /** Propellant left in the stage when it was cut off, kg; null = it burnt until empty. */
    readonly left_kg: number | null;
  }[];
  /** From its last cutoff to its separation, s; null where it was not dropped. */
  readonly separation_s: number | null;
}

/** A flight's controls, timing and rocket in a form that can be exchanged piece by piece with another's. */
export interface FlightScript {
  readonly rocket: Rocket;
  /** From ignition to lift-off, s; 0 where the first engine was lit in flight or let go at once. */
  readonly holdDown_s: number;
  /** Those of the ascent. A rocket's only stage stands in two parts, so that the upper one can be steered anew. */
  readonly stages: readonly StageScript[];
  /** The last stage was lit again on the way to the target, in the ascent or after it. */
  readonly relit: boolean;
}

/** Propellant that a script's stage, or part of one, begins with, kg. */
export function scriptedPropellant_kg({ rocket, stages }: FlightScript, place: number): number {
  const script = stages[place]!;
  return rocket.stages[script.stage]!.propellantMass_kg - script.used_kg[0]!;
}

/** Where a script's only stage is split, kg used; none of a rocket with several. */
export function splitOf({ rocket, stages }: FlightScript): number | undefined {
  const [lower, upper] = stages;
  const left = lower?.burns[0]?.left_kg ?? null;
  if (lower === undefined || upper === undefined || lower.stage !== upper.stage || left === null)
    return undefined;
  return rocket.stages[lower.stage]!.propellantMass_kg - left;
}

/** Less than this share of a stage's propellant is residuals, not a cutoff. */
const EMPTY_SHARE = 0.002;

/**
 * The script of a flight from the pad: what it was made of, with the rocket of the books (the card's, with what was
 * identified) made to agree with the log, lift-off mass by the payload, thrust by the flow that the log shows.
 * @param split of a rocket's only stage, kg used (another script's, to be compared with); default the flight's own
 * @returns null where the flight begins in the air, or mass, pitch, engine or card are not known
 */
export function flightScript(flight: Flight, split?: number): FlightScript | null {
  const { mission, mass, pitch } = flight;
  if (mission.vehicle === null || mass === null || pitch === null || flight.startsInFlight) return null;
  const booked = rocketOf(flight.vehicle ?? mission.vehicle).rocket;
  if (booked === null) return null;
  const known = makingsOf(flight, booked);
  if (known.kind === 'unavailable') return null;
  const { rocket: card, timing } = known.makings;
  const burns = flight.burns.slice(0, timing.burns.length);
  if (burns.length === 0 || burns[0]!.stage !== 0) return null;
  const first = burns[0]!;
  const heavier_kg = (first.startMass_kg ?? Number.NaN) - fullMass_kg(card);
  if (!Number.isFinite(heavier_kg)) return null;
  const flownStages = Math.max(...burns.map((b) => b.stage)) + 1;
  const stages: StageScript[] = [];
  const engines: RocketStage[] = [];
  for (let s = 0; s < card.stages.length; s++) {
    const own = burns.filter((b) => b.stage === s);
    const stage = card.stages[s]!;
    if (own.length === 0) {
      if (s < flownStages) return null;
      break;
    }
    const table = controlsOf(flight, own, stage, mass, pitch);
    if (table.used_kg.length < 2) return null;
    const above = (massAbove_kg(mission.vehicle, s) ?? Number.NaN) + heavier_kg;
    const end_s = own.at(-1)!.end_s;
    const separation = s + 1 < flownStages ? timing.separations_s.get(s) : undefined;
    stages.push({
      ...table,
      stage: s,
      burns: own.map((burn) => {
        const before = burns[burns.indexOf(burn) - 1];
        const left = (burn.endMass_kg ?? Number.NaN) - above - stage.dryMass_kg;
        return {
          coast_s: burn.start_s - (before?.end_s ?? burn.start_s),
          left_kg: left > EMPTY_SHARE * stage.propellantMass_kg ? left : null,
        };
      }),
      separation_s: separation === undefined ? null : Math.max(0, separation - end_s),
    });
    engines.push({ ...stage, thrustVacuum_N: stage.thrustVacuum_N * thrustRatio(flight, own, stage) });
  }
  const rocket = {
    ...card,
    payload_kg: card.payload_kg + heavier_kg,
    stages: [...engines, ...card.stages.slice(engines.length)],
  };
  const holdDown_s = Math.max(0, -first.start_s);
  const relit = isRelit(flight, flownStages - 1);
  const only = stages[0];
  if (stages.length > 1 || only === undefined) return { rocket, holdDown_s, stages, relit };
  const used_kg = split ?? handoverUsed_kg(flight, only, rocket);
  const parts = used_kg === null ? null : splitStage(only, rocket.stages[0]!, used_kg);
  return { rocket, holdDown_s, stages: parts ?? stages, relit };
}

/** Two burns or more of a stage, on the way up or in orbit, none of them to brake. */
function isRelit(flight: Flight, stage: number): boolean {
  const comingDown = comingDownIndex(flight);
  const own = flight.burns.filter(
    (b) => b.stage === stage && b.startIndex <= comingDown && !isBraking(flight, b),
  );
  return own.length > 1;
}

function controlsOf(
  flight: Flight,
  burns: readonly Burn[],
  stage: RocketStage,
  mass: Float64Array,
  pitch: Float64Array,
): Pick<StageScript, 'used_kg' | 'time_s' | 'pitch_rad' | 'throttle'> {
  const used_kg: number[] = [];
  const time_s: number[] = [];
  const angles: number[] = [];
  const settings: number[] = [];
  let before = 0;
  for (const burn of burns) {
    let used = before;
    for (let i = burn.startIndex; i <= burn.endIndex; i++) {
      const k = Math.min(Math.max(i, burn.startIndex + 1), burn.endIndex - 1);
      const set = flight.throttle?.[k] ?? 1;
      if (i > burn.startIndex) {
        const dt = flight.time[i]! - flight.time[i - 1]!;
        const burnt =
          stage.boosters.length === 0
            ? mass[i - 1]! - mass[i]!
            : (dt * set * stage.thrustVacuum_N) / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
        // A part thrown off under thrust is not propellant.
        if (dt > 5e-6) used += Math.max(0, burnt);
      }
      if (used_kg.length > 0 && used <= used_kg.at(-1)! && i > burn.startIndex) continue;
      used_kg.push(used);
      time_s.push(flight.time[i]!);
      angles.push(pitch[i]!);
      settings.push(set > 0 ? set : 1);
    }
    before = used;
  }
  return {
    used_kg: Float64Array.from(used_kg),
    time_s: Float64Array.from(time_s),
    pitch_rad: Float64Array.from(angles),
    throttle: Float64Array.from(settings),
  };
}

/** Mean flow of the log over the card's at the logged throttle; 1 for solid motors and beside boosters. */
function thrustRatio(flight: Flight, burns: readonly Burn[], stage: RocketStage): number {
  if (stage.thrustCurve !== null || stage.boosters.length > 0) return 1;
  const full = stage.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
  let wanted = 0;
  let seen = 0;
  for (const burn of burns) {
    for (let i = burn.startIndex; i < burn.endIndex; i++) {
      const dt = flight.time[i + 1]! - flight.time[i]!;
      if (dt < 5e-6) continue;
      const k = Math.min(Math.max(i, burn.startIndex + 1), burn.endIndex - 1);
      const set =
        flight.throttle === null
          ? 1
          : (flight.throttle[k]! + flight.throttle[Math.min(k + 1, burn.endIndex - 1)]!) / 2;
      wanted += set * full * dt;
      seen += flight.mass![i]! - flight.mass![i + 1]!;
    }
  }
  const ratio = seen / wanted;
  return Number.isFinite(ratio) && ratio > 0 ? ratio : 1;
}
