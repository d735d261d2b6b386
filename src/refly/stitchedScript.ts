import { straightLines } from './controls.ts';
import type { FlightScript, StageScript } from './flightScript.ts';
import type { RocketStage } from './rocket.ts';

/** A part of a stage's burning as one flight flew it, bounded by the propellant that the stage had used. */
export interface StagePart {
  readonly script: FlightScript;
  readonly from_kg: number;
  /** null = to the stage's last cutoff. */
  readonly to_kg: number | null;
}

/** One stage put together from several flights. */
export interface StitchedStage {
  /** In the order in which they are flown. */
  readonly parts: readonly StagePart[];
  /** Whose coast leads to this stage: time from the cutoff before to separation and ignition; null for the first. */
  readonly coast: FlightScript | null;
}

/**
 * A script that flies each part with the pitch and throttle that its own flight had, laid out against the delta-v
 * spent: a part begins with the first propellant after the part before it, whatever its own flight had used by
 * then, and the last part of a stage brings its cutoff. Each stage has the engine that the flight of its last part
 * shows; the load is that of the flight that flew the last stage.
 */
export function stitchedScript(stages: readonly StitchedStage[]): FlightScript {
  const scripts = stages.map(({ parts }) => parts.at(-1)!.script);
  const engines = scripts.map((script, k): RocketStage => script.rocket.stages[k]!);
  const { rocket } = scripts.at(-1)!;
  return {
    rocket: { ...rocket, stages: [...engines, ...rocket.stages.slice(engines.length)] },
    holdDown_s: stages[0]!.parts[0]!.script.holdDown_s,
    stages: stages.map((stage, k) => stitchedStage(stage, k, stages[k + 1]?.coast ?? null)),
    relit: scripts.at(-1)!.relit,
  };
}

/** Propellant that the parts before each part use, kg: where the joins within the stage lie. */
export function joins_kg(parts: readonly StagePart[]): number[] {
  let used = 0;
  return parts.slice(0, -1).map(({ from_kg, to_kg }) => {
    used += (to_kg ?? from_kg) - from_kg;
    return used;
  });
}

function stitchedStage(stage: StitchedStage, k: number, coastAfter: FlightScript | null): StageScript {
  const last = stage.parts.at(-1)!.script.stages[k]!;
  const starts = [0, ...joins_kg(stage.parts)];
  const tables = stage.parts.map((part, i) => cut(part, k, starts[i]!));
  const joined = (column: keyof Table): Float64Array =>
    Float64Array.from(tables.flatMap((table) => table[column]));
  return {
    stage: k,
    used_kg: joined('used_kg'),
    time_s: joined('time_s'),
    pitch_rad: joined('pitch_rad'),
    throttle: joined('throttle'),
    burns: last.burns.map((burn, i) =>
      i === 0 ? { ...burn, coast_s: stage.coast?.stages[k]?.burns[0]?.coast_s ?? burn.coast_s } : burn,
    ),
    separation_s: coastAfter?.stages[k]?.separation_s ?? last.separation_s,
  };
}

interface Table {
  readonly used_kg: number[];
  readonly time_s: number[];
  readonly pitch_rad: number[];
  readonly throttle: number[];
}

/** The rows of a part, its ends put in between the rows, moved to where the part begins in the stitched stage. */
function cut({ script, from_kg, to_kg }: StagePart, k: number, start_kg: number): Table {
  const { used_kg, time_s, pitch_rad, throttle } = script.stages[k]!;
  const end_kg = to_kg ?? used_kg.at(-1)!;
  const inside = Array.from(used_kg).filter((used) => used > from_kg && used < end_kg);
  const at = [from_kg, ...inside, ...(end_kg > from_kg ? [end_kg] : [])];
  const along = (values: Float64Array): number[] => at.map(straightLines(used_kg, values));
  return {
    used_kg: at.map((used) => used - from_kg + start_kg),
    time_s: along(time_s),
    pitch_rad: along(pitch_rad),
    throttle: along(throttle),
  };
}
