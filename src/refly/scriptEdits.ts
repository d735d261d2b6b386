import { straightLines } from './controls.ts';
import type { FlightScript, StageScript } from './flightScript.ts';

const UPRIGHT = Math.PI / 2;

/** The script with other stages up to and without `last`. */
function lowerStages(
  script: FlightScript,
  last: number,
  edit: (stage: StageScript, index: number) => StageScript,
): FlightScript {
  return { ...script, stages: script.stages.map((s, k) => (k < last ? edit(s, k) : s)) };
}

/** The pitch program of the stages before the last begun `earlier_s` sooner (less than 0: later). */
export function withPitchEarlier(script: FlightScript, last: number, earlier_s: number): FlightScript {
  return lowerStages(script, last, (stage) => {
    const line = straightLines(stage.time_s, stage.pitch_rad);
    return { ...stage, pitch_rad: stage.time_s.map((t) => line(t + earlier_s)) };
  });
}

/** The tilt from the vertical of the stages before the last, times a factor. */
export function withTilt(script: FlightScript, last: number, factor: number): FlightScript {
  return lowerStages(script, last, (stage) => ({
    ...stage,
    pitch_rad: stage.pitch_rad.map((p) => UPRIGHT - factor * (UPRIGHT - p)),
  }));
}

/** The throttle of the stages before the last, edited sample by sample. */
export function withThrottle(
  script: FlightScript,
  last: number,
  edit: (throttle: number) => number,
): FlightScript {
  return lowerStages(script, last, (stage) => ({ ...stage, throttle: stage.throttle.map(edit) }));
}

/** Every gap between two stages shortened to `gap_s`, separation in its middle, where it was longer. */
export function withGaps(script: FlightScript, gap_s: number): FlightScript {
  return {
    ...script,
    stages: script.stages.map((stage, k) => ({
      ...stage,
      burns: stage.burns.map((b, i) =>
        i === 0 && k > 0 ? { ...b, coast_s: Math.min(b.coast_s, gap_s) } : b,
      ),
      separation_s: stage.separation_s === null ? null : Math.min(stage.separation_s, gap_s / 2),
    })),
  };
}

/** Another payload. @param more_kg added to it */
export function withPayload(script: FlightScript, more_kg: number): FlightScript {
  return { ...script, rocket: { ...script.rocket, payload_kg: script.rocket.payload_kg + more_kg } };
}

/** The thrust of one stage, times a factor. */
export function withThrust(script: FlightScript, stage: number, factor: number): FlightScript {
  const stages = script.rocket.stages.map((s, k) =>
    k === stage ? { ...s, thrustVacuum_N: s.thrustVacuum_N * factor } : s,
  );
  return { ...script, rocket: { ...script.rocket, stages } };
}
